package org.calamus.core.instrument;

import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A kind of line that an instrument sends: what it looks like and what it means. */
public sealed interface LinePattern {

  /** The names a pattern may give to its groups. */
  Set<String> GROUPS = Set.of("sign", "value", "unit", "stable", "channel", "status");

  /** What the whole line looks like. */
  Pattern pattern();

  /**
   * A line with a value. The groups {@code sign}, {@code value}, {@code unit}, {@code stable},
   * {@code channel} and {@code status} are read; only {@code value} is needed. Where a line can
   * come in cut, the pattern must ask for so much behind the value that a cut line does not fit.
   *
   * @param pattern what the whole line looks like
   */
  record Value(Pattern pattern) implements LinePattern {
    /** Checks the groups. */
    public Value {
      Set<String> groups = groupsOf(pattern);
      if (!groups.contains("value")) {
        throw new IllegalArgumentException("the pattern has no group named value");
      }
      if (!GROUPS.containsAll(groups)) {
        groups.removeAll(GROUPS);
        throw new IllegalArgumentException("the pattern has a group of unknown name: " + groups);
      }
    }
  }

  /**
   * A line that is known and says nothing, such as the report of a tare.
   *
   * @param pattern what the whole line looks like
   * @param why what the line is
   */
  record Ignored(Pattern pattern, String why) implements LinePattern {
    /** Checks that both parts are there. */
    public Ignored {
      Objects.requireNonNull(pattern);
      Objects.requireNonNull(why);
    }
  }

  /**
   * A line by which the instrument says that something is wrong, such as an overload.
   *
   * @param pattern what the whole line looks like
   * @param sentence what is wrong and what to do next, never blank
   */
  record Reported(Pattern pattern, String sentence) implements LinePattern {
    /** Checks that there is a sentence. */
    public Reported {
      Objects.requireNonNull(pattern);
      if (sentence.isBlank()) {
        throw new IllegalArgumentException("a reported line needs a sentence");
      }
    }
  }

  /** The names of the groups of a pattern. */
  static Set<String> groupsOf(Pattern pattern) {
    Set<String> names = new TreeSet<>();
    Matcher matcher = Pattern.compile("\\(\\?<([a-zA-Z][a-zA-Z0-9]*)>").matcher(pattern.pattern());
    while (matcher.find()) {
      names.add(matcher.group(1));
    }
    return names;
  }
}
