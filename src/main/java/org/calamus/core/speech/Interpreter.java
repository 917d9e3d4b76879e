package org.calamus.core.speech;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.record.FieldId;

/**
 * Makes meaning of what was heard. The whole utterance must make sense: one unknown word, one word
 * of low confidence or one decoy, and nothing of it is taken.
 *
 * @param vocabulary all that can be said
 * @param form the station's form
 */
public record Interpreter(Vocabulary vocabulary, Form form) {

  private static final Credibility.Limits LIMITS = Credibility.Limits.usual();

  /** Of the phrase that ends a pause; hardly anything else is listened for then. */
  private static final double SURE_ENOUGH_TO_GO_ON = 0.6;

  /**
   * What means something only where a number follows or goes before, and what to say in its place:
   * "oh" is a zero, "no" takes the last value back for the number behind it. Else they are what
   * people say when something surprises them, and what is heard of many a short word.
   */
  private static final Map<String, String> INTERJECTIONS =
      Map.of("oh", "say zero", "no", "say negative, or correction");

  /** The longest things said to the console that are no number are names and codes in a row. */
  private static final Duration LEAST_TALK = Duration.ofMillis(2_400);

  private static final int LEAST_WORDS_OF_TALK = 4;

  /** Leaves out what cannot be said at the station. */
  public Interpreter {
    vocabulary = vocabulary.within(form);
  }

  /** The commands that may be about one field. */
  private static final Set<Command> FIELD_ORDERS =
      Set.of(Command.CORRECT, Command.NEGATIVE, Command.ERASE, Command.READBACK);

  /**
   * What an utterance means.
   *
   * @param utterance what was heard
   * @param open the field that is asked
   * @param lastGiven the field that a correction without a name is about: the one in question, or
   *     else the one given last
   * @param expected what makes whole values of those given in short
   */
  public Meaning interpret(
      Utterance utterance, Optional<FieldId> open, Optional<FieldId> lastGiven, Expected expected) {
    Utterance heard = heardAs(utterance, open, lastGiven, expected, Sense::ofItself);
    Credibility credibility = Credibility.of(heard, LIMITS);
    if (credibility.isChatter()) {
      return new Meaning.Chatter();
    }
    if (credibility.isUnclear()) {
      return new Meaning.Unclear(hint(heard, open, lastGiven));
    }
    Meaning meaning = meaning(heard.words(), open, lastGiven, expected);
    boolean isUnsure = heard.lowestConfidence() < LeastSure.of(meaning, open);
    return isUnsure ? new Meaning.Unclear("") : meaning;
  }

  /**
   * The way to hear an utterance that makes sense where it was said: of several the likeliest. What
   * is not for the console by its likeliest words, or makes no sense in any way, stays as it is.
   *
   * @param utterance what was heard
   * @param open the field that is asked
   * @param lastGiven as for its meaning
   * @param expected what makes whole values of those given in short
   * @param sense what a meaning comes to, for ways of hearing that come to the same; empty where it
   *     comes to nothing
   */
  public Utterance heardAs(
      Utterance utterance,
      Optional<FieldId> open,
      Optional<FieldId> lastGiven,
      Expected expected,
      Function<Meaning, Optional<?>> sense) {
    return Credibility.of(utterance, LIMITS).isChatter()
        ? utterance
        : Sense.in(utterance, words -> meaning(words, open, lastGiven, expected), sense);
  }

  private Meaning meaning(
      List<Word> words, Optional<FieldId> open, Optional<FieldId> lastGiven, Expected expected) {
    Optional<List<Token>> tokens = Tokens.of(words, vocabulary);
    if (tokens.isEmpty()) {
      return new Meaning.Unclear("");
    }
    if (tokens.get().stream().allMatch(Token.Nothing.class::isInstance)) {
      return new Meaning.Chatter();
    }
    Optional<String> instead = Optional.ofNullable(INTERJECTIONS.get(words.get(0).text()));
    boolean isPartOfNumber = tokens.get().size() > 1 && isSpelling(tokens.get().get(1));
    if (instead.isPresent() && isItself(words.get(0), tokens.get()) && !isPartOfNumber) {
      return new Meaning.Unclear(instead.get());
    }
    Optional<FieldId> asked = isCorrection(tokens.get()) ? lastGiven : open;
    return resolvedMeaning(resolved(tokens.get(), asked), open, lastGiven, expected);
  }

