package org.calamus.core.dialogue;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.Entry;
import org.calamus.core.record.Provenance;

/**
 * What became of an utterance.
 *
 * @param kind of what kind it was
 * @param taken the values that were taken because of it, as {@code WING=93}
 * @param said what the console answered; empty where it was silent
 */
public record Outcome(Kind kind, List<String> taken, String said) {

  /** The kinds of outcome; where several hold, the first in this order. */
  public enum Kind {
    /** It was not understood, and was asked for again. */
    ASKED_AGAIN,
    /** A question was asked, or an open one was followed by another. */
    QUESTION,
    /** One or more values were taken. */
    TAKEN,
    /** A value was refused. */
    REFUSED,
    /** A command was carried out or answered, or a field was turned to. */
    COMMAND,
    /** Nothing came of it. */
    NOTHING
  }

  /** Copies the list. */
  public Outcome {
    Objects.requireNonNull(kind);
    Objects.requireNonNull(said);
    taken = List.copyOf(taken);
  }

  /** What became of an utterance that was understood so in a state and led to a step. */
  static Outcome of(State before, Understood understood, Step step) {
    List<String> taken =
        effects(step, Effect.JournalValue.class).stream()
            .filter(v -> isGiven(v.entry()))
            .map(v -> v.field().name() + "=" + v.entry().value().text())
            .toList();
    List<String> said = effects(step, Effect.Say.class).stream().map(Effect.Say::phrase).toList();
    return new Outcome(kind(before, understood, step, !taken.isEmpty()), taken, last(said));
  }

  private static Kind kind(State before, Understood understood, Step step, boolean isTaken) {
    State after = step.state();
    if (effects(step, Effect.Sound.class).stream().anyMatch(s -> s.tone() == Tone.NOT_UNDERSTOOD)) {
      return Kind.ASKED_AGAIN;
    }
    if (after.question().isPresent() && !after.question().equals(before.question())) {
      return Kind.QUESTION;
    }
    if (isTaken) {
      return Kind.TAKEN;
    }
    switch (understood.kind()) {
      case VALUES:
        return step.effects().isEmpty() ? Kind.NOTHING : Kind.REFUSED;
      case FIELD:
      case COMMAND:
        return Kind.COMMAND;
      default:
        return Kind.NOTHING;
    }
  }

  /** Whether somebody gave the value; what the console concludes follows from another. */
  private static boolean isGiven(Entry entry) {
    return entry.provenance().way() != Provenance.Way.CONCLUDED;
  }

  private static <T extends Effect> List<T> effects(Step step, Class<T> kind) {
    return step.effects().stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private static String last(List<String> phrases) {
    return Optional.of(phrases).filter(p -> !p.isEmpty()).map(p -> p.get(p.size() - 1)).orElse("");
  }
}
