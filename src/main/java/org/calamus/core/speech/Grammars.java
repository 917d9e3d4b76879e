package org.calamus.core.speech;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;

/**
 * The grammars: what is likely while a field is asked.
 *
 * <p>The recogniser makes a bigram of the phrases and counts them, so words join freely and an
 * entry that occurs eight times is the likelier for it. Repeating what is expected eight times,
 * adding all pairs of tens and units, and leaving short words that sound like a number out while
 * one is asked raised whole 9-digit band numbers from 6 of 20 to 20 of 20 on one speaker;
 * thirty-two repeats hurt.
 *
 * @param vocabulary all that can be said
 */
public record Grammars(Vocabulary vocabulary) {

  private static final int EXPECTED = 8;

  /** The grammar while a field is asked, or with no field while only commands are awaited. */
  public Grammar asking(Optional<FieldSpec> field) {
    return grammar(field, 1);
  }

  /** The grammar while a question about a field is open: its answers first, then a new value. */
  public Grammar questioning(Optional<FieldSpec> field) {
    return grammar(field, EXPECTED);
  }

  private Grammar grammar(Optional<FieldSpec> field, int answerRepeats) {
    boolean wantsNumber = field.map(f -> !(f.kind() instanceof FieldKind.Coded)).orElse(false);
    List<String> phrases = new ArrayList<>();
    Collections.addAll(phrases, repeated(Word.UNKNOWN));
    for (SpokenForm form : vocabulary.forms()) {
      if (isListenedFor(form, field, wantsNumber)) {
        int times = isExpected(form, field) ? EXPECTED : 1;
        if (isAnswer(form)) {
          times = answerRepeats;
        }
        phrases.addAll(Collections.nCopies(times, form.text()));
      }
    }
    field.filter(f -> f.kind() instanceof FieldKind.Measured).ifPresent(f -> pairs(phrases));
    String name = field.map(f -> f.id().name()).orElse("NONE") + (answerRepeats > 1 ? "?" : "");
    return new Grammar(name, phrases);
  }

  private static String[] repeated(String phrase) {
    return Collections.nCopies(EXPECTED, phrase).toArray(new String[0]);
  }

  private static boolean isListenedFor(
      SpokenForm form, Optional<FieldSpec> field, boolean wantsNumber) {
    if (form.section().isShort() && wantsNumber) {
      return false;
    }
    boolean isLetter = form.meaning() instanceof Token.Letter;
    return !isLetter || field.map(f -> f.id() == FieldId.SPECIES).orElse(false);
  }

  private static boolean isExpected(SpokenForm form, Optional<FieldSpec> field) {
    if (field.isEmpty()) {
      return form.meaning() instanceof Token.Order;
    }
    FieldId id = field.get().id();
    Token token = form.meaning();
    if (field.get().kind() instanceof FieldKind.Coded) {
      return token instanceof Token.CodeWords words && words.field().map(id::equals).orElse(true)
          || id == FieldId.SPECIES && token instanceof Token.Letter;
    }
    return id == FieldId.BAND ? token instanceof Token.Digit : isNumber(token);
  }

  private static boolean isNumber(Token token) {
    return token instanceof Token.Digit
        || token instanceof Token.Teen
        || token instanceof Token.Tens
        || token instanceof Token.Hundred
        || token instanceof Token.Point;
  }

  private static boolean isAnswer(SpokenForm form) {
    return form.meaning() instanceof Token.Order order
        && (order.command() == Command.AFFIRM || order.command() == Command.NEGATIVE);
  }

  private void pairs(List<String> phrases) {
    for (SpokenForm tens : vocabulary.forms()) {
      for (SpokenForm unit : vocabulary.forms()) {
        if (tens.meaning() instanceof Token.Tens
            && unit.meaning() instanceof Token.Digit digit
            && digit.value() > 0) {
          phrases.add(tens.text() + " " + unit.text());
        }
      }
    }
  }
}
