package org.calamus.core.rule;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import org.calamus.core.record.BandNumber;
import org.calamus.core.rule.Fates.Series;

/**
 * Which bands the station has, what became of each, and which is next. Immutable.
 *
 * <p>Where the station has declared the strings that were issued to it, the next band of a size is
 * the lowest of its strings, in the order of their opening, that has no fate. Where it has declared
 * none, strings are learnt: a string of one hundred begins with the first band of it that was used.
 * Either way a band that was skipped stays expected until it has a fate.
 */
public final class BandLedger {

  private static final BandLedger EMPTY =
      new BandLedger(List.of(), Map.of(), Map.of(), Map.of(), Optional.empty());

  private final List<BandString> strings;
  private final Map<Series, Fates> fates;

  /** The first band used of each string that was learnt, by the string's first number. */
  private final Map<BandNumber, BandNumber> learnt;

  private final Map<Series, BandNumber> lastBySeries;
  private final Optional<BandNumber> lastUsed;

  private BandLedger(
      List<BandString> strings,
      Map<Series, Fates> fates,
      Map<BandNumber, BandNumber> learnt,
      Map<Series, BandNumber> lastBySeries,
      Optional<BandNumber> lastUsed) {
    this.strings = strings;
    this.fates = fates;
    this.learnt = learnt;
    this.lastBySeries = lastBySeries;
    this.lastUsed = lastUsed;
  }

  /** Whether a band was issued to the station. */
  public enum Issued {
    /** It is of a declared string. */
    YES,
    /** Strings are declared, and it is of none. */
    NO,
    /** No string is declared. */
    UNKNOWN
  }

  /** A ledger without a string and without a band. */
  public static BandLedger empty() {
    return EMPTY;
  }

  /**
   * A ledger over the strings issued to the station.
   *
   * @param strings in the order in which they are opened; none where they are to be learnt
   * @throws IllegalArgumentException where two strings have a band in common
   */
  public static BandLedger of(Collection<BandString> strings) {
    BandLedger ledger = EMPTY;
    for (BandString string : strings) {
      ledger = ledger.withString(string);
    }
    return ledger;
  }

  /**
   * The ledger after one more string was issued.
   *
   * @throws IllegalArgumentException where it has a band in common with one before; {@link
   *     #overlapping} tells
   */
  public BandLedger withString(BandString string) {
    if (overlapping(string).isPresent()) {
      throw new IllegalArgumentException("string " + string + " overlaps another");
    }
    List<BandString> more = new ArrayList<>(strings);
    more.add(string);
    return new BandLedger(List.copyOf(more), fates, learnt, lastBySeries, lastUsed);
  }

  /** The declared string that has a band in common with the given one. */
  public Optional<BandString> overlapping(BandString string) {
    return strings.stream().filter(string::overlaps).findFirst();
  }

  /** The declared strings in the order of their opening. */
  public List<BandString> strings() {
    return strings;
  }

  /** A ledger without declared strings, of bands that were used in this order. */
  public static BandLedger ofUsed(List<BandNumber> bands) {
    BandLedger ledger = EMPTY;
    for (BandNumber band : bands) {
      ledger = ledger.withUsed(band);
    }
    return ledger;
  }

  /** Enters what became of a band, unless it has a fate already. */
  public Booking book(BandNumber band, BandFate fate) {
    Optional<BandFate> before = fateOf(band);
    if (before.isPresent()) {
      return new Booking.Refused(before.get());
    }
    return new Booking.Entered(entered(band, fate));
  }

  /**
   * The ledger after a band was used. A fate it has already stays: ask {@link #book} where that
   * matters.
   */
  public BandLedger withUsed(BandNumber band) {
    return fateOf(band).isPresent() ? this : entered(band, BandFate.USED);
  }

  /** The ledger after something became of a band. A fate it has already stays. */
  BandLedger withFate(BandNumber band, BandFate fate) {
    return fateOf(band).isPresent() ? this : entered(band, fate);
  }

