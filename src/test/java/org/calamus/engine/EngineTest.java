package org.calamus.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Key;
import org.calamus.core.dialogue.Page;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.State;
import org.calamus.core.dialogue.View;
import org.calamus.core.record.FieldId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
class EngineTest {

  private static final String BAND = "two eight four one five five six zero one";

  private final Stand stand = new Stand();

  private Stand nuthatch() {
    return stand.say(BAND).say("white breasted nuthatch").say("second year").say("male");
  }

  @Test
  void runPerformsTheEffectsOfAStepInTheirOrder() throws InterruptedException {
    stand.say(BAND).run();
    assertThat(stand.log)
        .containsExactly(
            "shut",
            "say band",
            "listen BAND",
            "journal 1 BAND 2841-55601",
            "sound TAKEN",
            "shut",
            "say band two eight four one five five six zero one. species",
            "listen SPECIES");
  }

  @Test
  void runSaysSavedWhenTheStoreHasSaved() throws InterruptedException {
    nuthatch().say("save record").run();
    assertThat(stand.log)
        .containsSubsequence("save 1", "say saved. next band six zero two", "listen BAND");
    assertThat(stand.lastView().savedCount()).isEqualTo(1);
  }

  @Test
  void runGivesWhatIsSaidDuringASaveToTheNextBird() throws InterruptedException {
    // both are in the queue before the first of them is handled
    nuthatch()
        .then(() -> stand.engine.post(heard("save record")))
        .say("band number two eight four one five five six zero two");
    State end = stand.run();
    assertThat(stand.log)
        .containsSubsequence(
            "save 1", "say saved. next band six zero two", "journal 2 BAND 2841-55602");
    assertThat(end.savedCount()).isEqualTo(1);
  }

  private static Event heard(String words) {
    Instant at = Instant.parse("2026-03-14T06:31:00Z");
    return new Event.Heard(at, org.calamus.core.speech.Utterance.of(words), at);
  }

  @Test
  void runDoesNotCallAValueTakenThatIsNotStored() throws InterruptedException {
    stand.refuse(Stand.Trouble.JOURNAL).say(BAND).run();
    assertThat(stand.logged("journal")).isEmpty();
    assertThat(stand.logged("say")).containsExactly("say band", "say not stored yet. species");
    assertThat(stand.logged("sound")).containsExactly("sound LOOK_HERE");
    View view = stand.lastView();
    assertThat(view.message()).contains("Not stored yet");
    assertThat(view.health())
        .contains(new View.Health(Part.STORE, false, "The disk is full; make room and go on."));
    assertThat(view.big()).isEmpty();
    assertThat(health(view)).isFalse();
  }

  @Test
  void runListensForTheNextFieldThoughTheStoreFails() throws InterruptedException {
    stand.refuse(Stand.Trouble.JOURNAL).say(BAND).run();
    assertThat(stand.logged("listen")).containsExactly("listen BAND", "listen SPECIES");
  }

  @Test
  void runJournalsWhatWasHeldInOrderBeforeAnythingNewer() throws InterruptedException {
    stand
        .say(BAND)
        .refuse(Stand.Trouble.JOURNAL)
        .say("white breasted nuthatch")
        .say("second year male")
        .say("erase age")
        .allow()
        .say("wing nine two")
        .run();
    assertThat(stand.logged("journal").size() + stand.logged("erased").size()).isEqualTo(6);
    assertThat(stand.log)
        .containsSubsequence(
            "journal 1 BAND 2841-55601",
            "journal 1 SPECIES WBNU",
            "journal 1 AGE SY",
            "journal 1 SEX M",
            "erased 1 AGE",
            "journal 1 WING 92",
            "say wing nine two. age");
    assertThat(health(stand.lastView())).isTrue();
    assertThat(stand.lastView().message()).isEmpty();
  }

