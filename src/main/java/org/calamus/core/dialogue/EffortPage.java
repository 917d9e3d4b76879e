package org.calamus.core.dialogue;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.calamus.core.effort.Net;
import org.calamus.core.effort.NetDay;
import org.calamus.core.effort.NetHours;
import org.calamus.core.effort.NetLog;
import org.calamus.core.record.PastCapture;
import org.calamus.core.speech.Command;

/** The net-hours of the day by net, and of the days before, with the birds for 100 of them. */
final class EffortPage {

  /** How many days are listed behind this one; a fortnight is what one compares with. */
  private static final int DAYS_BEFORE = 14;

  private static final int NAME_CELLS = 26;
  private static final String NONE = "-";

  private final Setup setup;
  private final ZoneId zone;

  EffortPage(Setup setup) {
    this.setup = setup;
    this.zone = setup.station().zone();
  }

  PageContent of(State state) {
    LocalDate day = PageContents.today(setup, state);
    String title = PageName.EFFORT.title() + ", " + day;
    List<LocalDate> earlier = daysBefore(state.desk().nets(), day);
    LocalDate first = earlier.isEmpty() ? day : earlier.get(earlier.size() - 1);
    Map<LocalDate, List<PastCapture>> captures =
        PageContents.known(state).captures().byDay(first, zone);
    NetHours today = hours(state, day, captures);
    List<PageRow> rows = new ArrayList<>();
    if (today.nets().isEmpty()) {
      rows.add(PageRow.title("No net was entered as open today: " + how()));
    } else {
      rows.add(PageRow.title("By net     > open now; a net of 12 m for an hour is one net-hour"));
      rows.add(PageRow.head(columns("net", "open", "net-hours", "birds", "for 100")));
      today.nets().forEach(net -> rows.add(row(net)));
      rows.add(PageRow.head(line("All", "", today.netHours(), today.birds(), today.birdsPer100())));
    }
    rows.addAll(before(state, earlier, captures));
    return new PageContent(title, rows);
  }

  /** How nets are entered as open, in words and keys. */
  private String how() {
    String words = setup.words(Command.OPEN_NETS).map(w -> "\"" + w + "\" or ").orElse("");
    return words + Sayable.keys(Command.OPEN_NETS) + ".";
  }

  private NetHours hours(State state, LocalDate day, Map<LocalDate, List<PastCapture>> captures) {
    return NetHours.of(
        day,
        zone,
        setup.nets(),
        state.desk().nets(),
        captures.getOrDefault(day, List.of()),
        state.console().now());
  }

  private static PageRow row(NetDay day) {
    String text =
        line(name(day.net()), open(day.open()), day.netHours(), day.birds(), day.birdsPer100());
    return PageRow.of(Page.Look.TEXT, day.isOpen() ? ">" : "", text);
  }

  private static String name(Net net) {
    String length =
        net.metres().compareTo(Net.USUAL_METRES) == 0
            ? ""
            : ", " + net.metres().toPlainString() + " m";
    return net.code() + (net.name().equals(net.code()) ? "" : " " + net.name()) + length;
  }

  private static String open(Duration time) {
    return String.format(Locale.ROOT, "%d:%02d", time.toHours(), time.toMinutesPart());
  }

  private static String line(
      String name, String open, BigDecimal hours, int birds, Optional<BigDecimal> per100) {
    return columns(
        name,
        open,
        hours.toPlainString(),
        String.valueOf(birds),
        per100.map(BigDecimal::toPlainString).orElse(NONE));
  }

  private static String columns(String name, String open, String hours, String birds, String per) {
    return PageText.padded(name, NAME_CELLS)
        + String.format(Locale.ROOT, "%7s%11s%8s%10s", open, hours, birds, per);
  }

  /** The days before on which nets were open, newest first. */
  private List<PageRow> before(
      State state, List<LocalDate> earlier, Map<LocalDate, List<PastCapture>> captures) {
    List<PageRow> rows = new ArrayList<>();
    for (LocalDate other : earlier) {
      NetHours hours = hours(state, other, captures);
      rows.add(
          PageRow.text(
              line(other.toString(), "", hours.netHours(), hours.birds(), hours.birdsPer100())));
    }
    if (!rows.isEmpty()) {
      rows.add(0, PageRow.title("The days before, all nets"));
    }
    return rows;
  }

  /** Of a net that stayed open for days, those between its events count, too. */
  private List<LocalDate> daysBefore(NetLog log, LocalDate day) {
    TreeSet<LocalDate> days = new TreeSet<>();
    for (String net : log.nets()) {
      for (NetLog.Span span : log.spans(net)) {
        LocalDate last = span.to().map(t -> t.atZone(zone).toLocalDate()).orElse(day);
        LocalDate from = span.from().atZone(zone).toLocalDate();
        LocalDate first =
            from.isBefore(last.minusDays(DAYS_BEFORE)) ? last.minusDays(DAYS_BEFORE) : from;
        first.datesUntil(last.plusDays(1)).filter(d -> d.isBefore(day)).forEach(days::add);
      }
    }
    return days.descendingSet().stream().limit(DAYS_BEFORE).toList();
  }
}
