package org.calamus.core.dialogue;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.StringJoiner;
import org.calamus.core.readback.Phrases;
import org.calamus.core.record.Caught;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.core.summary.DayRecord;

/** The records of the day, those to be looked at again first. */
final class RecordsPage {

  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("MM-dd", Locale.ROOT);

  private static final String HEAD =
      columns("time", "band", "species", "age", "sex", "wing", "mass", "kind");

  static final String MARKS = "* kept against a rule   ~ noted   r remarks";
  private static final String NONE = "-";

  private final Setup setup;
  private final ZoneId zone;

  RecordsPage(Setup setup) {
    this.setup = setup;
    this.zone = setup.station().zone();
  }

  PageContent of(State state) {
    List<DayRecord> all =
        DayRecord.of(PageContents.known(state), setup.rules(), PageContents.today(setup, state));
    String title = PageName.RECORDS.title() + ", " + PageContents.today(setup, state);
    if (all.isEmpty()) {
      return new PageContent(title, List.of(PageRow.title("No record was saved today.")));
    }
    List<DayRecord> open = all.stream().filter(DayRecord::isToBeLookedAt).toList();
    List<DayRecord> others = all.stream().filter(r -> !r.isToBeLookedAt()).toList();
    List<PageRow> rows = new ArrayList<>(List.of(PageRow.head(HEAD)));
    if (!open.isEmpty()) {
      rows.add(PageRow.title("To be looked at again: " + open.size() + "     " + MARKS));
      open.forEach(r -> rows.add(row(r)));
    }
    if (!others.isEmpty()) {
      rows.add(PageRow.title((open.isEmpty() ? "All: " : "The others: ") + others.size()));
      others.forEach(r -> rows.add(row(r)));
    }
    return new PageContent(title, rows);
  }

  /** The birds of a species on the day. */
  PageContent ofSpecies(State state, Optional<String> code) {
    List<PageRow> rows = new ArrayList<>(List.of(PageRow.head(HEAD)));
    DayRecord.of(PageContents.known(state), setup.rules(), PageContents.today(setup, state))
        .stream()
        .filter(r -> r.capture().kind().hasBird())
        .filter(r -> r.capture().day(zone).equals(PageContents.today(setup, state)))
        .filter(r -> r.capture().code(FieldId.SPECIES).equals(code))
        .forEach(r -> rows.add(row(r)));
    return new PageContent(
        code.orElse("No species") + ", " + PageContents.today(setup, state), rows);
  }

  private PageRow row(DayRecord record) {
    PastCapture capture = record.capture();
    String text =
        columns(
            when(capture.caught()),
            capture.band().map(b -> b.text()).orElse(NONE),
            brief(capture, FieldId.SPECIES),
            brief(capture, FieldId.AGE),
            brief(capture, FieldId.SEX),
            brief(capture, FieldId.WING),
            brief(capture, FieldId.MASS),
            capture.kind().code());
    return PageRow.chosen(
        mark(record), text, more(record), new PageRow.Subject.OfRecord(capture.id()));
  }

  /** The time; of a bird that was caught on another day, the day. */
  private String when(Caught caught) {
    return caught.day(zone).equals(caught.begunOn(zone))
        ? TIME.format(caught.when(zone).atZone(zone))
        : DAY.format(caught.day(zone));
  }

  private static String columns(
      String time,
      String band,
      String species,
      String age,
      String sex,
      String wing,
      String mass,
      String kind) {
    return (PageText.padded(time, 7)
            + PageText.padded(band, 13)
            + PageText.padded(species, 9)
            + PageText.padded(age, 6)
            + PageText.padded(sex, 5)
            + PageText.padded(wing, 10)
            + PageText.padded(mass, 10)
            + PageText.padded(kind, 5))
        .stripTrailing();
  }

  private static String mark(DayRecord record) {
    return (record.isDoubted() ? "*" : "")
        + (record.notes().isEmpty() ? "" : "~")
        + (record.isRemarked() ? "r" : "");
  }

  /** What is to be looked at again, in words. */
  private String more(DayRecord record) {
    StringJoiner words = new StringJoiner("; ");
    StringJoiner doubted = new StringJoiner(", ");
    setup.form().fields().stream()
        .filter(f -> record.capture().doubted().contains(f.id()))
        .forEach(f -> doubted.add(f.spoken()));
    if (doubted.length() > 0) {
      words.add("kept: " + doubted);
    }
    record.notes().forEach(n -> words.add(n.shown()));
    record.capture().value(FieldId.NOTE).ifPresent(v -> words.add(v.text()));
    return words.toString();
  }

  private String brief(PastCapture capture, FieldId field) {
    return capture
        .value(field)
        .map(v -> setup.form().has(field) ? Phrases.brief(setup.form().spec(field), v) : v.text())
        .orElse(NONE);
  }
}
