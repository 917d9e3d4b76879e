package org.calamus.core.speech;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;

/**
 * The pairs of words that a number, and a number behind a word that announces it, is made of.
 *
 * @param field the field that is asked
 */
record NumberPairs(FieldSpec field) {

  /** The fields whose numbers are often given while another is asked. */
  private static final Set<FieldId> OFTEN_NAMED = Set.of(FieldId.BAND, FieldId.WING, FieldId.MASS);

  /** The fields of one digit. */
  private static final Set<FieldId> SCORES =
      Set.of(
          FieldId.SKULL,
          FieldId.CLOACAL_PROTUBERANCE,
          FieldId.BROOD_PATCH,
          FieldId.FAT,
          FieldId.BODY_MOULT,
          FieldId.FEATHER_WEAR,
          FieldId.JUVENAL_PLUMAGE);

  /** The pairs of what is listened for, each as a phrase. */
  List<String> of(List<SpokenForm> listened) {
    List<SpokenForm> forms = listened.stream().filter(f -> !Grammars.isSecondZero(f)).toList();
    List<String> pairs = new ArrayList<>();
    for (SpokenForm first : forms) {
      for (SpokenForm second : forms) {
        if (isPair(first.meaning(), second.meaning())) {
          pairs.add(first.text() + " " + second.text());
        }
      }
    }
    return pairs;
  }

  private boolean isPair(Token first, Token next) {
    if (name(first).filter(SCORES::contains).isPresent()) {
      return next instanceof Token.Digit || isNone(next);
    }
    if (field.kind() instanceof FieldKind.Time) {
      return isPairOfTime(first, next);
    }
    if (field.kind() instanceof FieldKind.Date) {
      return isPairOfDate(first, next);
    }
    boolean isMeasured = field.kind() instanceof FieldKind.Measured || Grammars.isOneDigit(field);
    if (first instanceof Token.Digit) {
      return next instanceof Token.Digit || isMeasured && next instanceof Token.Point;
    }
    if (first instanceof Token.Tens && Tokens.isUnit(next)) {
      return true;
    }
    if (!isMeasured) {
      return false;
    }
    if (first instanceof Token.Tens || first instanceof Token.Teen) {
      return next instanceof Token.Point;
    }
    if (first instanceof Token.Point) {
      return next instanceof Token.Digit;
    }
    return isAnnouncing(first) && (next instanceof Token.Digit || next instanceof Token.Tens);
  }

  private boolean isAnnouncing(Token token) {
    return name(token).filter(n -> n == field.id() || OFTEN_NAMED.contains(n)).isPresent()
        || token instanceof Token.Order order
            && (order.command() == Command.CORRECT || order.command() == Command.NEGATIVE);
  }

  private static boolean isPairOfTime(Token first, Token next) {
    boolean isPart =
        next instanceof Token.Teen || next instanceof Token.Tens || next instanceof Token.Digit;
    return (first instanceof Token.Digit || first instanceof Token.Teen) && isPart
        || first instanceof Token.Tens && Tokens.isUnit(next);
  }

  /** A day before its month or behind it, and a year. */
  private static boolean isPairOfDate(Token first, Token next) {
    boolean isFirstNumber = isNumberOfDate(first);
    boolean isNextNumber = isNumberOfDate(next);
    return isMonth(first) && isNextNumber
        || isFirstNumber && isMonth(next)
        || first instanceof Token.Digit && next instanceof Token.Digit
        || first instanceof Token.Tens && isNextNumber
        || first instanceof Token.Ordinal && isNextNumber && !(next instanceof Token.Ordinal);
  }

  private static boolean isMonth(Token token) {
    return token instanceof Token.MonthName || token instanceof Token.LetterOrMonth;
  }

  private static boolean isNumberOfDate(Token token) {
    return token instanceof Token.Digit
        || token instanceof Token.Teen
        || token instanceof Token.Tens
        || token instanceof Token.Ordinal;
  }

  private static boolean isNone(Token token) {
    return token instanceof Token.CodeWords words && words.fields().isEmpty();
  }

  private static Optional<FieldId> name(Token token) {
    if (token instanceof Token.NameOrCode both) {
      return Optional.of(both.name().field());
    }
    return token instanceof Token.Field named ? Optional.of(named.field()) : Optional.empty();
  }
}
