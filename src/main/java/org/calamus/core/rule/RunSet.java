package org.calamus.core.rule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;

/**
 * A set of whole numbers, kept as runs of consecutive ones: a hundred thousand bands used one after
 * the other are one run. Immutable; one more number costs a copy of the runs, not of the numbers.
 */
final class RunSet {

  static final RunSet EMPTY = new RunSet(new long[0], new long[0]);

  /** The ends of the runs, in order: no two runs touch. */
  private final long[] firsts;

  private final long[] lasts;

  private RunSet(long[] firsts, long[] lasts) {
    this.firsts = firsts;
    this.lasts = lasts;
  }

  /**
   * A run of numbers.
   *
   * @param first the lowest
   * @param last the highest
   */
  record Run(long first, long last) {}

  boolean contains(long number) {
    int at = lastRunFrom(number);
    return at >= 0 && number <= lasts[at];
  }

  /** The set with one more number in it. */
  RunSet with(long number) {
    int before = lastRunFrom(number);
    if (before >= 0 && number <= lasts[before]) {
      return this;
    }
    int behind = before + 1;
    boolean joinsBefore = before >= 0 && lasts[before] == number - 1;
    boolean joinsBehind = behind < firsts.length && firsts[behind] == number + 1;
    int kept = joinsBefore ? before : behind;
    int rest = joinsBehind ? behind + 1 : behind;
    long[] newFirsts = spliced(firsts, kept, rest, joinsBefore ? firsts[before] : number);
    long[] newLasts = spliced(lasts, kept, rest, joinsBehind ? lasts[behind] : number);
    return new RunSet(newFirsts, newLasts);
  }

  /** The first elements, then one, then the rest. */
  private static long[] spliced(long[] from, int kept, int rest, long one) {
    long[] to = new long[kept + 1 + from.length - rest];
    System.arraycopy(from, 0, to, 0, kept);
    to[kept] = one;
    System.arraycopy(from, rest, to, kept + 1, from.length - rest);
    return to;
  }

  /** The lowest number that is not in the set and lies between the two; empty where all are. */
  OptionalLong firstAbsent(long from, long to) {
    int at = lastRunFrom(from);
    long absent = at >= 0 && from <= lasts[at] ? lasts[at] + 1 : from;
    return absent <= to ? OptionalLong.of(absent) : OptionalLong.empty();
  }

  /** The highest number of the set that lies between the two; empty where none does. */
  OptionalLong highest(long from, long to) {
    int at = lastRunFrom(to);
    long highest = at < 0 ? from - 1 : Math.min(to, lasts[at]);
    return highest < from ? OptionalLong.empty() : OptionalLong.of(highest);
  }

  /** The runs of numbers that are not in the set, from one number to another. */
  List<Run> absent(long from, long to) {
    List<Run> gaps = new ArrayList<>();
    OptionalLong next = firstAbsent(from, to);
    while (next.isPresent()) {
      long first = next.getAsLong();
      int behind = lastRunFrom(first) + 1;
      long last = behind < firsts.length ? Math.min(to, firsts[behind] - 1) : to;
      gaps.add(new Run(first, last));
      next = last < to ? firstAbsent(last + 1, to) : OptionalLong.empty();
    }
    return gaps;
  }

  /** How many numbers of the set lie between the two. */
  long count(long from, long to) {
    long count = 0;
    for (int i = Math.max(0, lastRunFrom(from)); i < firsts.length && firsts[i] <= to; i++) {
      count += Math.max(0, Math.min(to, lasts[i]) - Math.max(from, firsts[i]) + 1);
    }
    return count;
  }

  /** The last run that begins at the number or before; -1 where none does. */
  private int lastRunFrom(long number) {
    int found = Arrays.binarySearch(firsts, number);
    return found >= 0 ? found : -found - 2;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof RunSet o
        && Arrays.equals(firsts, o.firsts)
        && Arrays.equals(lasts, o.lasts);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(firsts) + Arrays.hashCode(lasts);
  }
}
