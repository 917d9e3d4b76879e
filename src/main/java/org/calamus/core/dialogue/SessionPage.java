package org.calamus.core.dialogue;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.Policy;
import org.calamus.core.summary.StringAccount;

/** How the session stands: the station, the console's parts, the bands in hand, the records. */
final class SessionPage {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  /** More nets are told by the first and the last. */
  private static final int MOST_NETS = 20;

  private final Setup setup;

  SessionPage(Setup setup) {
    this.setup = setup;
  }

  PageContent of(State state) {
    List<PageRow> rows = new ArrayList<>();
    rows.add(PageRow.title("People and nets"));
    add(rows, "People", people(state));
    List<String> open = state.desk().nets().open();
    add(rows, "Nets open", open.isEmpty() ? "none" : open.size() + ": " + String.join(", ", open));
    rows.add(PageRow.title("Console"));
    rows.addAll(parts(state));
    rows.addAll(microphone(state));
    rows.add(PageRow.title("Records"));
    rows.addAll(records(state));
    rows.add(PageRow.title("Bands in hand"));
    rows.addAll(bands(state));
    rows.add(PageRow.title("Station"));
    rows.addAll(station(state));
    rows.add(PageRow.title("Before you start"));
    Views.CAUTIONS.forEach(c -> rows.addAll(PageRow.sentence("", c)));
    return new PageContent(PageName.SESSION.title() + " at " + setup.station().place(), rows);
  }

  private List<PageRow> station(State state) {
    ZoneId zone = setup.station().zone();
    List<PageRow> rows = new ArrayList<>();
    add(rows, "Station", setup.station().place());
    add(rows, "Time", TIME.format(state.console().now().atZone(zone)) + " (" + zone + ")");
    add(rows, "May write", table(FieldId.SCRIBE).map(SessionPage::all).orElse("not recorded"));
    add(rows, "Nets", table(FieldId.NET).map(SessionPage::nets).orElse("not recorded"));
    Policy policy = setup.rules().policy();
    add(
        rows,
        "In the hand",
        "warns at "
            + policy.warnAfter().toMinutes()
            + " minutes, the limit is "
            + policy.limit().toMinutes());
    policy.netsOpenedAt().ifPresent(t -> add(rows, "Nets opened", "at " + t));
    return rows;
  }

  /** Who bands, and who writes or how that is said. */
  private String people(State state) {
    String bands = setup.station().bander() + " bands";
    if (!setup.form().has(FieldId.SCRIBE)) {
      return bands;
    }
    int number = setup.form().fields().indexOf(setup.form().spec(FieldId.SCRIBE)) + 1;
    String howToName = "nobody writes (+ " + number + " names one)";
    return bands + ", " + new Scribe(setup).of(state).map(one -> one + " writes").orElse(howToName);
  }

  private Optional<CodeTable> table(FieldId field) {
    return Optional.of(field)
        .filter(setup.form()::has)
        .map(f -> setup.form().spec(f).kind())
        .flatMap(
            k ->
                k instanceof FieldKind.Coded coded ? Optional.of(coded.table()) : Optional.empty());
  }

  private static String all(CodeTable table) {
    return table.rows().stream()
        .map(r -> r.code().equals(r.words()) ? r.code() : r.code() + " " + r.words())
        .collect(Collectors.joining(", "));
  }

  private static String nets(CodeTable table) {
    int count = table.rows().size();
    return count <= MOST_NETS
        ? all(table)
        : table.rows().get(0).code()
            + " to "
            + table.rows().get(count - 1).code()
            + ", "
            + count
            + " of them";
  }

