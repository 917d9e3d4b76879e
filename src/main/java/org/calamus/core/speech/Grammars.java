package org.calamus.core.speech;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.record.FieldId;

/**
 * The grammars: what is likely while a field is asked.
 *
 * <p>The recogniser makes a bigram of the entries and counts them, so words join freely but for
 * those of a phrase ({@link Vocabulary#phrases()}), and an entry that occurs eight times and a pair
 * that occurs once are the likelier for it. Repeating what is expected eight times, adding the
 * pairs of words that numbers are made of, and leaving out what sounds like a number while one is
 * asked raised whole 9-digit band numbers from 6 of 20 to 20 of 20 on one speaker; thirty-two
 * repeats hurt. How well it works is in docs/benchmarks.md.
 *
 * <p>A grammar is made once and kept, since one of a measurement has thousands of phrases. May be
 * used by several threads.
 */
public final class Grammars {

  private static final int EXPECTED = 8;

  private static final String PAUSED = "PAUSED";
  private static final String NO_FIELD = "NONE";
  private static final String QUESTION = "?";

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
          FieldId.AGE,
          FieldId.SEX,
          FieldId.BAND_SIZE,
          FieldId.LEG_GAUGE,
          FieldId.NET,
          FieldId.BANDER,
          FieldId.SCRIBE);

  private final Vocabulary vocabulary;
  private final Set<SpokenForm> phrases;
  private final Map<Key, Made> made = new HashMap<>();

  /** What a grammar is found again by: the field, if any, and how often answers are repeated. */
  private record Key(Optional<FieldId> field, int answerRepeats) {}

  /** A grammar with the field that it was made for: another form may ask for other codes. */
  private record Made(Optional<FieldSpec> field, Grammar grammar) {}

  /**
   * Grammars of a vocabulary.
   *
   * @param vocabulary all that can be said
   */
  public Grammars(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.phrases = Set.copyOf(vocabulary.phrases());
  }

  /** All that can be said. */
  public Vocabulary vocabulary() {
    return vocabulary;
  }

  /** The grammar while a field is asked, or with no field while only commands are awaited. */
  public Grammar asking(Optional<FieldSpec> field) {
    return grammar(field, 1);
  }

  /** The grammar while a question about a field is open: its answers first, then a new value. */
  public Grammar questioning(Optional<FieldSpec> field) {
    return grammar(field, EXPECTED);
  }

  /** The grammar while the console is paused: how to go on, and what is said near it. */
  public Grammar paused() {
    List<String> phrases = new ArrayList<>(Collections.nCopies(EXPECTED, Word.UNKNOWN));
    vocabulary.forms().stream()
        .filter(f -> f.meaning() instanceof Token.Nothing || isResuming(f))
        .forEach(f -> phrases.add(f.text()));
    return new Grammar(PAUSED, phrases);
  }

  /**
   * The grammar of a name that one of these has given, made anew from today's vocabulary; empty
   * where the form has no such field.
   *
   * @param name the name of a grammar, such as {@code WING}
   * @param form the fields
   */
  public Optional<Grammar> named(String name, Form form) {
    if (name.equals(PAUSED)) {
      return Optional.of(paused());
    }
    boolean isQuestion = name.endsWith(QUESTION);
    String asked = isQuestion ? name.substring(0, name.length() - QUESTION.length()) : name;
    Optional<FieldSpec> field =
        form.fields().stream().filter(f -> f.id().name().equals(asked)).findFirst();
    if (field.isEmpty() && !asked.equals(NO_FIELD)) {
      return Optional.empty();
    }
    return Optional.of(isQuestion ? questioning(field) : asking(field));
  }

  /** The grammar while it is asked why a saved record is corrected. */
  public Grammar reasons() {
    List<String> phrases = new ArrayList<>(Collections.nCopies(EXPECTED, Word.UNKNOWN));
    for (SpokenForm form : vocabulary.heard()) {
      boolean isOrder = form.meaning() instanceof Token.Order;
      if (isOrder || form.meaning() instanceof Token.Nothing) {
        phrases.addAll(Collections.nCopies(isReason(form) ? EXPECTED : 1, form.text()));
      }
    }
    return new Grammar("REASON", phrases);
  }

  private static boolean isReason(SpokenForm form) {
    return form.meaning() instanceof Token.Order order && order.command().isReason();
  }

  private static boolean isResuming(SpokenForm form) {
    return form.meaning() instanceof Token.Order order && order.command() == Command.RESUME;
  }

  private synchronized Grammar grammar(Optional<FieldSpec> field, int answerRepeats) {
    Key key = new Key(field.map(FieldSpec::id), answerRepeats);
    Made known = made.get(key);
    if (known == null || known.field().orElse(null) != field.orElse(null)) {
      known = new Made(field, make(field, answerRepeats));
      made.put(key, known);
    }
    return known.grammar();
  }

  private Grammar make(Optional<FieldSpec> field, int answerRepeats) {
    List<String> phrases = new ArrayList<>(Collections.nCopies(EXPECTED, Word.UNKNOWN));
    List<SpokenForm> forms = listenedFor(field);
    for (SpokenForm form : forms) {
      int times = isAnswer(form) ? answerRepeats : repeats(form, field);
      phrases.addAll(Collections.nCopies(times, form.text()));
    }
    if (field.filter(Grammars::wantsNumber).isPresent()) {
      phrases.addAll(new NumberPairs(field.get()).of(forms));
    }
    String name =
        field.map(f -> f.id().name()).orElse(NO_FIELD) + (answerRepeats > 1 ? QUESTION : "");
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
        || field.kind() instanceof FieldKind.Date
        || isScore(field);
  }

  /** Whether its numbers are said digit by digit: a band, and codes of one digit or of three. */
  private static boolean wantsDigits(FieldSpec field) {
    return field.kind() instanceof FieldKind.Band
        || isScore(field) && longestNumber(field).filter(l -> l == 2).isEmpty();
  }

  /** How many digits the longest of a field's codes has. */
  private static Optional<Integer> longestNumber(FieldSpec field) {
    return Within.table(field).stream()
        .flatMap(t -> t.rows().stream())
        .filter(CodeTable.Row::isNumber)
        .map(r -> r.code().length())
        .max(Integer::compare);
  }

  private static boolean isMeasured(FieldSpec field) {
    return field.kind() instanceof FieldKind.Measured;
  }

  private static boolean isTime(FieldSpec field) {
    return field.kind() instanceof FieldKind.Time;
  }

  private static boolean isDate(FieldSpec field) {
    return field.kind() instanceof FieldKind.Date;
  }

  /** Whether the field's codes are numbers, such as a score. */
  private static boolean isScore(FieldSpec field) {
    return field.kind() instanceof FieldKind.Coded coded && coded.table().isNumbered();
  }

  /** Whether its codes are single digits; a measure is often named or corrected meanwhile. */
  static boolean isOneDigit(FieldSpec field) {
    return isScore(field) && longestNumber(field).equals(Optional.of(1));
  }

  /**
   * While a number is asked, no names of species are listened for and no short word: "winged" is
   * heard for "wing", "sex" for "six". A phrase with a short word in it is heard whole or not at
   * all, and does no harm. Letters are spelled for the species, the age, the sex, band sizes and
   * what a station lists by itself, only those that stand in a code; months are named for a day.
   */
  List<SpokenForm> listenedFor(Optional<FieldSpec> field) {
    boolean isDateAsked = field.filter(Grammars::isDate).isPresent();
    boolean isSpelled = field.map(f -> SPELLED.contains(f.id())).orElse(false);
    List<SpokenForm> forms =
        vocabulary.heard().stream()
            .filter(
                f ->
                    letter(f.meaning()).isEmpty()
                        || f.meaning() instanceof Token.LetterOrMonth && isDateAsked
                        || isSpelled && isInCode(letter(f.meaning()).get(), field.get()))
            .toList();
    forms =
        forms.stream()
            .filter(f -> isNear(f.meaning(), field) && !isReason(f))
            .filter(f -> !isOfDate(f.meaning()) || isDateAsked)
            .toList();
    if (field.filter(Grammars::wantsNumber).isEmpty()) {
      return forms;
    }
    boolean wantsDigits = wantsDigits(field.get());
    boolean isOneDigit = isOneDigit(field.get());
    List<SpokenForm> shorts = forms.stream().filter(f -> f.section().isShort()).toList();
    return forms.stream()
        .filter(f -> !isOf(FieldId.SPECIES, f))
        .filter(
            f ->
                isCodeOf(field.get().id(), f.meaning())
                    || !f.section().isShort()
                        && (phrases.contains(f) || shorts.stream().noneMatch(s -> isWithin(s, f))))
        .filter(f -> !wantsDigits || isDigit(f.meaning()) || !isNumber(f.meaning()) || isOneDigit)
        .filter(f -> !(f.meaning() instanceof Token.HundredAnd) || isMeasured(field.get()))
        .filter(f -> !(f.meaning() instanceof Token.HundredHours) || isTime(field.get()))
        .filter(f -> !isDate(field.get()) || !isOfAmount(f.meaning()))
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
    Optional<FieldId> asked = field.map(FieldSpec::id);
    return words.fields().stream().anyMatch(f -> areCodesHeard(f, asked));
  }

  /**
   * Whether words for the codes of a field are listened for.
   *
   * @param codesOf the field
   * @param asked the field that is asked meanwhile; empty where none is
   */
  static boolean areCodesHeard(FieldId codesOf, Optional<FieldId> asked) {
    return asked.isEmpty()
        || codesOf == asked.get()
        || ALWAYS.contains(codesOf)
        || BESIDE.getOrDefault(asked.get(), Set.of()).contains(codesOf);
  }

  /**
   * Whether words for the values of a field are listened for.
   *
   * @param field the field
   * @param asked the field that is asked meanwhile; empty where none is
   */
  static boolean areValuesHeard(FieldSpec field, Optional<FieldId> asked) {
    return isDate(field)
        ? asked.filter(field.id()::equals).isPresent()
        : Within.table(field).isEmpty() || areCodesHeard(field.id(), asked);
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
            : SPELLED.contains(spec.id()) && letter(token).isPresent();
    isExpected |= Within.table(spec).isPresent() && isCodeOf(spec.id(), token);
    return isExpected ? EXPECTED : 1;
  }

  private static boolean isNumberOf(FieldSpec field, SpokenForm form) {
    return wantsDigits(field)
        ? form.meaning() instanceof Token.Digit digit && isLikely(digit, field)
        : isNumber(form.meaning()) && !isSecondZero(form);
  }

  /** Whether a letter stands in a code of the field, ours or the set's. */
  private static boolean isInCode(Token.Letter letter, FieldSpec field) {
    return Within.table(field).stream()
        .flatMap(t -> t.rows().stream())
        .map(r -> (r.code() + r.own()).toUpperCase(Locale.ROOT))
        .anyMatch(code -> code.indexOf(letter.letter()) >= 0);
  }

  /** Whether a digit stands in any code of the field; every digit may stand in a band. */
  private static boolean isLikely(Token.Digit digit, FieldSpec field) {
    String text = String.valueOf(digit.value());
    return Within.table(field)
        .map(t -> t.rows().stream().anyMatch(r -> r.code().contains(text)))
        .orElse(true);
  }

  private static boolean isCodeOf(FieldId field, Token token) {
    if (token instanceof Token.NameOrCode both) {
      return both.words().fields().contains(field);
    }
    return token instanceof Token.CodeWords words
        && (words.fields().isEmpty() || words.fields().contains(field));
  }

  /** The short word for zero, which is heard for "two": rare in a measurement. */
  static boolean isSecondZero(SpokenForm form) {
    return form.text().equals("oh");
  }

  private static boolean isDigit(Token token) {
    return token instanceof Token.Digit;
  }

  private static Optional<Token.Letter> letter(Token token) {
    if (token instanceof Token.LetterOrMonth both) {
      return Optional.of(both.letter());
    }
    return token instanceof Token.Letter letter ? Optional.of(letter) : Optional.empty();
  }

  private static boolean isOfDate(Token token) {
    return token instanceof Token.Ordinal || token instanceof Token.MonthName;
  }

  private static boolean isOfAmount(Token token) {
    return token instanceof Token.Hundred || token instanceof Token.Point;
  }

  private static boolean isNumber(Token token) {
    return isDigit(token)
        || isOfDate(token)
        || token instanceof Token.LetterOrMonth
        || token instanceof Token.Teen
        || token instanceof Token.Tens
        || token instanceof Token.Hundred
        || token instanceof Token.HundredAnd
        || token instanceof Token.HundredHours
        || token instanceof Token.Point;
  }

  private static boolean isAnswer(SpokenForm form) {
    return form.meaning() instanceof Token.Order order
        && (order.command() == Command.AFFIRM || order.command() == Command.NEGATIVE);
  }
}
