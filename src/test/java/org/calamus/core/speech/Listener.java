package org.calamus.core.speech;

import java.util.Optional;
import java.util.stream.Collectors;
import org.calamus.core.form.CodeSet;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldId;
import org.calamus.support.Fenwick;
import org.calamus.support.WholeRecord;

/** Puts what the interpreter makes of words into one short text, for tables. */
final class Listener {

  private static final Interpreter LABORATORY =
      new Interpreter(Fenwick.vocabulary(), WholeRecord.form(CodeSet.LABORATORY));
  private static final Interpreter EURING =
      new Interpreter(Fenwick.vocabulary(), WholeRecord.form(CodeSet.EURING));

  private Listener() {}

  static Meaning meaning(FieldId open, Optional<FieldId> last, BandNumber expected, String words) {
    return LABORATORY.interpret(
        Utterance.of(words),
        Optional.of(open),
        last,
        Fenwick.expected(Optional.ofNullable(expected)));
  }

  /**
   * As {@code 92}, {@code 15|50} for twins, {@code 89 or 18.9?} for what it perhaps was, {@code ?
   * hint} where there is no value.
   */
  static String hear(FieldId open, BandNumber expected, String words) {
    return text(meaning(open, Optional.empty(), expected, words));
  }

  static String hearInEuring(FieldId open, String words) {
    return text(
        EURING.interpret(
            Utterance.of(words),
            Optional.of(open),
            Optional.empty(),
            Fenwick.expected(Optional.empty())));
  }

  static String hear(FieldId open, String words) {
    return hear(open, null, words);
  }

  static String text(Meaning meaning) {
    if (meaning instanceof Meaning.Values values) {
      return (values.isCorrection() ? "correct " : "")
          + values.items().stream().map(Listener::item).collect(Collectors.joining(", "));
    }
    if (meaning instanceof Meaning.Order order) {
      return "order " + order.command() + order.field().map(f -> " " + f).orElse("");
    }
    if (meaning instanceof Meaning.Open named) {
      return "open " + named.field();
    }
    return meaning instanceof Meaning.Unclear unclear ? "? " + unclear.hint() : "chatter";
  }

  private static String item(Meaning.Item item) {
    return item.field().map(f -> f + " ").orElse("") + value(item.heard());
  }

  private static String value(Heard heard) {
    if (heard instanceof Heard.One one) {
      return one.value().text();
    }
    if (heard instanceof Heard.Ending ending) {
      return ending.value().text();
    }
    if (heard instanceof Heard.Twins twins) {
      return twins.value().text()
          + twins.others().stream().map(o -> "|" + o.text()).collect(Collectors.joining());
    }
    if (heard instanceof Heard.Perhaps perhaps) {
      return perhaps.value().text() + " or " + perhaps.other().text() + "?";
    }
    return "? " + ((Heard.No) heard).hint();
  }
}