  @Test
  void runJournalsWhatWasHeldAtTheNextTickHoweverMuchElseHappens() throws InterruptedException {
    stand.refuse(Stand.Trouble.JOURNAL).say(BAND).second().second().allow().second().run();
    assertThat(stand.logged("tick")).hasSize(3);
    assertThat(stand.log).containsSubsequence("tick", "tick", "journal 1 BAND 2841-55601", "tick");
    assertThat(stand.logged("journal")).hasSize(1);
    assertThat(health(stand.lastView())).isTrue();
    assertThat(stand.lastView().message()).isEqualTo("Stored now.");
  }

  @Test
  void runTriesWhatIsHeldOnceMoreAtTheEnd() throws InterruptedException {
    stand.refuse(Stand.Trouble.JOURNAL).say(BAND).allow().run();
    assertThat(stand.logged("journal")).containsExactly("journal 1 BAND 2841-55601");
    assertThat(health(stand.lastView())).isTrue();
  }

  @Test
  void runJournalsAValueThatWasRepeatedLikeAnyOther() throws InterruptedException {
    stand
        .refuse(Stand.Trouble.JOURNAL)
        .say("wing nine two")
        .say("wing nine two")
        .allow()
        .say(BAND)
        .run();
    assertThat(stand.logged("journal"))
        .containsExactly("journal 1 WING 92", "journal 1 WING 92", "journal 1 BAND 2841-55601");
  }

  @Test
  void runSavesWhatWasOnlyHeldInMemoryAfterJournallingIt() throws InterruptedException {
    stand
        .refuse(Stand.Trouble.JOURNAL)
        .say(BAND)
        .say("white breasted nuthatch second year male")
        .say("save record")
        .allow()
        .say("save record")
        .run();
    assertThat(stand.log)
        .containsSubsequence(
            "say not stored yet. wing",
            "journal 1 BAND 2841-55601",
            "journal 1 SPECIES WBNU",
            "journal 1 AGE SY",
            "journal 1 SEX M",
            "save 1",
            "say saved. next band six zero two");
    assertThat(stand.logged("save")).hasSize(1);
  }

  @Test
  void runKeepsTheBirdInTheHandWhenSavingFailsAndSavesItWhenAskedAgain()
      throws InterruptedException {
    List<Boolean> healthy = new ArrayList<>();
    nuthatch()
        .refuse(Stand.Trouble.SAVE)
        .say("save record")
        .second()
        .then(() -> healthy.add(health(stand.lastView())))
        .allow()
        .say("save record");
    State end = stand.run();
    assertThat(healthy).containsExactly(false);
    assertThat(stand.logged("say")).contains("say not stored yet. save record");
    assertThat(stand.logged("save")).containsExactly("save 1");
    assertThat(end.savedCount()).isEqualTo(1);
    assertThat(health(stand.lastView())).as("the store works again").isTrue();
  }

  @Test
  void runSavesACorrectionOnceTheStoreWorksAndTheRecordStaysOpenUntilThen()
      throws InterruptedException {
    List<String> correcting = new ArrayList<>();
    nuthatch()
        .say("save record")
        .say("amend earlier bird")
        .say("affirm")
        .say("wing nine three")
        .say("save record")
        .refuse(Stand.Trouble.SAVE)
        .say("misheard")
        .second()
        .then(() -> correcting.add(stand.lastView().correcting()))
        .allow()
        .say("save record")
        .say("misheard");
    stand.run();
    assertThat(correcting).containsExactly("correcting 2841-55601");
    assertThat(stand.logged("say")).contains("say not stored yet. save record");
    assertThat(stand.logged("amend")).containsExactly("amend 1 MISHEARD");
    assertThat(stand.lastView().correcting()).isEmpty();
    assertThat(health(stand.lastView())).as("the store works again").isTrue();
  }

  @Test
  void runTellsThatASavedRecordCannotBeReadAndGoesOn() throws InterruptedException {
    nuthatch()
        .say("save record")
        .refuse(Stand.Trouble.READ)
        .say("amend earlier bird")
        .say("affirm")
        .second()
        .allow()
        .say("amend earlier bird")
        .say("affirm");
    stand.run();
    assertThat(stand.logged("say")).contains("say record not read. look at the screen");
    assertThat(stand.views).anyMatch(v -> v.message().startsWith("The disk is full"));
    assertThat(stand.logged("read")).containsExactly("read 1");
    assertThat(stand.lastView().correcting()).isEqualTo("correcting 2841-55601");
  }

