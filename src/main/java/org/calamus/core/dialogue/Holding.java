package org.calamus.core.dialogue;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.Policy;

/** How long the bird has been in the hand, and the warnings when that gets too long. */
final class Holding {

  private final Policy policy;

  Holding(Policy policy) {
    this.policy = policy;
  }

  /** How long; empty where there is no bird in the hand. */
  Optional<Duration> held(State state) {
    return state
        .record()
        .filter(r -> r.kind().hasBird() && !state.isCorrecting())
        .filter(r -> !r.caught().isEnteredLater(policy.zone()))
        .map(r -> Duration.between(r.capturedAt(), until(r, state)))
        .map(d -> d.isNegative() ? Duration.ZERO : d);
  }

  /** A bird that went while its record still lacks a remark is in the hand no more. */
  private static Instant until(CaptureRecord record, State state) {
    return record.entry(FieldId.RELEASE).map(Entry::at).orElse(state.console().now());
  }

  View.Hold hold(State state) {
    Duration held = held(state).orElse(Duration.ZERO);
    if (held.compareTo(policy.limit()) >= 0) {
      return View.Hold.OVER;
    }
    return held.compareTo(policy.warnAfter()) >= 0 ? View.Hold.LONG : View.Hold.WITHIN;
  }

  /**
   * A second has passed: where the bird is newly held too long the console says so, once for each
   * step, when nobody speaks. It is not the phrase that "say again" repeats.
   */
  Step ticked(State state) {
    View.Hold hold = hold(state);
    boolean isNews = hold.compareTo(state.console().warned()) > 0;
    boolean isQuiet = !state.console().isSpeaking() && !state.console().isHearing();
    if (!isNews || !isQuiet) {
      return Step.of(state);
    }
    long minutes = held(state).orElseThrow().toMinutes();
    String advice = hold == View.Hold.OVER ? ". release the bird" : "";
    String shown =
        "The bird has been held for "
            + minutes
            + " minutes"
            + (hold == View.Hold.OVER
                ? ", the station's limit: release it; what was taken is kept."
                : ".");
    return Step.of(state.console(c -> c.withWarned(hold)).message(shown))
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .then(
            new Effect.Say(
                "bird held " + Spoken.digits(String.valueOf(minutes)) + " minutes" + advice));
  }
}
