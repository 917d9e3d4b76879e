package org.calamus.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.calamus.support.JarProcess;
import org.calamus.support.ShortForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the finished jar says, and how it ends, when something is wrong. */
class CommandLineIT {

  @TempDir Path data;

  private JarProcess run(String command, String... more) throws InterruptedException {
    List<String> arguments = new ArrayList<>();
    arguments.add(command);
    arguments.addAll(List.of("--data", data.toString(), "--cache", JarProcess.cache().toString()));
    arguments.addAll(List.of(more));
    return JarProcess.run(arguments.toArray(new String[0]));
  }

  private static void isOneSentence(JarProcess jar) {
    assertThat(jar.output().lines().filter(l -> !l.isBlank())).hasSize(1);
    assertThat(jar.output()).doesNotContain("Exception", "\tat ");
  }

  @Test
  void refusesAnUnknownCommandAsWrongUse() throws Exception {
    JarProcess jar = JarProcess.run("sing");
    assertThat(jar.exitCode()).isEqualTo(2);
    assertThat(jar.output()).contains("capture", "check", "demo");
  }

  @Test
  void saysWhatToDoWithoutATerminal() throws Exception {
    JarProcess jar = run("capture", "--keypad", "--quiet");
    assertThat(jar.exitCode()).isEqualTo(3);
    isOneSentence(jar);
    assertThat(jar.output()).contains("--plain");
  }

  @Test
  void refusesAModelThatTakesNoGrammars() throws Exception {
    Path model = Files.createDirectories(data.resolve("model/am"));
    Files.writeString(model.resolve("final.mdl"), "");
    JarProcess jar = run("capture", "--plain", "--model", data.resolve("model").toString());
    assertThat(jar.exitCode()).isEqualTo(3);
    isOneSentence(jar);
    assertThat(jar.output()).contains("HCLr.fst");
  }

  @Test
  void namesAWordThatNobodyCanPronounceAndGoesOnByKeypad() throws Exception {
    ShortForm.into(data);
    Path words = Files.createDirectories(data.resolve("grammars"));
    Files.writeString(words.resolve("ours.words"), "section decoys\nxyzzyplugh = nothing\n");
    try (JarProcess jar =
        JarProcess.start(
            "capture",
            "--plain",
            "--quiet",
            "--data",
            data.toString(),
            "--cache",
            JarProcess.cache().toString())) {
      String line = jar.await("ours.words:2");
      assertThat(line).contains("xyzzyplugh");
      jar.type("284155601\n");
      jar.await("taken: Band number 2841-55601");
    }
  }

  @Test
  void namesEveryMistakeInAVocabulary() throws Exception {
    Path words = Files.createDirectories(data.resolve("grammars"));
    Files.writeString(
        words.resolve("ours.words"), "section species\nbobolink = code species BOBO\nfoo\n");
    JarProcess jar = run("capture", "--plain");
    assertThat(jar.exitCode()).isEqualTo(2);
    assertThat(jar.output()).contains("ours.words:3").doesNotContain("Exception");
  }

  @Test
  void refusesARecordingThatIsNone() throws Exception {
    Path wav = data.resolve("empty.wav");
    Files.write(wav, new byte[0]);
    JarProcess jar = run("capture", "--plain", "--listen", wav.toString());
    assertThat(jar.exitCode()).isEqualTo(2);
    isOneSentence(jar);
    assertThat(jar.output()).contains("empty.wav");
  }

  @Test
  void refusesADeviceItDoesNotKnow() throws Exception {
    JarProcess jar = run("capture", "--plain", "--scale", "/dev/null=no-such-scale");
    assertThat(jar.exitCode()).isEqualTo(2);
    assertThat(jar.output()).contains("no-such-scale").doesNotContain("Exception");
  }

  @Test
  void refusesASecondInstanceOnTheSameFolder() throws Exception {
    ShortForm.into(data);
    try (JarProcess first =
        JarProcess.start("capture", "--plain", "--keypad", "--quiet", "--data", data.toString())) {
      first.await("asked: Band number");
      JarProcess second = run("capture", "--plain", "--keypad", "--quiet");
      assertThat(second.exitCode()).isEqualTo(1);
      isOneSentence(second);
      assertThat(second.output()).contains("process " + first.pid(), "--data");
    }
  }

  @Test
  void refusesRecordsOfANewerVersionAndLeavesThemAlone() throws Exception {
    ShortForm.into(data);
    try (JarProcess first =
        JarProcess.start("capture", "--plain", "--keypad", "--quiet", "--data", data.toString())) {
      first.await("asked: Band number");
      first.type("284155601\n");
      first.await("taken: Band number");
      first.closeInput();
      assertThat(first.exitCode()).isZero();
    }
    Path database = data.resolve("calamus.db");
    byte[] bytes = Files.readAllBytes(database);
    // SQLite file format, section 1.3: the user version is a big-endian integer at offset 60
    bytes[63] = 99;
    Files.write(database, bytes);
    JarProcess jar = run("capture", "--plain", "--keypad", "--quiet");
    assertThat(jar.exitCode()).isEqualTo(1);
    isOneSentence(jar);
    assertThat(jar.output()).contains("99");
    assertThat(Files.readAllBytes(database)).isEqualTo(bytes);
  }

  @Test
  void checkNamesWhatIsMissingAndSaysSoInItsExitCode() throws Exception {
    JarProcess jar = run("check");
    assertThat(jar.output())
        .contains("ok   model:", "ok   records:", "ok   disk:", "ports:", "microphone:", "speaker:")
        .doesNotContain("Exception");
    boolean isAllThere = !jar.output().contains("BAD");
    assertThat(jar.exitCode()).isEqualTo(isAllThere ? 0 : 3);
  }

  @Test
  void namesALineOfTheStationFile() throws Exception {
    Files.writeString(
        data.resolve("station.toml"),
        "place = 'Fenwick Marsh'\nzone = 'Nowhere/Land'\nport = 3\n",
        StandardCharsets.UTF_8);
    JarProcess jar = run("check");
    assertThat(jar.exitCode()).isEqualTo(2);
    assertThat(jar.output())
        .contains("station.toml:2: ", "station.toml:3: ")
        .doesNotContain("Exception");
  }
}
