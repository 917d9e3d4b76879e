package org.calamus.core.speech;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;

/**
 * The grammars: what is likely while a field is asked.
 *
 * <p>The recogniser makes a bigram of the phrases and counts them, so words join freely, and an
 * entry that occurs eight times and a pair that occurs once are the likelier for it. Repeating what
 * is expected eight times, adding the pairs of words that numbers are made of, and leaving out what
 * sounds like a number while one is asked raised whole 9-digit band numbers from 6 of 20 to 20 of
 * 20 on one speaker; thirty-two repeats hurt. How well it works is in docs/benchmarks.md.
 *
 * @param vocabulary all that can be said
 */
public record Grammars(Vocabulary vocabulary) {

  private static final int EXPECTED = 8;

  /** The last three digits of a band, and whole numbers of either length. */
  private static final Set<Integer> BAND_LENGTHS = Set.of(3, 8, 9);

  /** What may be said of a bird at any moment. */
  private static final Set<FieldId> ALWAYS =
      Set.of(FieldId.KIND, FieldId.RELEASE, FieldId.AGE, FieldId.SEX);

  /** What is said in one breath with the field that is asked. */
  private static final Map<FieldId, Set<FieldId>> BESIDE =
      Map.of(
          FieldId.KIND, Set.of(FieldId.SPECIES),
          FieldId.SPECIES, Set.of(FieldId.HOW_AGED, FieldId.HOW_SEXED),
          FieldId.AGE, Set.of(FieldId.HOW_AGED, FieldId.SPECIES),
          FieldId.SEX, Set.of(FieldId.HOW_SEXED),
          FieldId.BODY_MOULT, Set.of(FieldId.FLIGHT_MOULT),
          FieldId.RELEASE, Set.of(FieldId.DISPOSITION));

  /** The fields whose codes are spelled. */
  private static final Set<FieldId> SPELLED =
      Set.of(
          FieldId.SPECIES,
          FieldId.BAND_SIZE,
          FieldId.LEG_GAUGE,
          FieldId.NET,
          FieldId.BANDER,
          FieldId.SCRIBE);

  /** The grammar while a field is asked, or with no field while only commands are awaited. */
  public Grammar asking(Optional<FieldSpec> field) {
    return grammar(field, 1);
  }

  /** The grammar while a question about a field is open: its answers first, then a new value. */
  public Grammar questioning(Optional<FieldSpec> field) {
    return grammar(field, EXPECTED);
  }

  private Grammar grammar(Optional<FieldSpec> field, int answerRepeats) {
    List<String> phrases = new ArrayList<>(Collections.nCopies(EXPECTED, Word.UNKNOWN));
    List<SpokenForm> forms = listenedFor(field);
    for (SpokenForm form : forms) {
      int times = isAnswer(form) ? answerRepeats : repeats(form, field);
      phrases.addAll(Collections.nCopies(times, form.text()));
    }
    if (field.filter(Grammars::wantsPairs).isPresent()) {
      phrases.addAll(pairs(forms, field.get()));
    }
    String name = field.map(f -> f.id().name()).orElse("NONE") + (answerRepeats > 1 ? "?" : "");
    return new Grammar(name, phrases, field.map(f -> whole(f, forms)).orElse(Grammar.Whole.any()));
  }

  /** A band number is said whole, or its last three digits are. */
  private static Grammar.Whole whole(FieldSpec field, List<SpokenForm> forms) {
    if (!(field.kind() instanceof FieldKind.Band)) {
      return Grammar.Whole.any();
    }
    Set<String> digits =
        forms.stream()
            .filter(f -> isDigit(f.meaning()))
            .map(SpokenForm::text)
            .collect(Collectors.toSet());
    return new Grammar.Whole(digits, BAND_LENGTHS);
  }

  private static boolean wantsNumber(FieldSpec field) {
    return field.kind() instanceof FieldKind.Band
        || field.kind() instanceof FieldKind.Measured
        || field.kind() instanceof FieldKind.Time
        || isScore(field);
  }

  /** Whether the field's codes are numbers, such as a score. */
  private static boolean isScore(FieldSpec field) {
    return field.kind() instanceof FieldKind.Coded coded && coded.table().isNumbered();
  }

  /** Whether its numbers are longer than one digit. */
  private static boolean wantsPairs(FieldSpec field) {
    return wantsNumber(field)
        && !(field.kind() instanceof FieldKind.Coded coded
            && coded.table().rows().stream().allMatch(r -> r.code().length() == 1));
  }

  /**
   * While a number is asked, no names of species are listened for and nothing with a short word in
   * it: "winged" is heard for "wing", "blue" for "point", "sex" for "six". Letters are spelled for
   * the species, for band sizes and for what a station lists by itself.
   */
  private List<SpokenForm> listenedFor(Optional<FieldSpec> field) {
    boolean isSpelled = field.map(f -> SPELLED.contains(f.id())).orElse(false);
    List<SpokenForm> forms =
        vocabulary.forms().stream()
            .filter(f -> isSpelled || !(f.meaning() instanceof Token.Letter))
            .toList();
    forms = forms.stream().filter(f -> isNear(f.meaning(), field)).toList();
    if (field.filter(Grammars::wantsNumber).isEmpty()) {
      return forms;
    }
    boolean wantsDigits = field.get().kind() instanceof FieldKind.Band || isScore(field.get());
    List<SpokenForm> shorts = forms.stream().filter(f -> f.section().isShort()).toList();
    return forms.stream()
        .filter(f -> !isOf(FieldId.SPECIES, f))
        .filter(f -> shorts.stream().noneMatch(s -> isWithin(s, f)))
        .filter(f -> !wantsDigits || isDigit(f.meaning()) || !isNumber(f.meaning()))
        .toList();
  }

