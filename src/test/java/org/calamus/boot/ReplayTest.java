package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.calamus.adapter.files.UtteranceFiles;
import org.calamus.adapter.files.UtteranceLists;
import org.calamus.adapter.microphone.WavSource;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.adapter.vosk.VoskRecogniser;
import org.calamus.core.dialogue.Account;
import org.calamus.core.dialogue.Accounts;
import org.calamus.core.dialogue.Circumstances;
import org.calamus.core.dialogue.Dialogue;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Outcome;
import org.calamus.core.dialogue.Understood;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Hypothesis;
import org.calamus.core.speech.Utterance;
import org.calamus.port.Clock;
import org.calamus.port.KeptUtterances.Kept;
import org.calamus.port.TimbreMemory;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the real ears hear is kept, and heard anew by the real recogniser. */
@Timeout(120)
class ReplayTest {

  private static final Clock CLOCK = () -> Instant.parse("2026-06-13T06:30:00Z");
  private static final Circumstances CHICKADEE =
      Circumstances.asking(FieldId.WING, Map.of(FieldId.SPECIES, "BCCH"));

  @TempDir private static Path cache;
  private static ModelFolder model;
  private static VoskRecogniser recogniser;

  @TempDir Path data;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ReplayReport report =
      new ReplayReport(new PrintStream(out, true, StandardCharsets.UTF_8));
  private Accounts accounts;

  @BeforeAll
  static void load() {
    Folders folders = new Folders(Optional.of(cache), Optional.empty());
    model = SpeechModel.open(folders, Optional.empty(), Fenwick.vocabulary());
    recogniser = new VoskRecogniser(model.path(), settings());
  }

  @AfterAll
  static void close() {
    recogniser.close();
    model.close();
  }

  private static VoskEars.Settings settings() {
    return VoskEars.Settings.usual().framesOf(model.frameMillis());
  }

  @BeforeEach
  void make() {
    accounts = new Dialogue(Fenwick.setup()).accounts();
  }

  private static Path speech(String name) {
    return Path.of("demo-data", "speech", name + ".wav");
  }

  private String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private Replay replay() {
    return new Replay(recogniser, accounts, report, CLOCK);
  }

  /** Lets the ears hear a recording while the wing is asked, and keeps what they hear. */
  private Kept kept(String recording) throws InterruptedException {
    BlockingQueue<Event> events = new LinkedBlockingQueue<>();
    Event.Heard heard;
    try (UtteranceFiles keeper = new UtteranceFiles(data, 500, CLOCK)) {
      keeper.start(event -> {});
      try (VoskEars ears =
          new VoskEars(
              model.path(),
              new WavSource(speech(recording), WavSource.Pace.FAST),
              CLOCK,
              settings(),
              keeper,
              TimbreMemory.none())) {
        ears.listenFor(accounts.grammar("WING").orElseThrow());
        ears.start(events::add);
        heard = next(events);
      }
      Understood understood = accounts.understood(CHICKADEE, heard.at(), heard.utterance());
      Outcome outcome = new Outcome(Outcome.Kind.TAKEN, List.of(understood.what()), "");
      Account account = new Account(CHICKADEE, java.util.Set.of(), understood, outcome);
      keeper.became(heard, () -> account);
    }
    Path list = data.resolve("utterances/20260613T063000Z").resolve(UtteranceLists.NAME);
    return (Kept) new UtteranceLists().read(list).get(0);
  }

  private static Event.Heard next(BlockingQueue<Event> events) throws InterruptedException {
    while (true) {
      Event event = events.poll(60, TimeUnit.SECONDS);
      assertThat(event).as("something is heard").isNotNull();
      if (event instanceof Event.Heard heard) {
        return heard;
      }
    }
  }

  @Test
  void hearsAKeptUtteranceExactlyAsTheEarsDid() throws Exception {
    Kept kept = kept("11-wing");
    replay().line(kept);
    assertThat(printed())
        .isEqualTo(
            "same     20260613T063000Z/0001.wav [wing] \"four six\" = WING=46 (taken)"
                + " -> \"four six\" = WING=46\n");
    assertThat(report.end()).isEqualTo(ExitCode.DONE);
  }

  @ParameterizedTest
  @ValueSource(strings = {"01-band", "06-correction", "10-age-and-sex", "11-wing", "13-mass"})
  void makesTheSameWordsOfWhatTheEarsHeard(String recording) throws Exception {
    Kept kept = kept(recording);
    List<Hypothesis> anew =
        recogniser.recognise(accounts.grammar("WING").orElseThrow(), sound(kept.wav()));
    List<Hypothesis> then = kept.event().utterance().hypotheses();
    assertThat(anew).isNotEmpty();
    assertThat(anew)
        .extracting(Hypothesis::text)
        .isEqualTo(then.stream().map(Hypothesis::text).toList());
    assertThat(anew)
        .extracting(Hypothesis::share)
        .isEqualTo(then.stream().map(Hypothesis::share).toList());
  }

