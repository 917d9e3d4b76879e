package org.calamus.core.speech;

import java.time.Month;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.calamus.core.form.FieldSpec;

/**
 * Looks for forms that sound alike and mean different things. It goes by the dictionary alone: what
 * is heard for what is shown by recordings only.
 *
 * @param pronunciations the pronunciations of every word, phones parted by blanks
 */
public record SoundAlikes(Map<String, List<String>> pronunciations) {

  /** Of the longer form, in hundredths; own choice, see {@link PhoneDistance}. */
  private static final int LIMIT = 20;

  /** Ways to say a form that are looked at. */
  private static final int MOST_WAYS = 4;

  private static final int FIRST_TEEN_LIKE_TENS = 13;

  /** Copies the map. */
  public SoundAlikes {
    pronunciations = Map.copyOf(pronunciations);
  }

  /**
   * One sentence, beginning with file and line, for each pair of forms that sound alike, mean
   * different things and are listened for at the same time. Teens and tens are left out: they are
   * known to sound alike, and a number is taken only where the other cannot be meant.
   *
   * @param grammars what is listened for
   * @param fields the fields of the station's form
   * @param isConcerned which forms are looked at; one of each pair must be such a one
   */
  public List<String> warnings(
      Grammars grammars, List<FieldSpec> fields, Predicate<SpokenForm> isConcerned) {
    Map<SpokenForm, BitSet> moments = new LinkedHashMap<>();
    for (int i = 0; i <= fields.size(); i++) {
      Optional<FieldSpec> asked = i < fields.size() ? Optional.of(fields.get(i)) : Optional.empty();
      for (SpokenForm form : grammars.listenedFor(asked)) {
        moments.computeIfAbsent(form, f -> new BitSet()).set(i);
      }
    }
    List<SpokenForm> forms = new ArrayList<>(moments.keySet());
    List<List<int[]>> ways = forms.stream().map(this::ways).toList();
    List<String> warnings = new ArrayList<>();
    for (int i = 0; i < forms.size(); i++) {
      for (int k = i + 1; k < forms.size(); k++) {
        SpokenForm one = forms.get(i);
        SpokenForm other = forms.get(k);
        if ((isConcerned.test(one) || isConcerned.test(other))
            && soundAlike(ways.get(i), ways.get(k))
            && moments.get(one).intersects(moments.get(other))
            && !meanTheSame(one.meaning(), other.meaning())
            && !areTwins(one.meaning(), other.meaning())) {
          warnings.add(isConcerned.test(other) ? warning(other, one) : warning(one, other));
        }
      }
    }
    return warnings;
  }

  private static String warning(SpokenForm form, SpokenForm other) {
    return form.where()
        + ": \""
        + form.text()
        + "\" sounds like \""
        + other.text()
        + "\" ("
        + other.where()
        + "); the one may be heard for the other. A longer form would be safer.";
  }

  /** Whether they mean the same, as "sixteen" and "sixteenth" do in a date. */
  private static boolean meanTheSame(Token one, Token other) {
    boolean isDay = one instanceof Token.Ordinal || other instanceof Token.Ordinal;
    boolean isMonth = one instanceof Token.LetterOrMonth || other instanceof Token.LetterOrMonth;
    return one.equals(other)
        || isDay && one.number().isPresent() && one.number().equals(other.number())
        || isMonth && month(one).isPresent() && month(one).equals(month(other));
  }

  private static Optional<Month> month(Token token) {
    if (token instanceof Token.LetterOrMonth both) {
      return Optional.of(both.month().month());
    }
    return token instanceof Token.MonthName name ? Optional.of(name.month()) : Optional.empty();
  }

  /** Whether the dialogue asks which of the two was meant. */
  private static boolean areTwins(Token one, Token other) {
    if (one instanceof Token.Ordinal first && other instanceof Token.Ordinal second) {
      return Set.of(first.value(), second.value()).equals(Set.of(13, 30));
    }
    if (one instanceof Token.Tens) {
      return other instanceof Token.Teen && areTwins(other, one);
    }
    return one instanceof Token.Teen teen
        && other instanceof Token.Tens tens
        && teen.value() >= FIRST_TEEN_LIKE_TENS
        && (teen.value() - 10) * 10 == tens.value();
  }

  private static boolean soundAlike(List<int[]> ways, List<int[]> others) {
    for (int[] way : ways) {
      for (int[] other : others) {
        if (PhoneDistance.hundredths(way, other, LIMIT) <= LIMIT) {
          return true;
        }
      }
    }
    return false;
  }

  /** The ways to say a form, as phones; none where a word of it is not in the dictionary. */
  private List<int[]> ways(SpokenForm form) {
    List<List<String>> ways = List.of(List.of());
    for (String word : form.words()) {
      List<List<String>> longer = new ArrayList<>();
      for (List<String> way : ways) {
        for (String said : pronunciations.getOrDefault(word, List.of())) {
          List<String> all = new ArrayList<>(way);
          all.addAll(Arrays.asList(said.split(" ")));
          longer.add(all);
        }
      }
      ways = longer.stream().limit(MOST_WAYS).collect(Collectors.toList());
    }
    return ways.stream().map(PhoneDistance::numbers).toList();
  }
}