  /**
   * Whether a code may be said while a field is asked: one of that field, of those that stand by it
   * in the record, or of what may be said of a bird at any moment. The many others, such as
   * criteria and statuses, would only be heard for what was said.
   */
  private static boolean isNear(Token token, Optional<FieldSpec> field) {
    if (field.isEmpty() || !(token instanceof Token.CodeWords words) || words.fields().isEmpty()) {
      return true;
    }
    Set<FieldId> near = EnumSet.copyOf(ALWAYS);
    near.add(field.get().id());
    near.addAll(BESIDE.getOrDefault(field.get().id(), Set.of()));
    return words.fields().stream().anyMatch(near::contains);
  }

  private static boolean isWithin(SpokenForm part, SpokenForm whole) {
    return Collections.indexOfSubList(whole.words(), part.words()) >= 0;
  }

  private static boolean isOf(FieldId field, SpokenForm form) {
    return form.meaning() instanceof Token.CodeWords words && words.fields().contains(field);
  }

  private static int repeats(SpokenForm form, Optional<FieldSpec> field) {
    Token token = form.meaning();
    if (field.isEmpty()) {
      return token instanceof Token.Order ? EXPECTED : 1;
    }
    FieldSpec spec = field.get();
    boolean isExpected =
        wantsNumber(spec)
            ? isNumberOf(spec, form)
            : SPELLED.contains(spec.id()) && token instanceof Token.Letter;
    isExpected |= Within.table(spec).isPresent() && isCodeOf(spec.id(), token);
    return isExpected ? EXPECTED : 1;
  }

  private static boolean isNumberOf(FieldSpec field, SpokenForm form) {
    return field.kind() instanceof FieldKind.Band || isScore(field)
        ? isDigit(form.meaning())
        : isNumber(form.meaning()) && !isSecondZero(form);
  }

  private static boolean isCodeOf(FieldId field, Token token) {
    if (token instanceof Token.NameOrCode both) {
      return both.words().fields().contains(field);
    }
    return token instanceof Token.CodeWords words
        && (words.fields().isEmpty() || words.fields().contains(field));
  }

  /** The short word for zero, which is heard for "two": rare in a measurement. */
  private static boolean isSecondZero(SpokenForm form) {
    return form.text().equals("oh");
  }

  private static boolean isDigit(Token token) {
    return token instanceof Token.Digit;
  }

  private static boolean isNumber(Token token) {
    return isDigit(token)
        || token instanceof Token.Teen
        || token instanceof Token.Tens
        || token instanceof Token.Hundred
        || token instanceof Token.Point;
  }

  private static boolean isAnswer(SpokenForm form) {
    return form.meaning() instanceof Token.Order order
        && (order.command() == Command.AFFIRM || order.command() == Command.NEGATIVE);
  }

  private static boolean isNumberField(FieldId field) {
    return field == FieldId.BAND || field == FieldId.WING || field == FieldId.MASS;
  }

  /** The pairs of words that a number, and a number behind a word that announces it, is made of. */
  private static List<String> pairs(List<SpokenForm> listened, FieldSpec field) {
    List<SpokenForm> forms = listened.stream().filter(f -> !isSecondZero(f)).toList();
    List<String> pairs = new ArrayList<>();
    for (SpokenForm first : forms) {
      for (SpokenForm second : forms) {
        if (isPair(first.meaning(), second.meaning(), field)) {
          pairs.add(first.text() + " " + second.text());
        }
      }
    }
    return pairs;
  }

  private static boolean isPair(Token first, Token next, FieldSpec field) {
    boolean isMeasured = field.kind() instanceof FieldKind.Measured;
    if (field.kind() instanceof FieldKind.Time) {
      return isPairOfTime(first, next);
    }
    if (isDigit(first)) {
      return isDigit(next) || isMeasured && next instanceof Token.Point;
    }
    if (!isMeasured) {
      return false;
    }
    if (first instanceof Token.Tens || first instanceof Token.Teen) {
      return next instanceof Token.Point
          || first instanceof Token.Tens && next instanceof Token.Digit d && d.value() > 0;
    }
    if (first instanceof Token.Point) {
      return isDigit(next);
    }
    boolean announces =
        name(first).filter(n -> n == field.id() || isNumberField(n)).isPresent()
            || first instanceof Token.Order order && order.command() == Command.CORRECT;
    return announces && (isDigit(next) || next instanceof Token.Tens);
  }

  private static boolean isPairOfTime(Token first, Token next) {
    boolean isPart = next instanceof Token.Teen || next instanceof Token.Tens || isDigit(next);
    return isDigit(first) && isPart
        || first instanceof Token.Teen && isPart
        || first instanceof Token.Tens && next instanceof Token.Digit d && d.value() > 0;
  }

  private static Optional<FieldId> name(Token token) {
    if (token instanceof Token.NameOrCode both) {
      return Optional.of(both.name().field());
    }
    return token instanceof Token.Field named ? Optional.of(named.field()) : Optional.empty();
  }
}