  /**
   * Whether an utterance that makes no sense sounds like talk of other things: it is long, and not
   * for its digits or letters.
   */
  public boolean isTalk(Utterance utterance) {
    long spelled = utterance.words().stream().filter(this::isSpelling).count();
    return utterance.voiced().compareTo(LEAST_TALK) >= 0
        && utterance.words().size() >= LEAST_WORDS_OF_TALK
        && 2 * spelled < utterance.words().size();
  }

  /** Whether a word stands for itself, and is not the first of a form of several words. */
  private boolean isItself(Word word, List<Token> tokens) {
    return Tokens.of(List.of(word), vocabulary)
        .filter(t -> t.get(0).equals(tokens.get(0)))
        .isPresent();
  }

  private boolean isSpelling(Word word) {
    return Tokens.of(List.of(word), vocabulary)
        .map(t -> t.get(0))
        .filter(this::isSpelling)
        .isPresent();
  }

  private boolean isSpelling(Token token) {
    return token instanceof Token.Digit
        || token instanceof Token.Teen
        || token instanceof Token.Tens
        || token instanceof Token.Ordinal
        || token instanceof Token.MonthName
        || token instanceof Token.LetterOrMonth
        || token instanceof Token.Point
        || token instanceof Token.Letter;
  }

  /**
   * Whether a paused console is told to go on: by the phrase alone, once or more, or by the phrase
   * twice at the end of other talk, since other people's talk glues to it.
   */
  public boolean isResuming(Utterance utterance) {
    if (isNoise(utterance)) {
      return false;
    }
    List<Word> words = utterance.words();
    for (int from = 0; from < words.size(); from++) {
      List<Word> last = words.subList(from, words.size());
      boolean isSure = last.stream().allMatch(w -> w.confidence() >= SURE_ENOUGH_TO_GO_ON);
      Optional<List<Token>> tokens = isSure ? Tokens.of(last, vocabulary) : Optional.empty();
      if (tokens.filter(all -> all.stream().allMatch(Interpreter::isResuming)).isPresent()) {
        return from == 0 || tokens.get().size() > 1;
      }
    }
    return false;
  }

  /**
   * What helps where a field was named, or a date corrected, and what followed is not listened for
   * now: its name alone opens it, and "correction" alone the field given last. Empty where nothing
   * is known that helps.
   */
  private String hint(Utterance utterance, Optional<FieldId> open, Optional<FieldId> lastGiven) {
    if (!utterance.hasUnknown() || isTalk(utterance)) {
      return "";
    }
    if (isCorrecting(utterance)
        && lastGiven.filter(FieldId.DATE::equals).isPresent()
        && !lastGiven.equals(open)) {
      return "say correction alone, then the date";
    }
    List<Word> known =
        utterance.words().stream().takeWhile(w -> !w.text().equals(Word.UNKNOWN)).toList();
    return IntStream.rangeClosed(1, known.size())
        .mapToObj(end -> sureToken(known.subList(0, end)))
        .flatMap(Optional::stream)
        .flatMap(t -> t instanceof Token.Field f ? Stream.of(f.field()) : Stream.empty())
        .reduce((shorter, longer) -> longer)
        .filter(f -> !Grammars.areValuesHeard(form.spec(f), open))
        .map(f -> "say " + form.spec(f).spoken() + " alone, then its value")
        .orElse("");
  }

  /** Whether its first word, surely said, is one that corrects the value before. */
  private boolean isCorrecting(Utterance utterance) {
    return sureToken(utterance.words().subList(0, 1))
        .map(List::of)
        .filter(Interpreter::isCorrection)
        .isPresent();
  }

  /** What some words are together, where they are one form of the vocabulary and surely said. */
  private Optional<Token> sureToken(List<Word> words) {
    boolean isSure = words.stream().allMatch(w -> w.confidence() >= LIMITS.leastConfidence());
    Optional<List<Token>> tokens = isSure ? Tokens.of(words, vocabulary) : Optional.empty();
    return tokens.filter(t -> t.size() == 1).map(t -> t.get(0));
  }