  private static short[] sound(Path wav) throws IOException {
    byte[] bytes = Files.readAllBytes(wav);
    short[] samples = new short[(bytes.length - 44) / 2];
    java.nio.ByteBuffer.wrap(bytes, 44, samples.length * 2)
        .order(java.nio.ByteOrder.LITTLE_ENDIAN)
        .asShortBuffer()
        .get(samples);
    return samples;
  }

  @Test
  void marksWhatIsUnderstoodInAnotherWayToday() throws Exception {
    Kept kept = kept("11-wing");
    Account then =
        new Account(
            CHICKADEE,
            java.util.Set.of(),
            new Understood(Understood.Kind.VALUES, "WING=64"),
            kept.account().outcome());
    replay().line(new Kept(kept.wav(), kept.samples(), kept.event(), kept.grammar(), then));
    assertThat(printed())
        .startsWith("CHANGED  20260613T063000Z/0001.wav")
        .contains("WING=64 (taken) -> ", "WING=46");
    assertThat(report.end()).isEqualTo(ExitCode.FAILURE);
    assertThat(printed()).contains("0 same, 1 changed, 0 left out.", "only you can tell");
  }

  @Test
  void countsOtherWordsOfTheSameMeaningAsTheSame() throws Exception {
    Kept kept = kept("11-wing");
    Event.Heard then = new Event.Heard(CLOCK.now(), Utterance.of("wing forty six"), CLOCK.now());
    replay().line(new Kept(kept.wav(), kept.samples(), then, kept.grammar(), kept.account()));
    assertThat(report.end()).isEqualTo(ExitCode.DONE);
    assertThat(printed()).contains("1 same (1 of them in other words), 0 changed");
  }

  @Test
  void namesASoundThatIsGoneOrCutAndGoesOn() throws Exception {
    Kept kept = kept("11-wing");
    Path gone = kept.wav().resolveSibling("0007.wav");
    Path cut = kept.wav().resolveSibling("0008.wav");
    byte[] bytes = Files.readAllBytes(kept.wav());
    Files.write(cut, java.util.Arrays.copyOf(bytes, bytes.length / 2));
    Path broken = kept.wav().resolveSibling("0009.wav");
    Files.writeString(broken, "no sound at all");
    for (Path wav : List.of(gone, cut, broken)) {
      replay().line(new Kept(wav, kept.samples(), kept.event(), kept.grammar(), kept.account()));
    }
    replay().line(kept);
    assertThat(printed().lines().filter(l -> l.startsWith("LEFT OUT ")))
        .satisfiesExactly(
            l -> assertThat(l).contains("no recording 0007.wav"),
            l -> assertThat(l).contains("0008.wav: The recording"),
            l -> assertThat(l).contains("0009.wav is not a WAV recording"));
    assertThat(printed()).contains("same     20260613T063000Z/0001.wav");
    assertThat(report.end()).isEqualTo(ExitCode.FAILURE);
  }

  @Test
  void namesAFieldThatTodaysFormDoesNotAsk() throws Exception {
    Kept kept = kept("11-wing");
    replay().line(new Kept(kept.wav(), kept.samples(), kept.event(), "PLUME", kept.account()));
    assertThat(printed()).contains("LEFT OUT ", "no field PLUME");
  }

  @Test
  void hearsARecordingAsItWouldBeHeardNow() {
    replay().recording(speech("11-wing"), CHICKADEE);
    assertThat(printed()).isEqualTo("now      11-wing.wav [wing] -> \"four six\" = WING=46\n");
    assertThat(report.end()).isEqualTo(ExitCode.DONE);
  }

  @Test
  void namesARecordingThatIsNotThere() {
    replay().recording(data.resolve("gone.wav"), CHICKADEE);
    assertThat(printed()).contains("LEFT OUT There is no recording gone.wav");
    assertThat(report.end()).isEqualTo(ExitCode.FAILURE);
  }

  @Test
  void saysWhereARecordingHasNoSpeech() throws IOException {
    Path silent = data.resolve("silent.wav");
    Files.copy(speech("11-wing"), silent, StandardCopyOption.REPLACE_EXISTING);
    byte[] bytes = Files.readAllBytes(silent);
    java.util.Arrays.fill(bytes, 44, bytes.length, (byte) 0);
    Files.write(silent, bytes);
    replay().recording(silent, CHICKADEE);
    assertThat(printed()).contains("LEFT OUT No speech was heard in");
  }
}
