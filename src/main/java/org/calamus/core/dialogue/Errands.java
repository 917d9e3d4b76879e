package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.Optional;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Heard;
import org.calamus.core.speech.Meaning;

/**
 * The questions that are about something else than a value of the bird in the hand: which saved
 * record is to be corrected, and why, and which nets were opened or closed. What is struck and said
 * while one is open answers it.
 */
final class Errands {

  private final Correcting correcting;
  private final Amending amending;
  private final NetOrders nets;
  private final Prompts prompts;

  Errands(Setup setup) {
    this.correcting = new Correcting(setup);
    this.amending = new Amending(setup);
    this.nets = new NetOrders(setup);
    this.prompts = new Prompts(setup);
  }

  /** Whether a question is one of these. */
  static boolean isErrand(Question question) {
    return question instanceof Question.Reopen
        || question instanceof Question.Reason
        || question instanceof Question.Nets;
  }

  /** Whether one of these questions is open. */
  static boolean isOpen(State state) {
    return state.question().filter(Errands::isErrand).isPresent();
  }

  /** The field whose values are listened for meanwhile. */
  static Optional<FieldId> heardLike(Question question) {
    if (question instanceof Question.Nets nets) {
      return nets.field();
    }
    return question instanceof Question.Reopen ? Optional.of(FieldId.BAND) : Optional.empty();
  }

  /** Whether a key may be struck for the answer. */
  static boolean accepts(State state, char c) {
    boolean isDigit = c >= '0' && c <= '9';
    boolean isLetter = c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z';
    boolean isNets = state.question().filter(Question.Nets.class::isInstance).isPresent();
    return isDigit || isNets && (isLetter || c == '.');
  }

  /** Enter was struck behind some keys. */
  Step keyed(State state, String keys, Instant at) {
    if (state.question().orElseThrow() instanceof Question.Nets) {
      return nets.keyed(state, keys, at);
    }
    return state.question().orElseThrow() instanceof Question.Reopen
        ? correcting.ending(state, keys)
        : amending.keyed(state, keys, at);
  }

  /** Values were said. */
  Step said(State state, Meaning.Values given, Instant at) {
    Question question = state.question().orElseThrow();
    if (question instanceof Question.Nets) {
      return nets.said(state, given, at);
    }
    Optional<String> digits =
        given.items().size() == 1 && question instanceof Question.Reopen
            ? digits(given.items().get(0).heard())
            : Optional.empty();
    return digits
        .map(d -> correcting.ending(state, d))
        .orElseGet(() -> prompts.miss(state, answers(question)));
  }

  private static Optional<String> digits(Heard heard) {
    if (heard instanceof Heard.Ending ending) {
      return Optional.of(ending.digits());
    }
    return heard instanceof Heard.One one
        ? Optional.of(one.value().text().replaceAll("\\D", ""))
        : Optional.empty();
  }

  /** "Affirm", or Enter alone. */
  Step affirm(State state, Instant at) {
    Question question = state.question().orElseThrow();
    if (question instanceof Question.Nets) {
      return nets.all(state, Optional.empty(), at);
    }
    return question instanceof Question.Reopen reopen
        ? correcting.reopen(state, reopen.last().id())
        : prompts.miss(state, answers(question));
  }

  /** "Negative": the question is dropped. */
  Step negative(State answered) {
    return prompts.prompt(answered, "going on");
  }

  /** What answers the question, as said. */
  static String answers(Question question) {
    if (question instanceof Question.Nets) {
      return NetOrders.answers();
    }
    return question instanceof Question.Reopen
        ? "say affirm, or last digits of the band"
        : Amending.answers();
  }

  /** The question in words, as the screen shows it. */
  static String shown(Question question) {
    if (question instanceof Question.Nets asked) {
      return NetOrders.shown(asked);
    }
    return question instanceof Question.Reopen reopen
        ? "Which saved record is to be corrected? Enter: "
            + reopen.last().band().map(b -> b.text()).orElse("record " + reopen.last().id())
            + ", the last one. Last digits and Enter: that band."
        : "Why was it wrong? Say it, or strike its number and Enter.";
  }

  /** What is asked, in a word or two. */
  static String asked(Question question) {
    if (question instanceof Question.Nets) {
      return "Which nets?";
    }
    return question instanceof Question.Reopen ? "Which record?" : "Why was it wrong?";
  }
}
