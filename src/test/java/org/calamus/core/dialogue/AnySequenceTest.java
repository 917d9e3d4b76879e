package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Provenance;
import org.calamus.core.record.Reading;
import org.calamus.core.record.Spoken;
import org.calamus.core.record.Unit;
import org.calamus.core.rule.Finding;
import org.calamus.core.rule.Known;
import org.calamus.core.rule.Rules;
import org.calamus.core.speech.Utterance;
import org.calamus.support.Fenwick;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever happens, in whatever order: what must hold after every single event. */
class AnySequenceTest {

  private static final int EVENTS = 1_500;

  /** What waits behind a question is taken when that is answered, and is taken back, too. */
  private static final int MOST_IN_ONE_BREATH = 12;

  private static final String KEYS = "0123456789.+-*/ABMS\n\n\n\b ";
  private static final List<String> SENSIBLE =
      List.of(
          "white breasted nuthatch",
          "song sparrow wing six six female",
          "second year",
          "male",
          "unknown",
          "nine two",
          "two nine",
          "weight two two point three",
          "wing nine two weight two two point three",
          "wing two nine weight two two point three",
          "correction",
          "correction nine two",
          "affirm",
          "affirm",
          "console standby",
          "console resume listening",
          "console resume listening",
          "console open microphone",
          "negative",
          "save record",
          "song sparrow second year male wing six six",
          "released",
          "new band",
          "out of order",
          "released",
          "next field",
          "recapture",
          "foreign band",
          "replace band",
          "band lost",
          "band destroyed",
          "new band",
          "erase kind",
          "console open microphone",
          "console open microphone",
          "console resume listening",
          "previous field",
          "read back",
          "amend earlier bird",
          "amend earlier bird",
          "misheard",
          "wrong field",
          "typing error",
          "something else",
          "open mist nets",
          "close mist nets",
          "save record",
          "affirm",
          "what is missing",
          "which words",
          "fifty",
          "how aged skull",
          "correction two nine",
          "console daily records",
          "console record history",
          "scribe zulu bravo",
          "console session overview",
          "console species summary",
          "console following entries",
          "console capture display",
          "save record",
          "released early");

  /** One bird is saved and corrected, to which chance alone does not come for every seed. */
  private static final List<String> BEGINNING =
      List.of(
          "two eight four one five five six zero one",
          "white breasted nuthatch second year male",
          "save record",
          "amend earlier bird",
          "affirm",
          "wing nine two",
          "save record",
          "misheard");

