package org.calamus.adapter.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.calamus.core.dialogue.Account;
import org.calamus.core.dialogue.Circumstances;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Outcome;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.Understood;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Credibility;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Hypothesis;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Word;
import org.calamus.port.KeptUtterances.Damaged;
import org.calamus.port.KeptUtterances.Kept;
import org.calamus.port.KeptUtterances.KeptException;
import org.calamus.port.KeptUtterances.Line;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(30)
class UtteranceFilesTest {

  private static final Instant START = Instant.parse("2026-06-13T06:30:00Z");
  private static final long ROOMY = 1_000_000;
  private static final Grammar WING = new Grammar("WING", List.of("nine", "two"));
  private static final Account ACCOUNT =
      new Account(
          new Circumstances(
              Optional.of(FieldId.WING),
              "Keep \"24\" mm?",
              false,
              true,
              Optional.of(FieldId.AGE),
              BandNumber.parse("2841-55602"),
              Map.of(FieldId.SPECIES, "WBNU", FieldId.NOTE, "wet, at dawn")),
          Set.of(Credibility.Sign.UNSURE_WORD, Credibility.Sign.TOO_SLOW),
          new Understood(Understood.Kind.VALUES, "WING=92"),
          new Outcome(Outcome.Kind.TAKEN, List.of("WING=92"), "wing nine two. mass"));

  @TempDir Path data;
  private Path all;
  private final List<Event> events = Collections.synchronizedList(new ArrayList<>());

  @BeforeEach
  void name() {
    all = data.resolve("utterances");
  }

  private UtteranceFiles keeper(long most, long leastFree) {
    UtteranceFiles keeper = new UtteranceFiles(data, most, leastFree, () -> START);
    keeper.start(events::add);
    return keeper;
  }

  private static Event.Heard heard(String words) {
    Utterance utterance = Utterance.of(words);
    List<Word> sure = new ArrayList<>(utterance.words());
    sure.set(0, new Word(sure.get(0).text(), 0.123456789, 40, 380));
    return new Event.Heard(
        START.plusNanos(123_456_789),
        new Utterance(
            sure,
            List.of(new Hypothesis(sure, 0.75), new Hypothesis(List.of(Word.of("ninety")), 0.25)),
            -21,
            utterance.voiced(),
            17,
            Duration.ofMillis(240)),
        START.minusMillis(400));
  }

  private static void say(UtteranceFiles keeper, int samples) {
    Event.Heard event = heard("nine two");
    keeper.heard(event, WING, new short[samples]);
    keeper.became(event, () -> ACCOUNT);
  }

  private List<Line> lines(String session) {
    return new UtteranceLists().read(all.resolve(session).resolve(UtteranceLists.NAME));
  }

  private List<String> downs() {
    return events.stream()
        .filter(Event.PartDown.class::isInstance)
        .map(e -> ((Event.PartDown) e).sentence())
        .toList();
  }

  @Test
  void readsLinesOfEarlierVersionsWithoutPitch() throws Exception {
    Event.Heard event = heard("nine two");
    try (UtteranceFiles keeper = keeper(ROOMY, 0)) {
      keeper.heard(event, WING, new short[16_000]);
      keeper.became(event, () -> ACCOUNT);
    }
    Path list = all.resolve("20260613T063000Z").resolve(UtteranceLists.NAME);
    String line = Files.readString(list);
    assertThat(line).contains("\"pitchedMillis\":240,");
    Files.writeString(list, line.replace("\"pitchedMillis\":240,", ""));

    assertThat(lines("20260613T063000Z"))
        .singleElement()
        .satisfies(
            l -> {
              Utterance read = ((Kept) l).event().utterance();
              assertThat(read.pitched()).isEqualTo(read.voiced());
            });
  }

