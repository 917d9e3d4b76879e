package org.calamus.core.effort;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;

/**
 * The effort of a day, net by net. A day is that of the station's calendar: a net that stays open
 * over midnight counts for both days, and the day on which the clocks change has 23 or 25 hours, of
 * which each counts once.
 *
 * @param day the day
 * @param nets the nets that were open on the day or caught a bird, in the station's order
 */
public record NetHours(LocalDate day, List<NetDay> nets) {

  /** Copies the list. */
  public NetHours {
    nets = List.copyOf(nets);
  }

  /**
   * The effort of a day.
   *
   * @param day the day at the station
   * @param zone the station's zone
   * @param known the station's nets; one of the log that is not among them is taken for one of 12 m
   * @param log when they were open
   * @param ofDay the captures of that day
   * @param now the time up to which an open net counts
   */
  public static NetHours of(
      LocalDate day,
      ZoneId zone,
      List<Net> known,
      NetLog log,
      List<PastCapture> ofDay,
      Instant now) {
    Map<String, Integer> birds = new LinkedHashMap<>();
    for (PastCapture capture : ofDay) {
      if (capture.kind().hasBird()) {
        capture.code(FieldId.NET).ifPresent(net -> birds.merge(net, 1, Integer::sum));
      }
    }
    Map<String, Net> nets = new LinkedHashMap<>();
    known.forEach(net -> nets.put(net.code(), net));
    log.nets().forEach(code -> nets.putIfAbsent(code, Net.of(code)));
    birds.keySet().forEach(code -> nets.putIfAbsent(code, Net.of(code)));
    Instant from = day.atStartOfDay(zone).toInstant();
    Instant end = day.plusDays(1).atStartOfDay(zone).toInstant();
    Instant to = now.isBefore(end) ? now : end;
    List<NetDay> days =
        nets.values().stream()
            .map(
                net ->
                    new NetDay(
                        net,
                        day,
                        open(log, net.code(), from, to),
                        isOpenAt(log, net.code(), to),
                        birds.getOrDefault(net.code(), 0)))
            .filter(d -> !d.open().isZero() || d.isOpen() || d.birds() > 0)
            .toList();
    return new NetHours(day, days);
  }

  private static Duration open(NetLog log, String net, Instant from, Instant to) {
    Duration all = Duration.ZERO;
    for (NetLog.Span span : log.spans(net)) {
      Instant begin = span.from().isBefore(from) ? from : span.from();
      Instant end = span.to().filter(t -> t.isBefore(to)).orElse(to);
      if (begin.isBefore(end)) {
        all = all.plus(Duration.between(begin, end));
      }
    }
    return all;
  }

  /** A net that is closed at that moment is not open any more. */
  private static boolean isOpenAt(NetLog log, String net, Instant at) {
    return log.spans(net).stream()
        .anyMatch(s -> !s.from().isAfter(at) && s.to().filter(t -> !t.isAfter(at)).isEmpty());
  }

  /** The net-hours of all nets, to two decimals, rounded once. */
  public BigDecimal netHours() {
    return NetDay.hours(metreSeconds());
  }

  /** The birds of all nets. */
  public int birds() {
    return nets.stream().mapToInt(NetDay::birds).sum();
  }

  /** The birds of all nets for 100 net-hours, to one decimal; empty where none was open. */
  public Optional<BigDecimal> birdsPer100() {
    return NetDay.per100(birds(), metreSeconds());
  }

  private BigDecimal metreSeconds() {
    return nets.stream().map(NetDay::metreSeconds).reduce(BigDecimal.ZERO, BigDecimal::add);
  }
}
