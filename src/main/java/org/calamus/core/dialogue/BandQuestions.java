package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.BandString;
import org.calamus.core.speech.Heard;

/**
 * The questions about a band number that neither "affirm" nor "negative" answers: what became of
 * the bands that were skipped, and what the second reading of a band from elsewhere is.
 */
final class BandQuestions {

  /** The rule that an answered question about skipped bands overrules. */
  static final String SKIPPED_RULE = "band.next";

  /** No bander loses more bands at once without noticing (common practice, no published source). */
  private static final int MOST_AT_ONCE = 10;

  /** Says of an offer that its band was read twice; no rule, and no doubt of the bander's. */
  private static final String READ_TWICE = "band.twice";

  private final Setup setup;

  BandQuestions(Setup setup) {
    this.setup = setup;
  }

  /** The rules that were overruled: two readings that agree overrule none. */
  static List<String> overruled(List<String> marks) {
    return marks.stream().filter(mark -> !mark.equals(READ_TWICE)).toList();
  }

  /** What must be asked before this band can be taken; empty where nothing must. */
  Optional<Question> before(State state, Offer offer, FieldValue value, List<Offer> rest) {
    if (!(value instanceof BandNumber band) || !offer.overruled().isEmpty()) {
      return Optional.empty();
    }
    CaptureKind kind = state.record().map(CaptureRecord::kind).orElse(CaptureKind.NEW);
    if (offer.field() == FieldId.BAND && kind == CaptureKind.FOREIGN) {
      return Optional.of(new Question.Twice(band, offer.provenance(), rest));
    }
    List<BandString> skipped =
        offer.field() == FieldId.BAND && kind.putsBand()
            ? state.known().ledger().skippedBefore(band)
            : List.of();
    return skipped.isEmpty()
        ? Optional.empty()
        : Optional.of(new Question.Skipped(band, offer.provenance(), skipped, rest));
  }

  Step ask(State state, Question question, List<String> told) {
    State asked = state.withQuestion(Optional.of(question)).withOpen(Optional.of(FieldId.BAND));
    String big = question instanceof Question.Skipped s ? s.band().text() : "";
    String phrase =
        question instanceof Question.Skipped s
            ? skippedWords(s) + ". lost, destroyed, or out of order"
            : "read the band once more";
    return Step.of(
            asked.face(
                f -> f.withBig(big, "? Band number in question").withMessage("").withKeys("")))
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say(Prompts.joined(told, phrase));
  }

  private static String skippedWords(Question.Skipped question) {
    BandNumber first = question.skipped().get(0).first();
    BandNumber last = question.skipped().get(question.skipped().size() - 1).last();
    return first.equals(last)
        ? "band " + lastThree(first) + " skipped"
        : "bands " + lastThree(first) + " to " + lastThree(last) + " skipped";
  }

  private static String lastThree(BandNumber band) {
    return Spoken.digits(band.lastDigits());
  }

  /**
   * The bands that were skipped are accounted for: a record of its own for each. The ledger knows
   * them at once, so that the band in question can be taken.
   *
   * @param kind lost or destroyed
   */
  Step account(State state, Question.Skipped question, CaptureKind kind, Instant at) {
    Step step = Step.of(state.withQuestion(Optional.empty()));
    for (BandString piece : question.skipped()) {
      for (BandNumber band : piece.bands().toList()) {
        step = step.then(s -> account(s, band, kind, question.provenance(), at));
      }
    }
    return step;
  }

  /** Whether so many were skipped that the number was more likely misread. */
  static boolean isTooMany(Question.Skipped question) {
    return question.skipped().stream().mapToLong(BandString::count).sum() > MOST_AT_ONCE;
  }

  private Step account(
      State state, BandNumber band, CaptureKind kind, Provenance provenance, Instant at) {
    Entry fate = new Entry(new FieldValue.Code(kind.code()), provenance, at, List.of());
    Provenance concluded =
        new Provenance(Provenance.Way.CONCLUDED, "skipped before " + provenance.detail());
    CaptureRecord record =
        new CaptureRecord(
            state.nextId(),
            at,
            setup.station().place(),
            setup.station().bander(),
            Map.of(FieldId.KIND, fate, FieldId.BAND, new Entry(band, concluded, at, List.of())));
    return state.isCorrecting()
        ? Step.of(
            state
                .withAccounted(record)
                .desk(d -> d.withCorrection(d.correction().orElseThrow().with(record))))
        : Step.of(state.withAccounted(record)).then(new Effect.AccountFor(record));
  }

  /** The band that was skipped to, and what was said behind it, once the question is answered. */
  static List<Offer> skippedTo(Question.Skipped question, List<String> overruled) {
    return before(
        new Offer(FieldId.BAND, new Heard.One(question.band()), question.provenance(), overruled),
        question.rest());
  }

  private static List<Offer> before(Offer band, List<Offer> rest) {
    List<Offer> offers = new ArrayList<>();
    offers.add(band);
    offers.addAll(rest);
    return offers;
  }

  /** The second reading of a band from elsewhere; empty where it differs from the first. */
  static Optional<List<Offer>> readAgain(Question.Twice question, Offer second) {
    boolean isSame = second.heard() instanceof Heard.One one && one.value().equals(question.band());
    return isSame
        ? Optional.of(
            before(
                new Offer(FieldId.BAND, second.heard(), second.provenance(), List.of(READ_TWICE)),
                question.rest()))
        : Optional.empty();
  }

  /** The two readings differ: neither is taken. */
  Step differ(State state, Question.Twice question, String second) {
    String shown =
        "The two readings differ: "
            + question.band().text()
            + " and "
            + second
            + ". Read it again.";
    State dropped =
        state
            .withQuestion(Optional.empty())
            .withOpen(Optional.of(FieldId.BAND))
            .face(f -> f.withoutBig().withMessage(shown).withKeys(""));
    return Step.of(dropped)
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say("readings differ. read it again");
  }

  static boolean isBand(Question question) {
    return question instanceof Question.Skipped || question instanceof Question.Twice;
  }

  /** What answers the question. */
  static String answers(Question question) {
    return question instanceof Question.Skipped
        ? "say band lost, band destroyed, or out of order"
        : "read the band once more";
  }

  /** What was said in the same breath. */
  static List<Offer> rest(Question question) {
    if (question instanceof Question.Skipped skipped) {
      return skipped.rest();
    }
    if (question instanceof Question.Keep keep) {
      return keep.without();
    }
    if (question instanceof Question.Which which) {
      return which.rest();
    }
    return question instanceof Question.Twice twice ? twice.rest() : List.of();
  }

  /** The question in words, as the screen shows it. */
  static String shown(Question.Skipped question) {
    String numbers =
        question.skipped().stream()
            .map(
                p ->
                    p.first().equals(p.last())
                        ? p.first().text()
                        : p.first().text() + " to " + p.last().text())
            .collect(Collectors.joining(", "));
    boolean isOne = question.skipped().stream().mapToLong(BandString::count).sum() == 1;
    return "Band "
        + question.band().text()
        + " is not the next: "
        + numbers
        + (isOne ? " is" : " are")
        + " not accounted for. Lost, destroyed, or out of order? Or give the number again.";
  }
}