  /**
   * The ledger after a band was seen on a bird that the station did not put on it today: it must
   * not be used again, and says nothing of which band is next.
   */
  public BandLedger withSeen(BandNumber band) {
    return fateOf(band).isPresent()
        ? this
        : new BandLedger(strings, fatesWith(band, BandFate.USED), learnt, lastBySeries, lastUsed);
  }

  private Map<Series, Fates> fatesWith(BandNumber band, BandFate fate) {
    Map<Series, Fates> more = new HashMap<>(fates);
    more.merge(Series.of(band), Fates.NONE.with(band, fate), (old, n) -> old.with(band, fate));
    return more;
  }

  private BandLedger entered(BandNumber band, BandFate fate) {
    Map<Series, Fates> more = fatesWith(band, fate);
    if (fate != BandFate.USED) {
      return new BandLedger(strings, more, learnt, lastBySeries, lastUsed);
    }
    Map<Series, BandNumber> last = new HashMap<>(lastBySeries);
    last.put(Series.of(band), band);
    Map<BandNumber, BandNumber> begun = learnt;
    if (!learnt.containsKey(band.firstOfString())) {
      begun = new HashMap<>(learnt);
      begun.put(band.firstOfString(), band);
    }
    return new BandLedger(strings, more, begun, last, Optional.of(band));
  }

  /** What became of a band; empty while it is on its string, or is none of the station's. */
  public Optional<BandFate> fateOf(BandNumber band) {
    return fatesOf(band).fateOf(band);
  }

  /** The declared string that the band is of. */
  public Optional<BandString> stringOf(BandNumber band) {
    return strings.stream().filter(s -> s.holds(band)).findFirst();
  }

  /** The size of the string that a band is of; empty where it is not known. */
  public Optional<String> sizeOf(BandNumber band) {
    return stringOf(band).map(BandString::size).filter(size -> !size.isEmpty());
  }

  /** Whether the band was issued to the station. */
  public Issued isIssued(BandNumber band) {
    if (strings.isEmpty()) {
      return Issued.UNKNOWN;
    }
    return stringOf(band).isPresent() ? Issued.YES : Issued.NO;
  }

  /** The lowest number without a fate of the declared strings of a size, oldest string first. */
  public Optional<BandNumber> next(String size) {
    return strings.stream()
        .filter(s -> s.size().equals(size))
        .flatMap(s -> nextOf(s).stream())
        .findFirst();
  }

  /** The lowest number without a fate of a string. */
  public Optional<BandNumber> nextOf(BandString string) {
    return fatesOf(string.first()).next(string.first(), string.last());
  }

  /**
   * The band that comes next where nothing is known of the bird: the next of the size used last, or
   * of the first string while none was used.
   */
  public Optional<BandNumber> expected() {
    if (strings.isEmpty()) {
      return lastUsed.flatMap(this::nextLearnt);
    }
    return lastUsed
        .flatMap(this::stringOf)
        .flatMap(s -> nextOf(s).or(() -> next(s.size())))
        .or(() -> strings.stream().flatMap(s -> nextOf(s).stream()).findFirst());
  }

  /** The next band of a prefix; empty where none was issued or used yet, or the last was. */
  public Optional<BandNumber> expected(String prefix) {
    if (strings.isEmpty()) {
      return lastBySeries.entrySet().stream()
          .filter(e -> e.getKey().prefix().equals(prefix))
          .flatMap(e -> nextLearnt(e.getValue()).stream())
          .findFirst();
    }
    return strings.stream()
        .filter(s -> s.first().prefix().equals(prefix))
        .flatMap(s -> nextOf(s).stream())
        .findFirst();
  }

  /** The next of the string that the band is of; where it has none left, the next beyond it. */
  private Optional<BandNumber> nextLearnt(BandNumber last) {
    BandNumber begun = learnt.getOrDefault(last.firstOfString(), last);
    return fatesOf(last).next(begun, last.lastOfPrefix());
  }

  /**
   * The band with which the string of one hundred that a band is of was begun, where strings are
   * learnt; empty where none of it was used.
   */
  public Optional<BandNumber> begunWith(BandNumber band) {
    return Optional.ofNullable(learnt.get(band.firstOfString()));
  }

