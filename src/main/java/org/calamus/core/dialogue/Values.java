package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.speech.Heard;
import org.calamus.core.speech.Meaning;

/** The part of the dialogue that brings values in, whatever the way and whatever is asked. */
final class Values {

  private final Prompts prompts;
  private final BandQuestions bands;
  private final Offers offers;
  private final Scribe scribe;

  Values(Setup setup) {
    this.prompts = new Prompts(setup);
    this.bands = new BandQuestions(setup);
    this.offers = new Offers(setup);
    this.scribe = new Scribe(setup);
  }

  /** Values that were spoken. */
  Step said(State state, Meaning.Values given, String words, Instant at) {
    Optional<FieldValue> gone = gone(given);
    if (gone.isPresent()) {
      return letGo(state, gone.get(), new Provenance(Provenance.Way.SAID, words), at);
    }
    if (isOtherQuestion(state)) {
      return prompts.miss(state, "answer affirm or negative first");
    }
    Provenance provenance = new Provenance(Provenance.Way.SAID, words);
    Optional<FieldId> unnamed =
        given.isCorrection() && Doubts.goneOn(state).question().isEmpty()
            ? state.lastGiven()
            : Dialogue.askedField(state);
    if (isLeftToKeypad(state, given, unnamed)) {
      return prompts.leftToKeypad(state, unnamed.orElseThrow());
    }
    List<Offer> said = new ArrayList<>();
    for (Meaning.Item item : given.items()) {
      Optional<FieldId> field = item.field().or(() -> unnamed);
      field.ifPresent(f -> said.add(new Offer(f, item.heard(), provenance)));
    }
    Optional<Question.Keep> release = Doubts.aboutRelease(state);
    return given.isCorrection() && release.isPresent()
        ? offers.offer(
            state.withQuestion(Optional.empty()), Offers.with(said, release.get().without()), at)
        : inPlace(state, said, at);
  }

  /** Whether something is said without a name for a field that was not understood too often. */
  private static boolean isLeftToKeypad(
      State state, Meaning.Values given, Optional<FieldId> unnamed) {
    return unnamed.filter(state.face().missed()::isGivenUp).isPresent()
        && given.items().stream().anyMatch(i -> i.field().isEmpty());
  }

  /** How the bird went, where nothing else was said; the bird comes before any question. */
  private static Optional<FieldValue> gone(Meaning.Values given) {
    return given.items().size() == 1
            && given.items().get(0).field().filter(FieldId.RELEASE::equals).isPresent()
            && given.items().get(0).heard() instanceof Heard.One one
        ? Optional.of(one.value())
        : Optional.empty();
  }

  /**
   * The bird goes now: an open question is dropped with the value it is about, and the record is
   * kept with what was taken. Where it is asked whether it really goes so, the open question comes
   * back if it does not.
   */
  Step letGo(State state, FieldValue how, Provenance provenance, Instant at) {
    Offer gone = new Offer(FieldId.RELEASE, new Heard.One(how), provenance);
    if (state.record().isEmpty()) {
      return Offers.nothingToLetGo(state);
    }
    Step step = offers.offer(state.withQuestion(Optional.empty()), List.of(gone), at);
    List<Offer> before = state.question().map(Doubts::raising).orElse(List.of());
    return Doubts.aboutRelease(step.state())
        .map(keep -> step.then(s -> Step.of(s.withQuestion(Optional.of(keep.after(before))))))
        .orElse(step);
  }

  /**
   * Values given while a value may be in question. The question stays open until one of them is
   * taken or refused; what was said in one breath with the questioned value is offered after them,
   * and the questioned field is asked again where none of them fills it.
   */
  Step inPlace(State state, List<Offer> given, Instant at) {
    Optional<Question> question = state.question();
    if (question.isEmpty()) {
      return Scribe.isOfSession(state, given)
          ? scribe.set(state, given.get(0))
          : offers.offer(state, given, at);
    }
    if (question.get() instanceof Question.Lacking lacking) {
      return kept(offers.offer(Doubts.goneOn(state), given, at), state, lacking);
    }
    if (question.get() instanceof Question.Keep keep && keep.isAboutRelease()) {
      List<Offer> all = Offers.with(given, Offers.with(keep.before(), keep.again()));
      return kept(offers.offer(state, all, at), state, keep);
    }
    if (question.get() instanceof Question.Keep keep) {
      return offers.offer(
          state.withOpen(Optional.of(keep.field())), Offers.with(given, behind(keep, given)), at);
    }
    if (question.get() instanceof Question.Which which) {
      return offers.offer(
          state.withOpen(Optional.of(which.field())), Offers.with(given, which.rest()), at);
    }
    State asked = state.withQuestion(Optional.empty()).withOpen(Optional.of(FieldId.BAND));
    if (question.get() instanceof Question.Skipped skipped) {
      return fate(given)
          .map(fate -> account(state, skipped, fate, at))
          .orElseGet(() -> beside(state, asked, skipped, given, at));
    }
    if (question.get() instanceof Question.Twice twice) {
      return readAgain(asked, twice, given, at);
    }
    return offers.offer(state, given, at);
  }