  private final DeviceDescription balance = Fenwick.balance();
  private final Setup setup = Fenwick.setup(balance);
  private final Dialogue dialogue = new Dialogue(setup);
  private final Views views = new Views(setup);
  private final Rules rules = setup.rules();
  private final Map<FieldId, Entry> journal = new EnumMap<>(FieldId.class);
  private long journalled;
  private final Map<Long, CaptureRecord> store = new HashMap<>();
  private int saved;
  private int amended;
  private int taken;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 5, 6, 7})
  void keepsRecordAndJournalTogetherAndWithinTheRules(long seed) {
    Random random = new Random(seed);
    Instant now = Instant.parse("2026-03-14T06:30:00Z");
    State state = State.atStart(1, FieldId.BAND, Known.nothing());
    state = happen(state, new Event.Started(now, Optional.empty()));
    for (String words : BEGINNING) {
      now = now.plusSeconds(2);
      state = happen(state, new Event.Heard(now, Utterance.of(words), now));
    }
    for (int i = 0; i < EVENTS; i++) {
      now = now.plusMillis(100 + random.nextInt(400));
      state = happen(state, event(random, state, now));
      if (i % 50 == 0) {
        assertReadBackNamesEveryValue(state);
        assertTakenBackToTheFirst(state);
      }
    }
    assertThat(taken).as("the test must get somewhere").isGreaterThan(30);
    assertThat(saved).isPositive();
    assertThat(amended).isPositive();
  }

  private State happen(State before, Event event) {
    Step step = dialogue.step(before, event);
    State after = step.state();
    assertJournalTellsAll(before, step, event);
    assertWithinTheRules(after);
    assertSaysAtMostOnePhrase(step);
    assertNothingLostUnasked(before, after, event);
    assertMissesInOtherWords(before, step);
    assertHeedsNothingUnasked(before, step, event);
    assertCanBeAccountedFor(before, step, event);
    View view = views.of(after);
    assertThat(after.question().isPresent())
        .as("a question is open exactly where one is shown")
        .isEqualTo(view.question().isPresent());
    if (after.question().isPresent()) {
      assertThat(view.mode())
          .isIn(View.Mode.CHECK, View.Mode.SPEAKING, View.Mode.PAUSED, View.Mode.PRESS_TO_TALK);
      assertThat(view.page()).as("a question is never hidden").isEmpty();
    } else {
      assertThat(view.mode()).isNotEqualTo(View.Mode.CHECK);
    }
    if (view.page().isPresent()) {
      assertThat(after.record()).as("what comes of a bird is seen").isEqualTo(before.record());
    }
    for (Effect effect : step.effects()) {
      if (effect instanceof Effect.SaveRecord save) {
        assertThat(setup.form().missing(save.record())).isEmpty();
        assertThat(save.record().entries()).containsAllEntriesOf(journal);
        assertThat(save.record().entries().keySet())
            .as("what nobody gave is usual where nothing is said")
            .isSubsetOf(withUsual(journal.keySet()));
        saved++;
        journal.clear();
        store.put(save.record().id(), save.record());
        after = happen(after, new Event.Saved(event.at(), save.record()));
      } else if (effect instanceof Effect.AccountFor account) {
        store.put(account.record().id(), account.record());
      } else if (effect instanceof Effect.ReadSaved read) {
        Optional<CaptureRecord> found = Optional.ofNullable(store.get(read.id()));
        after = happen(after, new Event.SavedRead(event.at(), read.id(), found));
      } else if (effect instanceof Effect.ReadTrail read) {
        Optional<Trail> trail =
            Optional.ofNullable(store.get(read.id())).map(r -> new Trail(r, List.of()));
        after = happen(after, new Event.TrailRead(event.at(), read.id(), trail));
      } else if (effect instanceof Effect.AmendRecord amend) {
        assertThat(setup.form().missing(amend.record())).isEmpty();
        assertThat(amend.record().entries()).isEqualTo(journal);
        amended++;
        amend.accounts().forEach(a -> store.put(a.id(), a));
        store.put(amend.record().id(), amend.record());
        after = happen(after, new Event.Amended(event.at(), amend.record(), amend.accounts()));
      }
    }
    return after;
  }

  /** What was understood can be told from the circumstances alone, and fits what was taken. */
  private void assertCanBeAccountedFor(State before, Step step, Event event) {
    if (!(event instanceof Event.Heard heard)) {
      return;
    }
    Account account = dialogue.accounts().of(before, heard, step);
    assertThat(dialogue.accounts().understood(account.met(), heard.at(), heard.utterance()))
        .isEqualTo(account.understood());
    boolean isNotForUs = account.understood().kind() == Understood.Kind.UNHEEDED;
    if (isNotForUs) {
      assertThat(account.outcome().kind()).isEqualTo(Outcome.Kind.NOTHING);
    }
    boolean journals = step.effects().stream().anyMatch(AnySequenceTest::isGiven);
    assertThat(account.outcome().taken().isEmpty()).isEqualTo(!journals);
  }

  private static boolean isGiven(Effect effect) {
    return effect instanceof Effect.JournalValue value
        && value.entry().provenance().way() != Provenance.Way.CONCLUDED;
  }

  /** What is in the record stays unless the bander takes it back; what was concluded may go. */
  private static void assertNothingLostUnasked(State before, State after, Event event) {
    boolean isSameBird =
        before.record().map(CaptureRecord::id).equals(after.record().map(CaptureRecord::id));
    if (!isSameBird || before.record().isEmpty() || isTakingBack(event)) {
      return;
    }
    Set<FieldId> lost = EnumSet.noneOf(FieldId.class);
    before.record().get().entries().keySet().stream()
        .filter(f -> after.record().get().entry(f).isEmpty())
        .filter(f -> !isConcluded(before.record().get().entry(f).orElseThrow()))
        .forEach(lost::add);
    assertThat(lost).as("lost by %s", event).isEmpty();
  }

  private static boolean isConcluded(Entry entry) {
    return entry.provenance().way() == Provenance.Way.CONCLUDED;
  }

  private static boolean isTakingBack(Event event) {
    if (event instanceof Event.Heard heard) {
      String words = heard.utterance().text();
      return words.contains("correction") || words.contains("negative") || words.contains("erase");
    }
    return event instanceof Event.KeyStruck struck && struck.key().character() == '-';
  }

  private static void assertMissesInOtherWords(State before, Step step) {
    boolean isMissed = step.state().face().misses() > before.face().misses();
    if (isMissed) {
      assertThat(step.effects()).doesNotContain(new Effect.Say(before.face().lastSaid()));
    }
  }

  /** The session as it is when nobody speaks and nothing is struck, to try something on. */
  private static State quiet(State state) {
    return state
        .console(c -> c.withSpeaking(false).withMemo(Optional.empty()))
        .console(c -> c.withLevel(c.decibels(), false))
        .face(f -> f.withKeys(""));
  }

  private Step struck(State state, char c) {
    return dialogue.step(state, new Event.KeyStruck(state.console().now(), Key.of(c)));
  }

  private void assertReadBackNamesEveryValue(State from) {
    if (from.record().isEmpty()) {
      return;
    }
    List<String> said = new ArrayList<>();
    Step step = struck(struck(quiet(from), '+').state(), '*');
    for (int i = 0; i < 10; i++) {
      step.effects().stream()
          .filter(Effect.Say.class::isInstance)
          .forEach(e -> said.add(((Effect.Say) e).phrase()));
      State silent = step.state().face(Face::withSaid);
      step = dialogue.step(silent, new Event.Ticked(silent.console().now()));
    }
    Map<FieldId, Entry> entries = from.record().get().entries();
    entries.forEach(
        (field, entry) ->
            assertThat(String.join(". ", said))
                .contains(setup.phrases().spokenWithName(setup.form().spec(field), entry.value())));
  }

  private void assertTakenBackToTheFirst(State from) {
    State state = quiet(from);
    int most = state.changes().size() + MOST_IN_ONE_BREATH;
    for (int i = 0; i < most && !state.changes().isEmpty(); i++) {
      state = struck(state.face(f -> f.withKeys("")), '-').state();
    }
    assertThat(state.changes()).as("taken back from %s", from).isEmpty();
    assertThat(state.record().map(CaptureRecord::entries).orElse(Map.of()))
        .isEqualTo(from.desk().correction().map(c -> c.saved().entries()).orElse(Map.of()));
  }

  private static Set<FieldId> withUsual(Set<FieldId> given) {
    Set<FieldId> fields = EnumSet.of(FieldId.KIND, FieldId.STATUS, FieldId.RELEASE, FieldId.SCRIBE);
    fields.addAll(given);
    return fields;
  }

  /** The journal of the bird in the hand adds up to the record, step by step. */
  private void assertJournalTellsAll(State before, Step step, Event event) {
    for (Effect effect : step.effects()) {
      if (effect instanceof Effect.JournalValue value) {
        begin(before, value.record());
        journal.put(value.field(), value.entry());
        assertThat(value.record().entry(value.field())).contains(value.entry());
        taken++;
      } else if (effect instanceof Effect.JournalErased erased) {
        begin(before, erased.record());
        journal.remove(erased.field());
        assertThat(erased.record().entry(erased.field())).isEmpty();
      } else if (effect instanceof Effect.AbandonRecord) {
        journal.clear();
      }
    }
    if (event instanceof Event.SavedRead && step.state().isCorrecting()) {
      journal.clear();
      journal.putAll(step.state().record().orElseThrow().entries());
    }
    boolean isGone = step.state().record().isEmpty();
    assertThat(step.state().record().map(CaptureRecord::entries).orElse(Map.of()))
        .as("after %s in %s", event, before)
        .isEqualTo(isGone ? Map.of() : journal);
    boolean mayGo =
        event instanceof Event.Saved
            || event instanceof Event.Amended
            || step.effects().stream().anyMatch(Effect.WithdrawCorrection.class::isInstance)
            || before.record().isEmpty()
            || step.effects().stream().anyMatch(Effect.AbandonRecord.class::isInstance);
    assertThat(!isGone || mayGo).as("the record went away by %s", event).isTrue();
  }

  private void begin(State before, CaptureRecord record) {
    if (record.id() != journalled && !before.isCorrecting()) {
      assertThat(record.id()).as("numbers only grow").isGreaterThan(journalled);
      journalled = record.id();
      journal.clear();
    }
  }

  private void assertWithinTheRules(State state) {
    state
        .record()
        .ifPresent(
            record ->
                assertThat(rules.review(record, state.known(), state.console().now()))
                    .extracting(Finding::severity)
                    .doesNotContain(Finding.Severity.REFUSED));
  }

  /** Paused or without its talk key, the console takes nothing that is said. */
  private static void assertHeedsNothingUnasked(State before, Step step, Event event) {
    boolean isUnheeding = Heeding.isPaused(before) || !Heeding.wantsEars(before);
    if (event instanceof Event.Heard && isUnheeding) {
      assertThat(step.state().record()).isEqualTo(before.record());
      assertThat(step.state().question()).isEqualTo(before.question());
      assertThat(step.effects()).noneMatch(Effect.JournalValue.class::isInstance);
    }
  }

  /** A second phrase would cut off the first. */
  private static void assertSaysAtMostOnePhrase(Step step) {
    assertThat(step.effects().stream().filter(Effect.Say.class::isInstance).count())
        .isLessThanOrEqualTo(1);
  }

  private Event event(Random random, State state, Instant now) {
    if (Remarks.isListening(state) && random.nextInt(5) == 0) {
      // the ears answer every memo, and hear nothing else until then
      return new Event.MemoFailed(now, "No memo; type the note.");
    }
    boolean isUnheeding = Heeding.isPaused(state) || !Heeding.wantsEars(state);
    if (isUnheeding && random.nextInt(2) == 0) {
      // as a bander would, or else most of what is said would go unheeded
      return new Event.KeyStruck(now, Key.of(Key.Name.TALK));
    }
    boolean isByKey = state.console().attention().talk() == Talk.KEY;
    if (isByKey && !isUnheeding && random.nextInt(3) == 0) {
      return new Event.Heard(now, Utterance.of("console open microphone"), now);
    }
    Optional<String> onward = onward(state);
    if (!isUnheeding && onward.isPresent() && random.nextInt(4) == 0) {
      return new Event.Heard(now, Utterance.of(onward.get()), now);
    }
    int kind = random.nextInt(20);
    if (kind < 5) {
      return new Event.Heard(now, Utterance.of(words(random)), now);
    }
    if (kind < 9) {
      String words = SENSIBLE.get(random.nextInt(SENSIBLE.size()));
      return new Event.Heard(now, Utterance.of(words), now);
    }
    if (kind < 11) {
      return new Event.Heard(now, Utterance.of(band(random, state)), now);
    }
    if (kind < 15) {
      return new Event.KeyStruck(now, key(KEYS.charAt(random.nextInt(KEYS.length()))));
    }
    if (kind < 18) {
      return new Event.ReadingArrived(now, balance.name(), balance.name(), reading(random));
    }
    return other(random, now);
  }

  /** What leads on to a corrected record, to which chance alone hardly ever comes. */
  private static Optional<String> onward(State state) {
    if (state.question().filter(Question.Reopen.class::isInstance).isPresent()) {
      return Optional.of("affirm");
    }
    if (state.question().filter(Question.Reason.class::isInstance).isPresent()) {
      return Optional.of("misheard");
    }
    boolean isIdle = state.record().isEmpty() && state.question().isEmpty();
    boolean hasSaved = state.savedCount() > 0;
    return Optional.of(isIdle && hasSaved ? "amend earlier bird" : "save record")
        .filter(
            words ->
                state.question().isEmpty() && (isIdle ? hasSaved : !state.changes().isEmpty()));
  }

  private static String band(Random random, State state) {
    return state
        .known()
        .ledger()
        .expected()
        .filter(b -> random.nextBoolean())
        .map(b -> "band number " + Spoken.digits(b.text()))
        .orElseGet(() -> "two eight four one five five " + threeDigits(random));
  }

  private static Event other(Random random, Instant now) {
    switch (random.nextInt(12)) {
      case 0:
        return new Event.VoiceBegan(now);
      case 1:
        return new Event.StoreFailed(now, "The disk is full; make room.");
      case 2:
        return new Event.PartUp(now, Part.STORE, "storing again");
      case 3:
        return new Event.PartDown(now, Part.SCALE, "The scale is gone; plug it in.");
      case 4:
        return new Event.PartUp(now, Part.EARS, "a microphone");
      case 5:
        return new Event.LevelMeasured(now, -30, true);
      case 6:
        return new Event.Ticked(now);
      default:
        return new Event.VoiceEnded(now);
    }
  }

  /** One to four forms of the vocabulary, whether they make sense or not. */
  private static String words(Random random) {
    List<String> forms = Fenwick.vocabulary().forms().stream().map(f -> f.text()).toList();
    List<String> said = new ArrayList<>();
    for (int i = 0; i <= random.nextInt(4); i++) {
      said.add(forms.get(random.nextInt(forms.size())));
    }
    return String.join(" ", said);
  }

  private static String threeDigits(Random random) {
    return Spoken.digits(String.valueOf(1000 + random.nextInt(40)).substring(1));
  }

  private static Key key(char c) {
    switch (c) {
      case '\n':
        return Key.of(Key.Name.ENTER);
      case '\b':
        return Key.of(Key.Name.BACKSPACE);
      case ' ':
        return Key.of(Key.Name.TALK);
      default:
        return Key.of(c);
    }
  }

  private static Reading reading(Random random) {
    List<String> amounts = List.of("0.0", "0.0", "22.3", "22.3", "22.4", "11.45", "223.0", "1.2");
    String amount = amounts.get(random.nextInt(amounts.size()));
    return new Reading(new BigDecimal(amount), Unit.GRAM, Reading.Stability.STABLE, "ST," + amount);
  }

  @org.junit.jupiter.api.Test
  void theSameEventsAlwaysGiveTheSameSteps() {
    Random random = new Random(42);
    Instant now = Instant.parse("2026-03-14T06:30:00Z").plus(Duration.ofDays(1));
    State state = State.atStart(1, FieldId.BAND, Known.nothing());
    for (int i = 0; i < 500; i++) {
      now = now.plusMillis(300);
      Event event = event(random, state, now);
      Step step = dialogue.step(state, event);
      assertThat(new Dialogue(setup).step(state, event)).isEqualTo(step);
      state = step.state();
    }
  }
}
