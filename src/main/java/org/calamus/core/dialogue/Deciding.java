package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.form.Release;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.rule.Finding;
import org.calamus.core.speech.Heard;

/** Which value is meant by what was heard, and what the rules say of it. */
final class Deciding {

  private final Setup setup;
  private final Taking taking;
  private final NextBand nextBand;

  Deciding(Setup setup) {
    this.setup = setup;
    this.taking = new Taking(setup);
    this.nextBand = new NextBand(setup);
  }

  /**
   * The value meant; one that sounds like another, or was not said as anybody says a number, only
   * where the rules accept it and not the other.
   */
  Optional<FieldValue> decide(State state, Offer offer, Instant at) {
    if (offer.heard() instanceof Heard.One one) {
      return Optional.of(one.value());
    }
    if (offer.heard() instanceof Heard.Ending ending) {
      return Optional.of(nextBand.ending(state, ending));
    }
    if (offer.heard() instanceof Heard.Twins twins) {
      boolean isClear =
          isAccepted(state, offer, twins.value(), at)
              && twins.others().stream().noneMatch(o -> isAccepted(state, offer, o, at));
      return isClear ? Optional.of(twins.value()) : Optional.empty();
    }
    if (offer.heard() instanceof Heard.Perhaps perhaps) {
      boolean fits = isAccepted(state, offer, perhaps.value(), at);
      boolean otherFits = isAccepted(state, offer, perhaps.other(), at);
      return fits && !otherFits ? Optional.of(perhaps.value()) : Optional.empty();
    }
    return Optional.empty();
  }

  /** Which of two values was meant, where either may be: only the bander can say. */
  Optional<Question.Which> which(State state, Offer offer, List<Offer> rest, Instant at) {
    if (!(offer.heard() instanceof Heard.Twins twins)) {
      return Optional.empty();
    }
    List<FieldValue> likely =
        Stream.concat(Stream.of(twins.value()), twins.others().stream())
            .filter(v -> isAccepted(state, offer, v, at))
            .toList();
    if (likely.isEmpty()) {
      return Optional.empty();
    }
    FieldValue first = likely.get(0);
    FieldValue second =
        likely.size() > 1
            ? likely.get(1)
            : first.equals(twins.value()) ? twins.others().get(0) : twins.value();
    boolean isInOrder = first.text().compareTo(second.text()) < 0;
    return Optional.of(
        isInOrder
            ? new Question.Which(offer.field(), first, second, rest)
            : new Question.Which(offer.field(), second, first, rest));
  }

  private boolean isAccepted(State state, Offer offer, FieldValue value, Instant at) {
    // a day long ago may well be meant
    boolean isDay = value instanceof FieldValue.Day;
    return findings(state, offer, value, at).stream()
        .allMatch(
            f ->
                f.severity() == Finding.Severity.NOTES
                    || isDay && f.severity() == Finding.Severity.ASKS);
  }

  /** What the rules find of a value. */
  List<Finding> findings(State state, Offer offer, FieldValue value, Instant at) {
    CaptureRecord candidate = with(state, offer, value, at);
    return setup.rules().check(candidate, offer.field(), state.known(), at);
  }

  /** The record as it would be with a value. */
  CaptureRecord with(State state, Offer offer, FieldValue value, Instant at) {
    Entry entry = new Entry(value, offer.provenance(), at, offer.overruled());
    return taking.current(state, at).with(offer.field(), entry);
  }

  /** A bird that is released while something required is missing is released early. */
  FieldValue orEarly(State state, Offer offer, FieldValue value) {
    boolean isRelease =
        offer.field() == FieldId.RELEASE && value.text().equals(Release.RELEASED.name());
    boolean isIncomplete =
        state
            .record()
            .map(r -> !setup.form().missing(r.without(FieldId.RELEASE)).isEmpty())
            .orElse(true);
    return isRelease && isIncomplete ? new FieldValue.Code(Release.EARLY.name()) : value;
  }

  static String hint(Offer offer) {
    return offer.heard() instanceof Heard.No no ? no.hint() : "say it digit by digit";
  }
}
