package org.calamus.core.dialogue;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Provenance;
import org.calamus.core.rule.Finding;
import org.calamus.core.summary.DayRecord;

/**
 * A saved record whole: every value and how it came in, what rules had to say of it, and what
 * corrections changed. The way in and the corrections are held by the store alone; until it has
 * answered, the values are shown without.
 */
final class RecordPage {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private static final String MARKS = RecordsPage.MARKS + "   c corrected";

  private final Setup setup;
  private final ZoneId zone;

  RecordPage(Setup setup) {
    this.setup = setup;
    this.zone = setup.station().zone();
  }

  /**
   * The page of a record.
   *
   * @param id the store's number for the record
   * @param trail what it has gone through; empty where the store has not answered
   */
  PageContent of(State state, long id, Optional<Trail> trail) {
    Optional<PastCapture> found = PageContents.known(state).captures().ofRecord(id);
    if (found.isEmpty()) {
      return new PageContent(
          "Record " + id, List.of(PageRow.title("This record is no longer there.")));
    }
    PastCapture capture = found.get();
    String by = ", by " + capture.bander();
    String when =
        capture.caught().isEnteredLater(zone)
            ? capture.day(zone) + ", entered " + time(capture.capturedAt())
            : time(capture.capturedAt());
    String title = "Record " + id + ", " + when + by;
    List<PageRow> rows = new ArrayList<>();
    for (FieldSpec spec : setup.form().fields()) {
      capture.value(spec.id()).ifPresent(v -> rows.addAll(field(capture, spec, v, trail)));
    }
    for (Finding note : DayRecord.of(capture, PageContents.known(state), setup.rules()).notes()) {
      rows.addAll(PageRow.sentence("~", note.shown()));
    }
    trail.ifPresent(t -> rows.addAll(corrections(t.amendments())));
    rows.add(PageRow.text(""));
    rows.addAll(PageRow.sentence("", MARKS));
    return new PageContent(title, rows);
  }

  private String time(Instant at) {
    return TIME.format(at.atZone(zone));
  }

  private List<PageRow> field(
      PastCapture capture, FieldSpec spec, FieldValue value, Optional<Trail> trail) {
    boolean isDoubted = capture.doubted().contains(spec.id());
    boolean isCorrected =
        trail.stream().flatMap(t -> t.amendments().stream()).anyMatch(a -> a.field() == spec.id());
    String mark = isDoubted ? "*" : spec.id() == FieldId.NOTE ? "r" : "=";
    String shown = setup.phrases().shown(spec, value) + (isDoubted ? "  (kept)" : "");
    Optional<Provenance> provenance =
        trail.flatMap(t -> t.record().entry(spec.id())).map(Entry::provenance);
    return PageRow.named(
        mark + (isCorrected ? "c" : ""),
        spec.label(),
        shown,
        provenance.map(p -> p.way().word()).orElse(""),
        provenance.map(RecordPage::detail).orElse(""));
  }

  /** What was heard, struck or sent, as it was kept. */
  private static String detail(Provenance provenance) {
    String front =
        switch (provenance.way()) {
          case SAID -> "heard: ";
          case KEYED -> "struck: ";
          case MEASURED -> "sent: ";
          case CONCLUDED -> "";
        };
    return provenance.detail().isBlank() ? "" : front + provenance.detail();
  }

  /** What each correction changed, below when it was made, by whom and why. */
  private List<PageRow> corrections(List<Amendment> all) {
    List<PageRow> rows = new ArrayList<>();
    if (all.isEmpty()) {
      rows.add(PageRow.title("Never corrected"));
      return rows;
    }
    Optional<Amendment> last = Optional.empty();
    for (Amendment one : all) {
      boolean isSame =
          last.filter(l -> l.at().equals(one.at()) && l.why().equals(one.why())).isPresent();
      if (!isSame) {
        rows.add(PageRow.title(head(one)));
      }
      rows.addAll(change(one));
      last = Optional.of(one);
    }
    return rows;
  }

  private String head(Amendment one) {
    String memo = one.why().memo().map(m -> ", told in " + m).orElse("");
    return "Corrected "
        + time(one.at())
        + " by "
        + one.why().bander()
        + ": "
        + one.why().reason().words()
        + memo;
  }

  private List<PageRow> change(Amendment one) {
    String label =
        setup.form().has(one.field()) ? setup.form().spec(one.field()).label() : one.field().key();
    String was = "was " + told(one.field(), one.before());
    String now = "now " + told(one.field(), one.after());
    return PageRow.named("c", label, was + "; " + now, Page.Look.TEXT);
  }

  private String told(FieldId field, Optional<Entry> entry) {
    return entry
        .map(
            e ->
                (setup.form().has(field)
                        ? setup.phrases().shown(setup.form().spec(field), e.value())
                        : e.value().text())
                    + ", "
                    + e.provenance().way().word())
        .orElse("empty");
  }
}
