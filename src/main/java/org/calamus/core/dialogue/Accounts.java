package org.calamus.core.dialogue;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.form.FieldKind;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.rule.Known;
import org.calamus.core.speech.Command;
import org.calamus.core.speech.Credibility;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Meaning;
import org.calamus.core.speech.Utterance;

/**
 * Tells what happens to utterances, for those who keep them and hear them anew. Pure; may be used
 * from any thread.
 *
 * <p>Understanding goes by the {@link Circumstances} alone, at the time and later, so that only a
 * change of words, vocabulary or tables makes a difference. Which birds were known then is no part
 * of them: a number that sounds like another is told from it by the ranges of the species and by
 * what the record in the hand holds.
 */
public final class Accounts {

  /** A value that was not made out. */
  private static final String UNDECIDED = "?";

  private final Setup setup;

  /** Over a session's setup. */
  public Accounts(Setup setup) {
    this.setup = setup;
  }

  /**
   * What happened to an utterance.
   *
   * @param before the state that it met
   * @param heard the utterance
   * @param step what it led to
   */
  public Account of(State before, Event.Heard heard, Step step) {
    Circumstances met = Circumstances.of(before, setup);
    Understood understood = understood(met, heard.at(), heard.utterance());
    return new Account(
        met,
        Credibility.of(heardAs(met, heard.at(), heard.utterance()), Credibility.Limits.usual())
            .signs(),
        understood,
        Outcome.of(before, understood, step));
  }

  /**
   * The way to hear an utterance that makes sense in the circumstances that it met.
   *
   * @param met what it met
   * @param at when it was heard
   * @param utterance what was heard
   */
  public Utterance heardAs(Circumstances met, Instant at, Utterance utterance) {
    State state = state(met, at);
    return setup
        .interpreter()
        .heardAs(
            utterance,
            met.asked(),
            met.corrects(),
            setup.expected(met.expected(), at),
            meaning -> comesTo(met, state, at, meaning));
  }

  /** What an utterance means that was heard in the way that makes sense. */
  Meaning meaning(Circumstances met, Instant at, Utterance utterance) {
    return setup
        .interpreter()
        .interpret(utterance, met.asked(), met.corrects(), setup.expected(met.expected(), at));
  }

  /** The values that are made of a meaning; the meaning itself where it is none of values. */
  private Optional<?> comesTo(Circumstances met, State state, Instant at, Meaning meaning) {
    return meaning instanceof Meaning.Values given
        ? Optional.of(values(met, state, at, given, "")).filter(v -> !v.contains(UNDECIDED))
        : Optional.of(meaning);
  }

  /** What is listened for under the name of a grammar; empty where there is none of that name. */
  public Optional<Grammar> grammar(String name) {
    return setup.grammars().named(name, setup.form());
  }

  /**
   * What an utterance means in the circumstances that it met.
   *
   * @param met what it met
   * @param at when it was heard: some rules go by the season
   * @param heard what was heard
   */
  public Understood understood(Circumstances met, Instant at, Utterance heard) {
    if (met.isUnheeded()) {
      return Understood.of(Understood.Kind.UNHEEDED);
    }
    if (met.isPaused()) {
      return setup.interpreter().isResuming(heard)
          ? new Understood(Understood.Kind.COMMAND, Command.RESUME.name())
          : Understood.of(Understood.Kind.UNHEEDED);
    }
    Utterance utterance = heardAs(met, at, heard);
    Meaning meaning = meaning(met, at, utterance);
    if (meaning instanceof Meaning.Chatter) {
      return Understood.of(Understood.Kind.NOTHING);
    }
    if (meaning instanceof Meaning.Unclear) {
      return Understood.of(Understood.Kind.UNCLEAR);
    }
    if (meaning instanceof Meaning.Open named) {
      return new Understood(Understood.Kind.FIELD, named.field().name());
    }
    if (meaning instanceof Meaning.Order order) {
      String about = order.field().map(f -> " " + f.name()).orElse("");
      return new Understood(Understood.Kind.COMMAND, order.command().name() + about);
    }
    if (meaning instanceof Meaning.Values given) {
      return new Understood(
          Understood.Kind.VALUES, values(met, state(met, at), at, given, utterance.text()));
    }
    throw new AssertionError(meaning);
  }

  private String values(
      Circumstances met, State state, Instant at, Meaning.Values given, String words) {
    Optional<FieldId> unnamed =
        given.isCorrection() && !met.isQuestioning() ? met.corrects() : met.asked();
    Provenance provenance = new Provenance(Provenance.Way.SAID, words);
    List<String> values = new ArrayList<>();
    for (Meaning.Item item : given.items()) {
      Optional<FieldId> field = item.field().or(() -> unnamed);
      field
          .map(f -> f.name() + "=" + value(state, new Offer(f, item.heard(), provenance), at))
          .ifPresent(values::add);
    }
    return String.join(" ", values);
  }

  private String value(State state, Offer offer, Instant at) {
    Deciding deciding = new Deciding(setup);
    return deciding
        .decide(state, offer, at)
        .map(FieldValue::text)
        .or(
            () ->
                deciding
                    .which(state, offer, List.of(), at)
                    .map(w -> w.one().text() + "|" + w.other().text()))
        .orElse(UNDECIDED);
  }

  /** A state with the record that was in the hand, and nothing known of other birds. */
  private State state(Circumstances met, Instant at) {
    State empty = State.atStart(1, setup.form().first(), Known.nothing());
    Map<FieldId, Entry> entries = new EnumMap<>(FieldId.class);
    met.values()
        .forEach(
            (field, text) ->
                stored(field, text)
                    .map(v -> new Entry(v, new Provenance(Provenance.Way.SAID, ""), at, List.of()))
                    .ifPresent(entry -> entries.put(field, entry)));
    return entries.isEmpty()
        ? empty
        : empty.withRecord(
            new CaptureRecord(1, at, setup.station().place(), setup.station().bander(), entries),
            List.of());
  }

  /** A value of its stored text; none where today's form has no such field or value. */
  private Optional<FieldValue> stored(FieldId field, String text) {
    if (!setup.form().has(field)) {
      return Optional.empty();
    }
    try {
      return stored(setup.form().spec(field).kind(), text);
    } catch (IllegalArgumentException | DateTimeException otherKindNow) {
      return Optional.empty();
    }
  }

  private static Optional<FieldValue> stored(FieldKind kind, String text) {
    if (kind instanceof FieldKind.Band) {
      return BandNumber.ofOtherScheme(text).map(b -> b);
    }
    if (kind instanceof FieldKind.Coded) {
      return Optional.of(new FieldValue.Code(text));
    }
    if (kind instanceof FieldKind.CodedMany) {
      return Optional.of(new FieldValue.Codes(List.of(text.split(" "))));
    }
    if (kind instanceof FieldKind.Measured measured) {
      return Optional.of(new FieldValue.Measure(new BigDecimal(text), measured.unit()));
    }
    if (kind instanceof FieldKind.Time) {
      return Optional.of(new FieldValue.TimeOfDay(LocalTime.parse(text)));
    }
    if (kind instanceof FieldKind.Date) {
      return Optional.of(new FieldValue.Day(LocalDate.parse(text)));
    }
    if (kind instanceof FieldKind.Note) {
      return Optional.of(new FieldValue.Note(text, Optional.empty()));
    }
    throw new AssertionError(kind);
  }
}
