package org.calamus.core.record;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * All saved captures, found by the band. Immutable; a copy with one capture more is cheap also
 * where there are tens of thousands.
 *
 * <pre>{@code
 * Captures captures = Captures.of(store.pastCaptures(), zone);
 * captures = captures.with(PastCapture.of(justSaved));
 * captures.ofBand(band);      // the bird's history, oldest first
 * }</pre>
 */
public final class Captures {

  private static final Captures NONE = of(List.of(), ZoneOffset.UTC);

  private final ZoneId zone;
  private final Shelves<Long, PastCapture> byId;
  private final Shelves<BandNumber, List<PastCapture>> byBand;
  private final int size;

  private Captures(
      ZoneId zone,
      Shelves<Long, PastCapture> byId,
      Shelves<BandNumber, List<PastCapture>> byBand,
      int size) {
    this.zone = zone;
    this.byId = byId;
    this.byBand = byBand;
    this.size = size;
  }

  /** No captures, of a station whose clocks show UTC. */
  public static Captures none() {
    return NONE;
  }

  /**
   * Captures of a station.
   *
   * @param all the captures; of two with the same record id the later in the collection counts
   * @param zone the station's zone, by which those entered on a later day are put in order
   */
  public static Captures of(Collection<PastCapture> all, ZoneId zone) {
    Map<Long, PastCapture> byId = new HashMap<>();
    all.forEach(capture -> byId.put(capture.id(), capture));
    Map<BandNumber, List<PastCapture>> byBand = new HashMap<>();
    for (PastCapture capture : byId.values()) {
      for (BandNumber band : capture.bands()) {
        byBand.computeIfAbsent(band, b -> new ArrayList<>(1)).add(capture);
      }
    }
    byBand.replaceAll((band, captures) -> inOrder(captures, zone));
    return new Captures(zone, Shelves.of(byId), Shelves.of(byBand), byId.size());
  }

  /** The capture of a record, or empty. */
  public Optional<PastCapture> ofRecord(long recordId) {
    return byId.get(recordId);
  }

  /** A copy with a capture; one of the same record id gives way to it. */
  public Captures with(PastCapture capture) {
    Captures others = without(capture.id());
    Shelves<BandNumber, List<PastCapture>> filed = others.byBand;
    for (BandNumber band : capture.bands()) {
      List<PastCapture> more = new ArrayList<>(filed.get(band).orElse(List.of()));
      more.add(capture);
      filed = filed.with(band, inOrder(more));
    }
    return new Captures(zone, others.byId.with(capture.id(), capture), filed, others.size + 1);
  }

  /** A copy without the capture of a record, as where a saved record was abandoned later. */
  public Captures without(long recordId) {
    Optional<PastCapture> gone = byId.get(recordId);
    if (gone.isEmpty()) {
      return this;
    }
    Shelves<BandNumber, List<PastCapture>> left = byBand;
    for (BandNumber band : gone.get().bands()) {
      List<PastCapture> rest =
          left.get(band).orElse(List.of()).stream().filter(c -> c.id() != recordId).toList();
      left = rest.isEmpty() ? left.without(band) : left.with(band, rest);
    }
    return new Captures(zone, byId.without(recordId), left, size - 1);
  }

  /**
   * The captures of a bird, oldest first: those that name the band as the one it came or went with,
   * and those under every number that it wore before or after.
   *
   * @param band any of the numbers that the bird ever wore
   * @return its captures; empty where the number is not known
   */
  public List<PastCapture> ofBand(BandNumber band) {
    Set<BandNumber> worn = new HashSet<>(Set.of(band));
    Deque<BandNumber> toLookUp = new ArrayDeque<>(worn);
    Map<Long, PastCapture> found = new HashMap<>();
    while (!toLookUp.isEmpty()) {
      for (PastCapture capture : byBand.get(toLookUp.remove()).orElse(List.of())) {
        found.put(capture.id(), capture);
        capture.bands().stream().filter(worn::add).forEach(toLookUp::add);
      }
    }
    return inOrder(found.values());
  }

  /**
   * The captures of a bird on one day, oldest first.
   *
   * @param day the date on the station's calendar
   * @param zone the station's zone
   * @param band any of the numbers that the bird ever wore
   */
  public List<PastCapture> onDay(LocalDate day, ZoneId zone, BandNumber band) {
    return ofBand(band).stream().filter(capture -> capture.day(zone).equals(day)).toList();
  }