  @Test
  void keepsSoundAndAccountOfAnUtterance() throws Exception {
    short[] sound = new short[16_000];
    sound[1] = 300;
    sound[15_999] = Short.MIN_VALUE;
    Event.Heard event = heard("nine two");
    try (UtteranceFiles keeper = keeper(ROOMY, 0)) {
      keeper.heard(event, WING, sound);
      keeper.became(event, () -> ACCOUNT);
    }
    Path wav = all.resolve("20260613T063000Z").resolve("0001.wav");
    assertThat(lines("20260613T063000Z"))
        .containsExactly(new Kept(wav.toAbsolutePath(), 16_000, event, "WING", ACCOUNT));
    try (AudioInputStream in = AudioSystem.getAudioInputStream(wav.toFile())) {
      assertThat(in.getFormat().toString()).contains("16000.0 Hz", "16 bit", "mono");
      byte[] bytes = in.readAllBytes();
      assertThat(bytes).hasSize(32_000);
      assertThat(new byte[] {bytes[2], bytes[3], bytes[31_998], bytes[31_999]})
          .containsExactly(44, 1, 0, -128);
    }
    assertThat(events)
        .containsExactly(new Event.PartUp(START, Part.KEEPER, "utterances/20260613T063000Z"));
  }

  @Test
  void numbersUtterancesInTheirOrder() {
    try (UtteranceFiles keeper = keeper(ROOMY, 0)) {
      say(keeper, 100);
      say(keeper, 200);
    }
    assertThat(lines("20260613T063000Z"))
        .extracting(l -> ((Kept) l).wav().getFileName() + " " + ((Kept) l).samples())
        .containsExactly("0001.wav 100", "0002.wav 200");
  }

  @Test
  void keepsNothingThatNothingBecameOf() throws IOException {
    try (UtteranceFiles keeper = keeper(ROOMY, 0)) {
      keeper.heard(heard("nine"), WING, new short[10]);
      keeper.became(heard("two"), () -> ACCOUNT);
    }
    assertThat(all.resolve("20260613T063000Z")).isEmptyDirectory();
  }

  @Test
  void givesASecondSessionOfTheSameSecondAFolderOfItsOwn() {
    keeper(ROOMY, 0).close();
    keeper(ROOMY, 0).close();
    assertThat(all.resolve("20260613T063000Z-2")).isDirectory();
  }

  private Path session(String name, int bytes) throws IOException {
    Path folder = Files.createDirectories(all.resolve(name));
    Files.write(folder.resolve("0001.wav"), new byte[bytes]);
    Files.writeString(folder.resolve(UtteranceLists.NAME), "");
    return folder;
  }

  @Test
  void removesTheOldestSessionsWhereRoomIsShort() throws IOException {
    Path oldest = session("20250101T000000Z", 40_000);
    Path middle = session("20250601T000000Z", 40_000);
    Path newest = session("20260101T000000Z", 40_000);
    try (UtteranceFiles keeper = keeper(120_000, 0)) {
      say(keeper, 20_000);
    }
    assertThat(oldest).doesNotExist();
    assertThat(middle).isDirectory();
    assertThat(newest).isDirectory();
    assertThat(lines("20260613T063000Z")).hasSize(1);
    assertThat(downs()).isEmpty();
  }

  @Test
  void leavesWhatIsNotOurs() throws IOException {
    Path ours = session("20250101T000000Z", 90_000);
    Files.writeString(ours.resolve("notes.txt"), "the wind was strong");
    Path theirs = Files.createDirectories(all.resolve("training"));
    Files.write(theirs.resolve("0001.wav"), new byte[90_000]);
    try (UtteranceFiles keeper = keeper(100_000, 0)) {
      say(keeper, 20_000);
    }
    assertThat(ours.resolve("0001.wav")).doesNotExist();
    assertThat(ours.resolve("notes.txt")).exists();
    assertThat(theirs.resolve("0001.wav")).exists();
    assertThat(lines("20260613T063000Z")).hasSize(1);
  }

  @Test
  void stopsWithOneSentenceWhereTheSessionAloneIsTooMuch() {
    try (UtteranceFiles keeper = keeper(100_000, 0)) {
      for (int i = 0; i < 5; i++) {
        say(keeper, 20_000);
      }
    }
    assertThat(lines("20260613T063000Z")).hasSize(2);
    assertThat(downs())
        .singleElement()
        .asString()
        .startsWith("What is said is no longer kept, capture goes on:")
        .contains("raise utterances-megabytes");
  }

