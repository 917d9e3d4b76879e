package org.calamus.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.calamus.support.JarProcess;
import org.calamus.support.Outside;
import org.calamus.support.PlaceSound;
import org.calamus.support.VirtualSound;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The microphone check of the finished jar: every verdict with sound that earns it. */
@Timeout(240)
class MicrophoneIT {

  private static final Path DEMO = Path.of("demo-data", "speech");
  private static final Path MORE = Path.of("src", "test", "resources", "microphone");

  /** What is asked, in order. */
  private static final List<Path> WORDS =
      List.of(
          DEMO.resolve("01-band.wav"),
          DEMO.resolve("02-species.wav"),
          MORE.resolve("species-letters.wav"),
          DEMO.resolve("03-age.wav"),
          DEMO.resolve("10-age-and-sex.wav"),
          DEMO.resolve("05-wing.wav"),
          DEMO.resolve("06-correction.wav"),
          MORE.resolve("mass.wav"),
          MORE.resolve("next-field.wav"),
          DEMO.resolve("07-save.wav"));

  /** That of a quiet room: -66 dB of full scale. */
  private static final double QUIET = 16;

  @TempDir Path data;

  private String[] arguments(String... more) {
    List<String> all = new ArrayList<>(List.of(more));
    all.addAll(List.of("--data", data.toString(), "--cache", JarProcess.cache().toString()));
    return all.toArray(new String[0]);
  }

  private static PlaceSound spoken(double gain) throws IOException {
    PlaceSound sound = new PlaceSound(gain).pause(3_200);
    for (Path wav : WORDS) {
      sound.speak(wav).pause(1_100);
    }
    return sound;
  }

  private JarProcess check(PlaceSound sound) throws Exception {
    String wav = sound.write(data.resolve("place.wav")).toString();
    return JarProcess.run(arguments("microphone", "--wav", wav));
  }

  /** The verdict and what to do: what stands behind the last thing asked. */
  private static List<String> conclusion(JarProcess jar) {
    List<String> lines = jar.output().lines().toList();
    int verdict = 0;
    while (!lines.get(verdict).matches("(Good|Usable|Not usable here): .*")) {
      verdict++;
    }
    return lines.subList(verdict, lines.size());
  }

  @Test
  void isGoodWhereTheVoiceIsClear() throws Exception {
    JarProcess jar = check(spoken(1).noise(QUIET));
    assertThat(conclusion(jar))
        .singleElement()
        .asString()
        .matches("Good: 10 of 10 right, [3-6][0-9] dB above the noise\\.");
    assertThat(jar.output()).contains("say nothing for three seconds", "Say: second year");
    assertThat(jar.exitCode()).isZero();
    try (Stream<Path> files = Files.list(data)) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .as("a recording is no microphone: nothing is remembered of it")
          .doesNotContain("microphone-checks.jsonl");
    }
  }

  @Test
  void saysWhereTheVoiceIsTooSoft() throws Exception {
    JarProcess jar = check(spoken(0.015).noise(1.5));
    List<String> conclusion = conclusion(jar);
    assertThat(conclusion.get(0)).doesNotStartWith("Good");
    assertThat(conclusion).anyMatch(l -> l.startsWith("The microphone is too quiet: raise"));
    assertThat(conclusion).noneMatch(l -> l.startsWith("The place is loud"));
  }

  @Test
  void saysWhereTheVoiceIsClipped() throws Exception {
    JarProcess jar = check(spoken(8).noise(QUIET));
    assertThat(conclusion(jar))
        .hasSize(2)
        .last()
        .isEqualTo("It clips: lower the microphone's level in the system's settings.");
    assertThat(conclusion(jar).get(0)).startsWith("Not usable here");
    assertThat(jar.exitCode()).isEqualTo(1);
  }

  @Test
  void saysWhereNobodySpoke() throws Exception {
    JarProcess jar = check(new PlaceSound(1).pause(40_000).noise(QUIET));
    assertThat(conclusion(jar))
        .hasSize(2)
        .startsWith("Not usable here: nobody was heard.")
        .last()
        .asString()
        .startsWith("Say each thing when it is shown");
    assertThat(jar.exitCode()).isEqualTo(1);
  }

  @Test
  void saysWhereThePlaceIsTooNoisy() throws Exception {
    JarProcess jar = check(spoken(1).noise(1_200));
    List<String> conclusion = conclusion(jar);
    assertThat(conclusion.get(0)).startsWith("Not usable here");
    assertThat(conclusion).anyMatch(l -> l.startsWith("The place is loud"));
    assertThat(conclusion).noneMatch(l -> l.startsWith("The mains hum"));
    assertThat(jar.exitCode()).isEqualTo(1);
  }

  @Test
  void saysWhereTheMainsHum() throws Exception {
    JarProcess jar = check(spoken(1).noise(QUIET).hum(60, 80));
    assertThat(conclusion(jar)).anyMatch(l -> l.startsWith("The mains hum at 60 Hz"));
  }

  @Test
  void saysThatARecordingIsNotThere() throws Exception {
    JarProcess jar = JarProcess.run(arguments("microphone", "--wav", "nowhere.wav"));
    assertThat(jar.output()).contains("There is no recording nowhere.wav");
    assertThat(jar.exitCode()).isEqualTo(3);
  }

  @Test
  void saysThatThereIsNoMicrophoneAndNothingOfATrial() throws Exception {
    Outside.file("/usr/share/alsa/alsa.conf"); // where sound comes another way this hides no card
    Path none = Files.writeString(data.resolve("no-sound-card.conf"), "");
    Map<String, String> deaf = Map.of("ALSA_CONFIG_PATH", none.toString());
    String sentence = "No microphone can be opened; plug one in";
    try (JarProcess check = JarProcess.start(deaf, arguments("microphone"))) {
      check.await(sentence);
      assertThat(check.exitCode()).isEqualTo(3);
    }
    try (JarProcess capture = JarProcess.start(deaf, arguments("capture", "--plain", "--quiet"))) {
      capture.await("ears DOWN: " + sentence);
      capture.closeInput();
      assertThat(capture.exitCode()).isZero();
      assertThat(capture.output()).doesNotContain("not tried yet");
    }
    assertThat(data.resolve("microphone-checks.jsonl")).doesNotExist();
  }

  @Test
  void remembersTheVerdictOnAMicrophoneForTheSession() throws Exception {
    String[] capture = arguments("capture", "--plain", "--quiet");
    String untried = "This microphone was not tried yet";
    try (VirtualSound card = VirtualSound.start()) {
      Path noise = new PlaceSound(1).pause(220_000).noise(QUIET).write(data.resolve("room.wav"));
      card.speakOn(noise);
      try (JarProcess first = JarProcess.start(card.soundOnly(), capture)) {
        first.await(untried);
        first.closeInput();
        assertThat(first.exitCode()).isZero();
      }
      try (JarProcess check = JarProcess.start(card.soundOnly(), arguments("microphone"))) {
        for (int i = 0; i < WORDS.size(); i++) {
          check.awaitTimes("Say: ", i + 1);
          card.speak(WORDS.get(i).toAbsolutePath());
        }
        check.await("above the noise.");
        check.exitCode();
        assertThat(Files.readString(data.resolve("microphone-checks.jsonl")))
            .contains(conclusion(check).get(0));
      }
      try (JarProcess second = JarProcess.start(card.soundOnly(), capture)) {
        second.await("ears ok");
        second.type("+70\n");
        second.await("Last tried");
        second.closeInput();
        assertThat(second.exitCode()).isZero();
        assertThat(second.output()).doesNotContain(untried);
      }
    }
  }
}