  /**
   * All captures of one day, oldest first. It looks at every capture: for the end of the day, and
   * not for every value.
   *
   * @param day the date on the station's calendar
   * @param zone the station's zone
   */
  public List<PastCapture> onDay(LocalDate day, ZoneId zone) {
    return between(day, day, zone);
  }

  /**
   * All captures of one day and those entered on it of birds that were caught before, oldest first.
   * It looks at every capture.
   *
   * @param day the date on the station's calendar
   * @param zone the station's zone
   */
  public List<PastCapture> ofDayOrEnteredOn(LocalDate day, ZoneId zone) {
    Predicate<PastCapture> isEntered = begunBetween(day, day, zone);
    return inOrder(byId.values().filter(isEntered.or(caughtBetween(day, day, zone))).toList());
  }

  /**
   * All captures from one day to another, oldest first. It looks at every capture, as {@link
   * #onDay(LocalDate, ZoneId)} does.
   *
   * @param first the first date on the station's calendar
   * @param last the last date, which belongs to it
   * @param zone the station's zone
   */
  public List<PastCapture> between(LocalDate first, LocalDate last, ZoneId zone) {
    return inOrder(byId.values().filter(caughtBetween(first, last, zone)).toList());
  }

  /** Of most the instant tells: to ask the calendar of each of tens of thousands takes long. */
  private static Predicate<PastCapture> caughtBetween(
      LocalDate first, LocalDate last, ZoneId zone) {
    Predicate<PastCapture> isBegun = begunBetween(first, last, zone);
    return c ->
        hasDate(c) ? !c.day(zone).isBefore(first) && !c.day(zone).isAfter(last) : isBegun.test(c);
  }

  private static Predicate<PastCapture> begunBetween(LocalDate first, LocalDate last, ZoneId zone) {
    Instant from = first.atStartOfDay(zone).toInstant();
    Instant until = last.plusDays(1).atStartOfDay(zone).toInstant();
    return c -> !c.capturedAt().isBefore(from) && c.capturedAt().isBefore(until);
  }

  private static boolean hasDate(PastCapture capture) {
    return capture.value(FieldId.DATE).isPresent();
  }

  /** All captures, by the number of their record. It looks at every capture. */
  public List<PastCapture> all() {
    return byId.values().sorted(Comparator.comparingLong(PastCapture::id)).toList();
  }

  /** The capture of the bird that was recorded last; empty where there is none. */
  public Optional<PastCapture> newestBird() {
    return byId.values()
        .filter(capture -> capture.kind().hasBird())
        .max(Comparator.comparingLong(PastCapture::id));
  }

  /**
   * The newest capture of every band whose number ends in some digits, newest first. It looks at
   * every capture.
   *
   * @param digits one or more digits, of the suffix or of the whole number
   */
  public List<PastCapture> endingIn(String digits) {
    Map<BandNumber, PastCapture> newest = new HashMap<>();
    byId.values()
        .filter(capture -> capture.band().filter(b -> endsIn(b, digits)).isPresent())
        .forEach(
            capture ->
                newest.merge(
                    capture.band().orElseThrow(),
                    capture,
                    (one, other) -> one.id() > other.id() ? one : other));
    return newest.values().stream()
        .sorted(Comparator.comparingLong(PastCapture::id).reversed())
        .toList();
  }

  private static boolean endsIn(BandNumber band, String digits) {
    return (band.prefix() + band.suffix()).endsWith(digits);
  }

  /**
   * The captures from a day on, by their day, oldest first. It looks at every capture, once.
   *
   * @param from the first date on the station's calendar
   * @param zone the station's zone
   */
  public Map<LocalDate, List<PastCapture>> byDay(LocalDate from, ZoneId zone) {
    Instant begin = from.atStartOfDay(zone).toInstant();
    Map<LocalDate, List<PastCapture>> days = new HashMap<>();
    inOrder(
            byId.values()
                .filter(
                    c -> hasDate(c) ? !c.day(zone).isBefore(from) : !c.capturedAt().isBefore(begin))
                .toList())
        .forEach(c -> days.computeIfAbsent(c.day(zone), day -> new ArrayList<>()).add(c));
    return days;
  }

  /** How many captures there are, with and without a band. */
  public int size() {
    return size;
  }

  private List<PastCapture> inOrder(Collection<PastCapture> captures) {
    return inOrder(captures, zone);
  }

  private static List<PastCapture> inOrder(Collection<PastCapture> captures, ZoneId zone) {
    Comparator<PastCapture> byTime = Comparator.comparing(capture -> capture.caught().when(zone));
    return captures.stream().sorted(byTime.thenComparingLong(PastCapture::id)).toList();
  }
}
