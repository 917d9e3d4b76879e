package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.instrument.Settled;
import org.calamus.core.instrument.Weighing;
import org.calamus.core.record.Provenance;
import org.calamus.core.rule.Finding;
import org.calamus.core.speech.Heard;

/** The part of the dialogue that listens to instruments. */
final class Scales {

  /** The doubt about a value that was measured before a bird was begun. */
  static final String EARLY = "scale.early";

  private final Setup setup;
  private final Offers offers;

  Scales(Setup setup) {
    this.setup = setup;
    this.offers = new Offers(setup);
  }

  /** A reading arrived: it is shown, and taken once it has settled. */
  Step reading(State state, Event.ReadingArrived arrived) {
    DeviceDescription device = setup.devices().get(arrived.device());
    if (device == null) {
      return Step.of(state);
    }
    Weighing before =
        state.console().weighings().getOrDefault(arrived.port(), Weighing.idle(device.rule()));
    Weighing after = before.step(arrived.reading(), arrived.at());
    State shown = state.console(c -> c.withReading(arrived.port(), arrived.reading(), after));
    return after.settled().isEmpty()
        ? Step.of(shown)
        : settled(shown, device, after.settled().get(), arrived.at());
  }

  /**
   * A settled value is taken once a bird: a field that has its value is left as it is. It waits
   * while a question is open or keys are struck that are not entered yet.
   */
  private Step settled(State state, DeviceDescription device, Settled settled, Instant at) {
    if (state.isCorrecting()) {
      return inCorrection(state, offer(device, settled), at);
    }
    boolean isFilled = state.record().flatMap(r -> r.entry(device.field())).isPresent();
    if (isFilled) {
      return Step.of(state);
    }
    Offer offer = offer(device, settled);
    if (state.record().isEmpty()) {
      return early(state, offer, settled);
    }
    boolean mustWait = state.question().isPresent() || !state.face().keys().isEmpty();
    return mustWait
        ? Step.of(state.console(c -> c.withWaiting(Optional.of(offer))))
        : offers.offer(state, List.of(offer), at);
  }

  private static Offer offer(DeviceDescription device, Settled settled) {
    String detail =
        device.name()
            + ", "
            + settled.how().words()
            + ": "
            + String.join(" | ", settled.rawLines());
    return new Offer(
        device.field(),
        new Heard.One(settled.value()),
        new Provenance(Provenance.Way.MEASURED, detail));
  }

  /** The bird of a saved record is gone: what lies on the pan is taken only where it is asked. */
  private Step inCorrection(State state, Offer offer, Instant at) {
    boolean isAsked =
        state.question().isEmpty()
            && state.face().keys().isEmpty()
            && state.open().filter(f -> f == offer.field()).isPresent();
    return isAsked ? offers.offer(state, List.of(offer), at) : Step.of(state);
  }

  /**
   * Something was weighed before a bird was begun: it waits for the first value and is asked about
   * then, since it may have been the bird before.
   */
  private Step early(State state, Offer offer, Settled settled) {
    FieldSpec spec = setup.form().spec(offer.field());
    String shown = spec.label() + " " + setup.phrases().shown(spec, settled.value());
    String spoken = setup.phrases().spokenWithName(spec, settled.value());
    Finding doubt =
        new Finding(
            EARLY,
            Finding.Severity.ASKS,
            offer.field(),
            shown + " was weighed before this bird was begun: the bird before may have been meant.",
            spoken + " was before this bird");
    Offer doubted =
        new Offer(
            offer.field(), offer.heard(), offer.provenance(), offer.overruled(), List.of(doubt));
    return Step.of(
            state
                .console(c -> c.withWaiting(Optional.of(doubted)))
                .message(shown + " waits for a bird: it is asked about with the first value."))
        .then(new Effect.Sound(Tone.LOOK_HERE));
  }
}