  /** Whether nobody spoke at all, whatever words the recogniser made of the sound. */
  public boolean isNoise(Utterance utterance) {
    return utterance.words().isEmpty()
        || Credibility.of(utterance, LIMITS).signs().contains(Credibility.Sign.NO_VOICE);
  }

  /**
   * Whether an utterance begins with the name of a field: whoever says that talks to the console,
   * even where the rest is not understood.
   */
  public boolean isNaming(Utterance utterance) {
    if (isNoise(utterance)) {
      return false;
    }
    List<Word> words = utterance.words();
    for (int end = 1; end <= words.size(); end++) {
      if (sureToken(words.subList(0, end)).filter(Interpreter::isName).isPresent()) {
        return true;
      }
    }
    return false;
  }

  private static boolean isName(Token token) {
    return token instanceof Token.Field || token instanceof Token.NameOrCode;
  }

  private static boolean isResuming(Token token) {
    return token instanceof Token.Order order && order.command() == Command.RESUME;
  }

  private static boolean isCorrection(List<Token> tokens) {
    return tokens.get(0) instanceof Token.Order order
        && (order.command() == Command.CORRECT || order.command() == Command.NEGATIVE);
  }

  /**
   * Decides for each letter that is also a month which it is: the month while a date is asked or
   * was named before it. And for each name that is also a code: the code while a field of the code
   * is asked or was named before it, but the name in front of a value of its field and behind any
   * other order.
   */
  private static List<Token> resolved(List<Token> tokens, Optional<FieldId> asked) {
    boolean isOrder = tokens.get(0) instanceof Token.Order && !isCorrection(tokens);
    Optional<FieldId> current = isOrder ? Optional.empty() : asked;
    List<Token> resolved = new ArrayList<>();
    for (int i = 0; i < tokens.size(); i++) {
      Token token = tokens.get(i);
      if (token instanceof Token.NameOrCode both) {
        boolean isName = i + 1 < tokens.size() && isValueOf(both.name(), tokens.get(i + 1));
        boolean isCode = !isName && current.filter(both.words().fields()::contains).isPresent();
        token = isCode ? both.words() : both.name();
      }
      if (token instanceof Token.LetterOrMonth both) {
        boolean isMonth = current.filter(FieldId.DATE::equals).isPresent();
        token = isMonth ? both.month() : both.letter();
      }
      if (token instanceof Token.Field named) {
        current = Optional.of(named.field());
      }
      resolved.add(token);
    }
    return resolved;
  }

  private static boolean isValueOf(Token.Field name, Token token) {
    return token instanceof Token.CodeWords words
            && (words.fields().isEmpty() || words.fields().contains(name.field()))
        || token instanceof Token.Digit
        || token instanceof Token.Teen
        || token instanceof Token.Tens;
  }

  private Meaning resolvedMeaning(
      List<Token> tokens, Optional<FieldId> open, Optional<FieldId> lastGiven, Expected expected) {
    if (tokens.stream().allMatch(Interpreter::isResuming)) {
      return new Meaning.Order(Command.RESUME, Optional.empty());
    }
    if (tokens.get(0) instanceof Token.Order order) {
      List<Token> rest = tokens.subList(1, tokens.size());
      boolean corrects = order.command() == Command.CORRECT || order.command() == Command.NEGATIVE;
      if (rest.isEmpty()) {
        return new Meaning.Order(order.command(), Optional.empty());
      }
      boolean namesField = FIELD_ORDERS.contains(order.command());
      if (namesField && rest.size() == 1 && rest.get(0) instanceof Token.Field field) {
        return new Meaning.Order(order.command(), Optional.of(field.field()));
      }
      Optional<String> digits =
          order.command() == Command.AMEND ? SpokenNumber.allDigits(rest) : Optional.empty();
      if (digits.isPresent()) {
        return new Meaning.Amend(digits.get());
      }
      return corrects ? values(rest, lastGiven, expected, true) : new Meaning.Unclear("");
    }
    if (tokens.size() == 1 && tokens.get(0) instanceof Token.Field field) {
      return new Meaning.Open(field.field());
    }
    return values(tokens, open, expected, false);
  }