  private List<PageRow> parts(State state) {
    List<PageRow> rows = new ArrayList<>();
    for (Part part : Part.values()) {
      Optional<View.Health> health =
          Optional.ofNullable(state.console().health().get(part))
              .filter(h -> h.isUp() || h.isDown());
      String name = part.word().substring(0, 1).toUpperCase(Locale.ROOT) + part.word().substring(1);
      if (health.isEmpty()) {
        rows.addAll(PageRow.named("-", name, "off", Page.Look.TEXT));
      } else if (health.get().isUp()) {
        String device = health.get().sentence();
        String ok = device.isBlank() ? "ok" : "ok, " + device;
        rows.addAll(PageRow.named("+", name, ok, Page.Look.TEXT));
      } else {
        String sentence = "DOWN: " + health.get().sentence();
        rows.addAll(PageRow.named("X", name, sentence, Page.Look.WRONG));
      }
    }
    String instruments =
        setup.devices().values().stream()
            .map(DeviceDescription::name)
            .sorted()
            .collect(Collectors.joining(", "));
    add(rows, "Instruments", instruments.isEmpty() ? "none in station.toml" : instruments);
    return rows;
  }

  private List<PageRow> microphone(State state) {
    List<PageRow> rows = new ArrayList<>();
    Console console = state.console();
    boolean hears = console.isUp(Part.EARS);
    if (hears) {
      String level = console.decibels() + " dB now; 0 is the loudest there is";
      add(rows, "Microphone", level + (console.isHearing() ? ", somebody speaks" : ""));
      rows.addAll(new Microphones(setup).row(console.health().get(Part.EARS).sentence()));
      add(
          rows,
          "",
          "To try it in the noise of this place end the session and run: calamus microphone");
    } else {
      add(rows, "Microphone", "not heard: the keypad does everything");
      return rows;
    }
    Attention attention = console.attention();
    String heeds =
        attention.isPaused()
            ? "nothing that is said: paused"
            : attention.talk() == Talk.KEY ? "behind the talk key" : "all the time";
    add(rows, "Listens", heeds);
    return rows;
  }

  private List<PageRow> records(State state) {
    List<PageRow> rows = new ArrayList<>();
    String hand =
        state
            .record()
            .map(r -> setup.phrases().filled(r) + time(state))
            .orElse("no bird; nothing unfinished");
    add(rows, state.isCorrecting() ? "Being corrected" : "In the hand", hand);
    LocalDate day = PageContents.today(setup, state);
    int today =
        PageContents.known(state).captures().ofDayOrEnteredOn(day, setup.station().zone()).size();
    add(
        rows,
        "Saved",
        state.savedCount()
            + " in this session, "
            + today
            + " today, "
            + PageContents.known(state).captures().size()
            + " in all");
    if (state.console().isStoreDown()) {
      rows.addAll(
          PageRow.named(
              "X", "Not stored", "what was taken is held here until that works", Page.Look.WRONG));
    }
    return rows;
  }

  private String time(State state) {
    Optional<Duration> held = new Holding(setup.rules().policy()).held(state);
    return held.map(d -> "  for " + PageText.minutes(d)).orElse("");
  }

  private List<PageRow> bands(State state) {
    List<PageRow> rows = new ArrayList<>();
    List<StringAccount> all = StringAccount.of(PageContents.known(state).ledger());
    for (StringAccount account : all.stream().filter(a -> !a.isFinished()).toList()) {
      String size = account.string().size();
      String text =
          PageText.padded(size.isEmpty() ? "size not said" : "size " + size, 18)
              + PageText.padded(account.left() + " left", 10)
              + "next "
              + StringsPage.next(account)
              + (account.unexplained().isEmpty()
                  ? ""
                  : ", " + account.unexplainedCount() + " open");
      String mark = account.unexplained().isEmpty() ? "" : "!";
      String more = PageText.range(account.string());
      rows.add(PageRow.chosen(mark, text, more, new PageRow.Subject.OfString(account.string())));
    }
    if (rows.isEmpty()) {
      String none = "none declared in station.toml; learnt from the first band used";
      add(rows, "Strings", all.isEmpty() ? none : "all of them are used up");
    }
    return rows;
  }

  private static void add(List<PageRow> rows, String name, String value) {
    rows.addAll(PageRow.named("", name, value, Page.Look.TEXT));
  }
}