  @Test
  void runShowsHowTheValuesOfASavedRecordCameInAndThatItWasNeverCorrected()
      throws InterruptedException {
    nuthatch().say("save record").say("console record history");
    stand.run();
    List<String> rows =
        stand.lastView().page().orElseThrow().rows().stream().map(Page.Row::text).toList();
    assertThat(stand.logged("read")).containsExactly("read 1");
    assertThat(rows).contains("Never corrected").anyMatch(r -> r.endsWith(" said"));
  }

  @Test
  void runReadsARecordOnlyWhenWhatIsHeldForItIsStored() throws InterruptedException {
    nuthatch()
        .say("save record")
        .say("amend earlier bird")
        .say("affirm")
        .refuse(Stand.Trouble.ABANDON)
        .say("abandon record")
        .say("affirm")
        .say("amend earlier bird")
        .say("affirm")
        .second()
        .allow()
        .say("amend earlier bird")
        .say("affirm");
    stand.run();
    List<String> store =
        stand.log.stream().filter(l -> l.matches("(read|withdraw|amend) .*")).toList();
    assertThat(store).containsExactly("read 1", "withdraw 1", "read 1");
  }

  @Test
  void runStoresLaterWhenNetsWereOpenedThatTheStoreCouldNotTake() throws InterruptedException {
    stand
        .refuse(Stand.Trouble.JOURNAL)
        .key('+')
        .key('8')
        .key('2')
        .key('5')
        .key(Key.Name.ENTER)
        .allow()
        .say("two eight four one five five six zero one");
    stand.run();
    assertThat(stand.logged("say")).noneMatch(s -> s.contains("net five opened"));
    assertThat(stand.log).containsSubsequence("net 5 OPENED", "journal 1 BAND 2841-55601");
  }

  @Test
  void runAbandonsLaterWhatTheStoreCouldNotAbandon() throws InterruptedException {
    stand
        .say(BAND)
        .refuse(Stand.Trouble.ABANDON)
        .say("abandon record")
        .say("affirm")
        .say(BAND)
        .allow()
        .second()
        .run();
    assertThat(stand.log)
        .containsSubsequence("journal 1 BAND 2841-55601", "abandon 1", "journal 2 BAND 2841-55601");
    assertThat(stand.logged("say abandoned")).isEmpty();
  }

  @Test
  void runAsksBeforeItEndsWhileSomethingIsHeldInMemory() throws InterruptedException {
    stand.refuse(Stand.Trouble.JOURNAL).say(BAND).say("end session").say("negative").run();
    assertThat(stand.logged("say"))
        .containsSubsequence("say not everything is stored. end session", "say going on. species");
  }

  @Test
  void runShutsTheEarsBeforeEverySaying() throws InterruptedException {
    nuthatch().run();
    List<String> log = stand.log;
    for (int i = 0; i < log.size(); i++) {
      if (log.get(i).startsWith("say")) {
        assertThat(log.get(i - 1)).isEqualTo("shut");
      }
    }
    assertThat(stand.logged("say")).hasSize(5);
  }

  @Test
  void runOpensTheEarsOnlyAfterTheLastOfTwoPhrases() throws InterruptedException {
    // two phrases run: the prompt at the start and the answer to the band
    stand.say(BAND).voiceEnded().key(Key.Name.TALK).voiceEnded().key(Key.Name.TALK).run();
    assertThat(stand.log.stream().filter(l -> l.equals("open") || l.equals("finish")))
        .containsExactly("finish", "open", "finish");
  }

  @Test
  void runOpensTheEarsAtOnceWhenAKeyCutsTheVoiceOff() throws InterruptedException {
    stand.voiceBegan().key('9').voiceEnded().run();
    assertThat(stand.log).containsSubsequence("hush", "open at once");
    assertThat(stand.logged("open")).containsExactly("open at once");
  }

