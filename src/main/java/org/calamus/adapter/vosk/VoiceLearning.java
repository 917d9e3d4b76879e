package org.calamus.adapter.vosk;

import java.util.Optional;
import org.calamus.core.speech.Credibility;
import org.calamus.core.speech.Utterance;
import org.calamus.port.TimbreMemory;

/**
 * Learns the timbre of the voice from what was surely said to the console, and keeps it for the
 * next time. With a model whose features are others' nothing is learnt. Belongs to the ears'
 * thread.
 */
final class VoiceLearning {

  /** An utterance is learnt from where the recogniser is so sure of each word. */
  private static final double SURE = 0.5;

  /** How often it is kept, in utterances learnt from: a session may end by a pulled plug. */
  private static final int KEPT_EVERY = 25;

  private final Optional<double[]> expected;
  private final TimbreMemory memory;
  private Optional<TimbreControl> control = Optional.empty();
  private String microphone = "";
  private int learnt;

  /**
   * Learning that has not begun.
   *
   * @param expected the mean of the features that the recogniser expects; empty where it is not
   *     known
   * @param memory what was learnt before
   */
  VoiceLearning(Optional<double[]> expected, TimbreMemory memory) {
    this.expected = expected;
    this.memory = memory;
  }

  /** Begins with a microphone; the same one again changes nothing. */
  void begin(String name, Suppression suppression) {
    if (control.isPresent() && name.equals(microphone)) {
      return;
    }
    keep();
    microphone = name;
    control = expected.map(TimbreControl::new);
    control.ifPresent(
        c -> {
          memory.recall(name).ifPresent(c::recall);
          suppression.tune(c);
        });
  }

  /** Learns from an utterance, and changes the sound of the next. */
  void learn(Utterance heard, short[] sound, Suppression suppression) {
    boolean isSure =
        !heard.hasUnknown()
            && heard.lowestConfidence() >= SURE
            && !Credibility.of(heard, Credibility.Limits.usual()).isChatter();
    if (control.isEmpty() || !isSure) {
      return;
    }
    control.get().learn(sound);
    suppression.tune(control.get());
    learnt++;
    if (learnt == KEPT_EVERY) {
      keep();
    }
  }

  /** Keeps what was learnt since it was kept last. */
  void keep() {
    if (learnt > 0) {
      control.ifPresent(c -> memory.keep(microphone, c.timbre()));
      learnt = 0;
    }
  }
}