  /**
   * The bands without a fate that were passed over, if the given one is used: those of its string
   * from the one expected up to it.
   *
   * @return pieces of the string, lowest first; none where the band is the expected one, or stands
   *     before it, or nothing is known of its string
   */
  public List<BandString> skippedBefore(BandNumber band) {
    Optional<BandNumber> from =
        strings.isEmpty()
            ? begunWith(band).flatMap(b -> fatesOf(band).next(b, band.lastOfString()))
            : stringOf(band).flatMap(this::nextOf);
    return from.filter(f -> f.compareTo(band) < 0)
        .map(f -> withoutFate(f, band.withOrdinal(band.ordinal() - 1)))
        .orElse(List.of());
  }

  /**
   * The bands without a fate that lie between bands that have one, or between the first of a
   * declared string and one that has: nothing there is explained.
   *
   * @return pieces of strings, in the order of the strings
   */
  public List<BandString> gaps() {
    return inUse().stream().flatMap(s -> gaps(s).stream()).toList();
  }

  /**
   * The strings that the station works with: those declared, in the order of their opening; where
   * none is, those learnt, each from the first band of it that was used to its last.
   */
  public List<BandString> inUse() {
    return strings.isEmpty()
        ? learnt.values().stream()
            .sorted()
            .map(b -> new BandString("", b, b.lastOfString()))
            .toList()
        : strings;
  }

  /** The bands of one string that lie before its last one with a fate and have none. */
  public List<BandString> gaps(BandString string) {
    OptionalLong last =
        fatesOf(string.first()).all().highest(string.first().ordinal(), string.last().ordinal());
    return last.isEmpty()
        ? List.of()
        : withoutFate(string.first(), string.first().withOrdinal(last.getAsLong()));
  }

  private List<BandString> withoutFate(BandNumber from, BandNumber to) {
    String size = sizeOf(from).orElse("");
    return fatesOf(from).all().absent(from.ordinal(), to.ordinal()).stream()
        .map(r -> new BandString(size, from.withOrdinal(r.first()), from.withOrdinal(r.last())))
        .toList();
  }

  /** The next bands of all open strings, the one expected most first. */
  public List<BandNumber> allExpected() {
    Stream<Optional<BandNumber>> others =
        strings.isEmpty()
            ? lastBySeries.values().stream().sorted().map(this::nextLearnt)
            : strings.stream().map(this::nextOf);
    Set<BandNumber> bands = new LinkedHashSet<>();
    expected().ifPresent(bands::add);
    others.flatMap(Optional::stream).forEach(bands::add);
    return List.copyOf(bands);
  }

  /**
   * The whole number of a band of which the last digits were given: the one expected band that ends
   * so, or else the expected one's with its end replaced.
   *
   * @param digits one or more digits
   * @return empty where no band is expected, or its number has fewer digits
   */
  public Optional<BandNumber> endingIn(String digits) {
    List<BandNumber> ending =
        allExpected().stream().filter(b -> b.suffix().endsWith(digits)).toList();
    return ending.size() == 1
        ? Optional.of(ending.get(0))
        : expected()
            .filter(b -> digits.length() <= b.suffix().length())
            .map(b -> b.endingIn(digits));
  }

  /** The account of a string or of a piece of one. */
  public BandTally tally(BandString string) {
    Fates of = fatesOf(string.first());
    long from = string.first().ordinal();
    long to = string.last().ordinal();
    return new BandTally(
        string.count(),
        of.of(BandFate.USED).count(from, to),
        of.of(BandFate.LOST).count(from, to),
        of.of(BandFate.DESTROYED).count(from, to),
        string.count() - of.all().count(from, to));
  }

  private Fates fatesOf(BandNumber band) {
    return fates.getOrDefault(Series.of(band), Fates.NONE);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof BandLedger o
        && strings.equals(o.strings)
        && fates.equals(o.fates)
        && learnt.equals(o.learnt)
        && lastBySeries.equals(o.lastBySeries)
        && lastUsed.equals(o.lastUsed);
  }

  @Override
  public int hashCode() {
    return Objects.hash(strings, fates, learnt, lastBySeries, lastUsed);
  }
}