  private Meaning values(
      List<Token> tokens, Optional<FieldId> unnamed, Expected expected, boolean isCorrection) {
    List<Meaning.Item> items = new ArrayList<>();
    int at = 0;
    while (at < tokens.size()) {
      Optional<FieldId> field = fieldOf(tokens.get(at), unnamed);
      if (field.isEmpty() && tokens.get(at) instanceof Token.CodeWords words) {
        return new Meaning.Unclear(words.fields().isEmpty() ? "" : "name the field first");
      }
      int end = endOfSegment(tokens, at, field);
      Optional<Meaning.Item> item = item(tokens.subList(at, end), field, expected);
      if (item.isEmpty()) {
        return new Meaning.Unclear("");
      }
      items.add(item.get());
      at = end;
    }
    return isOneAnswer(items, unnamed)
        ? new Meaning.Values(items, isCorrection)
        : new Meaning.Unclear("");
  }

  /**
   * Whether all of it may be one answer. Nobody gives a field two values in one breath, nor a value
   * and, without a name, something that is none: talk of other things is heard so.
   */
  private static boolean isOneAnswer(List<Meaning.Item> items, Optional<FieldId> unnamed) {
    Map<Optional<FieldId>, Heard> given = new HashMap<>();
    for (Meaning.Item item : items) {
      Heard before = given.putIfAbsent(item.field().or(() -> unnamed), item.heard());
      boolean isOther = before != null && !before.equals(item.heard());
      boolean isNone = item.field().isEmpty() && item.heard() instanceof Heard.No;
      if (isOther || isNone && items.size() > 1) {
        return false;
      }
    }
    return true;
  }

  /** The field that a segment is about: the one it names, or else the unnamed one. */
  private static Optional<FieldId> fieldOf(Token first, Optional<FieldId> unnamed) {
    if (first instanceof Token.Field named) {
      return Optional.of(named.field());
    }
    return first instanceof Token.CodeWords words && !words.fields().isEmpty()
        ? words.fieldWhile(unnamed)
        : unnamed;
  }

  /**
   * A segment runs to the next field name, and to the next code in words that names its field; a
   * field of several codes takes all that follow and may be its own.
   */
  private int endOfSegment(List<Token> tokens, int start, Optional<FieldId> field) {
    boolean takesMany =
        field
            .filter(f -> form.has(f) && form.spec(f).kind() instanceof FieldKind.CodedMany)
            .isPresent();
    int at = start + 1;
    if (tokens.get(start) instanceof Token.CodeWords && !takesMany) {
      return at;
    }
    while (at < tokens.size()
        && !(tokens.get(at) instanceof Token.Field)
        && !(isOwnCode(tokens.get(at))
            && !(tokens.get(at - 1) instanceof Token.Field)
            && !(takesMany && isCodeOf(tokens.get(at), field)))) {
      at++;
    }
    return at;
  }

  private static boolean isOwnCode(Token token) {
    return token instanceof Token.CodeWords words && !words.fields().isEmpty();
  }

  private static boolean isCodeOf(Token token, Optional<FieldId> field) {
    return token instanceof Token.CodeWords words
        && field.filter(words.fields()::contains).isPresent();
  }

  private Optional<Meaning.Item> item(
      List<Token> segment, Optional<FieldId> field, Expected expected) {
    Token first = segment.get(0);
    boolean isNamed = first instanceof Token.Field;
    List<Token> value = isNamed ? segment.subList(1, segment.size()) : segment;
    if (value.isEmpty()
        || field.filter(form::has).isEmpty()
        || value.stream().anyMatch(Interpreter::isNoValue)) {
      return Optional.empty();
    }
    Optional<FieldId> named = isNamed || isOwnCode(first) ? field : Optional.empty();
    FieldSpec spec = form.spec(field.get());
    return Optional.of(new Meaning.Item(named, ValueReader.spoken(spec, value, expected)));
  }

  private static boolean isNoValue(Token token) {
    return token instanceof Token.Order
        || token instanceof Token.Nothing
        || token instanceof Token.Field;
  }
}