  @Test
  void runKeepsTheEarsShutWhenAKeyCutsTheVoiceOffAndIsAnswered() throws InterruptedException {
    stand
        .voiceBegan()
        .key('/')
        .voiceEnded() // of the phrase that was cut off
        .second()
        .voiceEnded() // of the answer
        .run();
    assertThat(stand.log)
        .containsSubsequence("hush", "open at once", "shut", "say band", "tick", "open");
    assertThat(stand.logged("open")).containsExactly("open at once", "open");
  }

  @Test
  void runKeepsTheEarsShutBehindThePromptsWhileTheTalkKeyIsAwaited() throws InterruptedException {
    stand
        .say("console manual listening")
        .voiceEnded() // of the prompt at the start
        .second()
        .voiceEnded() // of the answer
        .run();
    assertThat(stand.log).contains("shut");
    assertThat(stand.logged("open")).isEmpty();
  }

  @Test
  void runEndsOnControlCAndDropsWhatIsPostedAfterwards() throws InterruptedException {
    stand.key(Key.Name.INTERRUPT).say(BAND).run();
    int logged = stand.log.size();
    stand.engine.post(heard(BAND));
    assertThat(stand.log).hasSize(logged);
    assertThat(stand.logged("journal")).isEmpty();
  }

  @Test
  void runOpensTheEarsAgainWhenTheVoiceNeverEnds() throws InterruptedException {
    stand.say(BAND).voiceBegan().second().minute().second().run();
    assertThat(stand.log).containsSubsequence("shut", "open");
    assertThat(stand.logged("open")).hasSize(1);
    assertThat(stand.lastView().health())
        .anySatisfy(
            h -> {
              assertThat(h.part()).isEqualTo(Part.VOICE);
              assertThat(h.sentence()).contains("did not end its phrase");
            });
  }

  @Test
  void runKeepsTheEarsShutWhileTheVoiceMayStillSpeak() throws InterruptedException {
    stand.say(BAND).voiceBegan().second().second().run();
    assertThat(stand.logged("open")).isEmpty();
  }

  @Test
  void runTicksByItselfWhenNothingHappens() throws InterruptedException {
    CountDownLatch ticked = new CountDownLatch(1);
    Thread ending =
        new Thread(
            () -> {
              try {
                if (ticked.await(10, TimeUnit.SECONDS)) {
                  stand.engine.post(new Event.Stopping(Instant.EPOCH));
                }
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            });
    stand.onTick(ticked::countDown);
    ending.start();
    stand.engine.run(State.atStart(1, FieldId.BAND, org.calamus.core.rule.Known.nothing()));
    ending.join(Duration.ofSeconds(10).toMillis());
    assertThat(stand.logged("tick")).isNotEmpty();
  }

  @Test
  void postMayBeCalledFromManyThreadsAndOneHandlesThemAll() throws InterruptedException {
    int threads = 8;
    int each = 250;
    Set<Thread> handlers = ConcurrentHashMap.newKeySet();
    AtomicInteger handled = new AtomicInteger();
    stand.onEvent(
        event -> {
          handlers.add(Thread.currentThread());
          if (event instanceof Event.KeyStruck && handled.incrementAndGet() == threads * each) {
            stand.engine.post(new Event.Stopping(Instant.EPOCH));
          }
        });
    List<Thread> posters = new ArrayList<>();
    for (int i = 0; i < threads; i++) {
      posters.add(
          new Thread(
              () -> {
                for (int k = 0; k < each; k++) {
                  stand.engine.post(new Event.KeyStruck(Instant.EPOCH, Key.of('9')));
                }
              }));
    }
    posters.forEach(Thread::start);
    stand.engine.run(State.atStart(1, FieldId.BAND, org.calamus.core.rule.Known.nothing()));
    assertThat(handled).hasValue(threads * each);
    assertThat(handlers).containsExactly(Thread.currentThread());
  }

  private static boolean health(View view) {
    return view.health().stream().filter(h -> h.part() == Part.STORE).allMatch(View.Health::isUp);
  }
}