  @Test
  void leavesTheLastRoomOfTheDiskToTheRecords() {
    try (UtteranceFiles keeper = keeper(ROOMY, Long.MAX_VALUE)) {
      say(keeper, 100);
      say(keeper, 100);
    }
    assertThat(all.resolve("20260613T063000Z")).isEmptyDirectory();
    assertThat(downs()).singleElement().asString().contains("nearly full; free some space");
  }

  @Test
  void saysOnceThatNothingCanBeWritten() throws IOException {
    Files.writeString(all, "a file where the folder should be");
    try (UtteranceFiles keeper = keeper(ROOMY, 0)) {
      say(keeper, 100);
      say(keeper, 100);
    }
    assertThat(downs()).singleElement().asString().contains(all + " cannot be written to");
  }

  @Test
  void saysOnceThatTheFolderHasGone() throws Exception {
    CountDownLatch hasBegun = new CountDownLatch(1);
    UtteranceFiles keeper = new UtteranceFiles(data, ROOMY, 0, () -> START);
    keeper.start(
        event -> {
          events.add(event);
          hasBegun.countDown();
        });
    assertThat(hasBegun.await(10, TimeUnit.SECONDS)).isTrue();
    Files.delete(all.resolve("20260613T063000Z"));
    say(keeper, 100);
    say(keeper, 100);
    keeper.close();
    assertThat(downs()).singleElement().asString().contains("cannot be written to");
  }

  /** The ears and the engine must not wait for a disk that hangs. */
  @Test
  void givesUpWhereTheDiskIsTooSlow() throws Exception {
    CountDownLatch hangs = new CountDownLatch(1);
    UtteranceFiles keeper = new UtteranceFiles(data, ROOMY, 0, () -> START);
    keeper.start(
        event -> {
          events.add(event);
          awaitQuietly(hangs);
        });
    for (int i = 0; i < 100; i++) {
      say(keeper, 100);
      if (i == 99) {
        hangs.countDown();
      }
    }
    keeper.close();
    assertThat(downs()).singleElement().asString().contains("is too slow");
  }

  private static void awaitQuietly(CountDownLatch latch) {
    try {
      if (!Thread.currentThread().getName().equals("utterances")) {
        return;
      }
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Test
  void readNamesADamagedLineAndGoesOn() throws IOException {
    try (UtteranceFiles keeper = keeper(ROOMY, 0)) {
      say(keeper, 100);
      say(keeper, 100);
    }
    Path list = all.resolve("20260613T063000Z").resolve(UtteranceLists.NAME);
    List<String> texts = new ArrayList<>(Files.readAllLines(list));
    texts.add(1, texts.get(0).substring(0, 200));
    texts.add(2, texts.get(0).replace("\"0001.wav\"", "\"../../station.toml\""));
    texts.add(3, texts.get(0).replace("\"WING\",\"question\"", "\"PLUME\",\"question\""));
    texts.add(4, texts.get(0).replace("\"kind\":\"TAKEN\"", "\"kind\":\"LIKED\""));
    Files.write(list, texts);
    List<Line> lines = new UtteranceLists().read(list);
    assertThat(lines).hasSize(6);
    assertThat(lines.subList(1, 5))
        .allSatisfy(l -> assertThat(((Damaged) l).sentence()).contains(" this line is damaged"));
    assertThat(((Damaged) lines.get(1)).sentence()).startsWith(list + ":2:");
    assertThat(lines.get(5)).isInstanceOf(Kept.class);
  }

  @Test
  void readSaysWhichListIsNotThere() {
    assertThatThrownBy(() -> new UtteranceLists().read(data.resolve("gone.jsonl")))
        .isInstanceOf(KeptException.class)
        .hasMessageContaining("gone.jsonl cannot be read");
  }
}
