package org.calamus.boot;

import java.nio.ShortBuffer;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.calamus.adapter.microphone.WavSource;
import org.calamus.core.dialogue.Accounts;
import org.calamus.core.dialogue.Circumstances;
import org.calamus.core.dialogue.Understood;
import org.calamus.core.hearing.Pitch;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Hypothesis;
import org.calamus.core.speech.Utterance;
import org.calamus.port.AudioSource;
import org.calamus.port.Clock;
import org.calamus.port.KeptUtterances.Damaged;
import org.calamus.port.KeptUtterances.Kept;
import org.calamus.port.KeptUtterances.Line;
import org.calamus.port.Recogniser;

/**
 * Hears one thing after the other anew: what the recogniser makes of it today, and what that means
 * today in the circumstances in which it was said.
 *
 * @param recogniser hears
 * @param accounts makes meaning of what is heard
 * @param report is told the result
 * @param clock the time of recordings that have none of their own
 */
record Replay(Recogniser recogniser, Accounts accounts, ReplayReport report, Clock clock) {

  /** A line of a list. */
  void line(Line line) {
    if (line instanceof Damaged damaged) {
      report.leaveOut(damaged.sentence());
    } else if (line instanceof Kept kept) {
      kept(kept);
    } else {
      throw new AssertionError(line);
    }
  }

  private void kept(Kept kept) {
    Optional<Grammar> grammar = accounts.grammar(kept.grammar());
    if (grammar.isEmpty()) {
      report.leaveOut(
          ReplayReport.nameOf(kept)
              + ": Today's form has no field "
              + kept.grammar()
              + "; replay it with the form of its time.");
      return;
    }
    try {
      short[] sound = sound(kept);
      List<Hypothesis> heard = recogniser.recognise(grammar.get(), sound);
      Utterance then = kept.event().utterance();
      Utterance now =
          Utterance.of(
              heard,
              then.loudness(),
              then.voiced(),
              then.aboveNoise(),
              Pitch.in(sound, AudioSource.RATE));
      Understood meaning = accounts.understood(kept.account().met(), kept.event().at(), now);
      report.compare(kept, now, meaning);
    } catch (AudioSource.AudioException e) {
      report.leaveOut(ReplayReport.nameOf(kept) + ": " + e.getMessage());
    }
  }

  /** The sound as it was kept, and not a part of it. */
  private static short[] sound(Kept kept) {
    ShortBuffer sound = ShortBuffer.allocate(kept.samples());
    boolean isWhole = true;
    try (WavSource source = new WavSource(kept.wav(), WavSource.Pace.FAST)) {
      source.open();
      while (isWhole && source.read() instanceof AudioSource.Block block) {
        isWhole = block.samples().length <= sound.remaining();
        sound.put(block.samples(), 0, Math.min(block.samples().length, sound.remaining()));
      }
    }
    if (!isWhole || sound.hasRemaining()) {
      throw new AudioSource.AudioException(
          "The recording is not as it was kept; copy it again.", null);
    }
    return sound.array();
  }

  /** A recording of which nobody knows what it was understood as. */
  void recording(Path file, Circumstances met) {
    Grammar grammar = accounts.grammar(met.asked().orElseThrow().name()).orElseThrow();
    try {
      List<Utterance> heard = recogniser.hear(grammar, new WavSource(file, WavSource.Pace.FAST));
      for (Utterance utterance : heard) {
        report.tell(file, met, utterance, accounts.understood(met, clock.now(), utterance));
      }
      if (heard.isEmpty()) {
        report.leaveOut("No speech was heard in " + file + "; check that it is loud enough.");
      }
    } catch (AudioSource.AudioException e) {
      report.leaveOut(e.getMessage());
    }
  }
}