  /** The band once more, or what is given for other fields: the question comes back behind it. */
  private Step beside(
      State state, State asked, Question.Skipped skipped, List<Offer> given, Instant at) {
    if (given.stream().anyMatch(Values::isBand)) {
      return offers.offer(asked, Offers.with(given, skipped.rest()), at);
    }
    if (given.stream().allMatch(o -> o.field() == FieldId.BAND || o.field() == FieldId.KIND)) {
      return prompts.miss(state, BandQuestions.answers(skipped));
    }
    List<Offer> all = Offers.with(given, BandQuestions.skippedTo(skipped, List.of()));
    return kept(offers.offer(asked, all, at), state, skipped);
  }

  /** A question that is still to be answered where nothing was taken and no other is open. */
  private static Step kept(Step step, State before, Question question) {
    boolean isLeft =
        step.state().question().isEmpty() && step.state().record().equals(before.record());
    return isLeft
        ? new Step(step.state().withQuestion(Optional.of(question)), step.effects())
        : step;
  }

  /** The bands that were skipped are lost or destroyed; then the band in question is taken. */
  Step account(State state, Question.Skipped skipped, CaptureKind fate, Instant at) {
    return BandQuestions.isTooMany(skipped)
        ? prompts.miss(state, "too many at once. read the band again")
        : bands
            .account(state, skipped, fate, at)
            .then(s -> offers.offer(s, BandQuestions.skippedTo(skipped, List.of()), at));
  }

  private Step readAgain(State asked, Question.Twice twice, List<Offer> given, Instant at) {
    Optional<Offer> second = given.stream().filter(o -> o.field() == FieldId.BAND).findFirst();
    boolean isBeside = second.isEmpty() && given.stream().noneMatch(o -> o.field() == FieldId.KIND);
    if (isBeside) {
      List<Offer> all = Offers.with(given, twice.again());
      return kept(offers.offer(asked, all, at), asked, twice);
    }
    if (second.isEmpty() || second.get().heard() instanceof Heard.No) {
      return prompts.miss(asked.withQuestion(Optional.of(twice)), "read the band once more");
    }
    String text = second.get().heard() instanceof Heard.One one ? one.value().text() : "";
    return BandQuestions.readAgain(twice, second.get())
        .map(all -> offers.offer(asked, all, at))
        .orElseGet(() -> bands.differ(asked, twice, text));
  }

  /** What was said of skipped bands; empty where something else was said. */
  private static Optional<CaptureKind> fate(List<Offer> given) {
    return given.stream()
        .filter(o -> o.field() == FieldId.KIND)
        .flatMap(
            o ->
                o.heard() instanceof Heard.One one ? Stream.of(one.value().text()) : Stream.empty())
        .flatMap(code -> CaptureKind.ofCode(code).stream())
        .filter(kind -> !kind.hasBird())
        .findFirst();
  }

  /**
   * What is offered after what is given now: where the other of two values that do not go together
   * is given anew, the value in question may be right after all.
   */
  private static List<Offer> behind(Question.Keep keep, List<Offer> given) {
    FieldId other = keep.doubts().get(0).field();
    boolean isOther = !keep.isAboutValue() && given.stream().anyMatch(o -> o.field() == other);
    return isOther ? keep.again() : keep.rest();
  }

  private static boolean isBand(Offer offer) {
    return offer.field() == FieldId.BAND && !(offer.heard() instanceof Heard.No);
  }

  /** Whether a question is open that only "affirm" or "negative" answers. */
  static boolean isOtherQuestion(State state) {
    return state
        .question()
        .filter(
            q ->
                !(q instanceof Question.Keep)
                    && !(q instanceof Question.Lacking)
                    && !(q instanceof Question.Which)
                    && !(q instanceof Question.Skipped)
                    && !(q instanceof Question.Twice))
        .isPresent();
  }
}
