package org.calamus.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.calamus.support.JarProcess;
import org.calamus.support.ShortForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was said in a session is kept, and heard anew after a word has changed. */
class ReplayIT {

  @TempDir Path data;

  private static String speech(String name) {
    return Path.of("demo-data", "speech", name + ".wav").toAbsolutePath().toString();
  }

  private String[] arguments(String command, String... more) {
    List<String> all = new ArrayList<>(List.of(command, "--data", data.toString()));
    all.addAll(List.of("--cache", JarProcess.cache().toString()));
    all.addAll(List.of(more));
    return all.toArray(new String[0]);
  }

  private void capture(String... more) throws Exception {
    List<String> how = new ArrayList<>(List.of("--plain", "--quiet"));
    how.addAll(List.of(more));
    how.addAll(List.of("--listen", speech("01-band"), "--listen", speech("09-species")));
    try (JarProcess jar = JarProcess.start(arguments("capture", how.toArray(new String[0])))) {
      jar.await("taken: Species BCCH  Black-capped Chickadee (said)");
      jar.closeInput();
      assertThat(jar.exitCode()).isZero();
      if (more.length > 0) {
        assertThat(jar.output())
            .containsOnlyOnce("What is said at the table is kept in the data folder");
      }
    }
  }

  private Path session() throws IOException {
    try (Stream<Path> sessions = Files.list(data.resolve("utterances"))) {
      return sessions.findFirst().orElseThrow();
    }
  }

  @Test
  void saysWhatAChangedWordChanges() throws Exception {
    ShortForm.into(data);
    capture("--keep-utterances");
    JarProcess same = JarProcess.run(arguments("replay", session().toString()));
    assertThat(same.output())
        .contains(
            "same     " + session().getFileName() + "/0001.wav [band] ",
            "/0002.wav [species] \"black capped chickadee\" = SPECIES=BCCH (taken)"
                + " -> \"black capped chickadee\" = SPECIES=BCCH",
            "2 same, 0 changed, 0 left out.");
    assertThat(same.exitCode()).isZero();

    String words = Files.readString(Path.of("grammars", "species.words"));
    String changed =
        words
            .replace("\nblack capped chickadee = code species BCCH", "")
            .replace("carolina chickadee =", "black capped chickadee =");
    Path own = Files.createDirectories(data.resolve("grammars"));
    Files.writeString(own.resolve("species.words"), changed);
    Files.delete(session().resolve("0001.wav"));
    JarProcess other = JarProcess.run(arguments("replay", session().toString()));
    assertThat(other.output())
        .contains(
            "/0001.wav: There is no recording 0001.wav",
            "CHANGED  "
                + session().getFileName()
                + "/0002.wav [species] \"black capped chickadee\" = SPECIES=BCCH (taken)"
                + " -> \"black capped chickadee\" = SPECIES=CACH",
            "0 same, 1 changed, 1 left out.");
    assertThat(other.exitCode()).isEqualTo(1);
  }

  @Test
  void keepsNothingUnlessAsked() throws Exception {
    ShortForm.into(data);
    capture();
    assertThat(data.resolve("utterances")).doesNotExist();
  }

  @Test
  void hearsAnyRecordingWhileAFieldIsAsked() throws Exception {
    JarProcess jar = JarProcess.run(arguments("replay", "--field", "wing", speech("05-wing")));
    assertThat(jar.output()).contains("now      05-wing.wav [wing] -> \"ninety three\" = WING=93");
    assertThat(jar.exitCode()).isZero();
  }

  @Test
  void refusesWhatCannotBeReplayed() throws Exception {
    refuses("check its name", data.resolve("nowhere").toString());
    refuses("say what was asked, as --field wing", speech("05-wing"));
    refuses("--field plume is no field", "--field", "plume", speech("05-wing"));
    refuses("--kind odd is no kind", "--field", "wing", "--kind", "odd", speech("05-wing"));
    refuses("cannot be read", data.toString());
  }

  private void refuses(String sentence, String... how) throws Exception {
    JarProcess jar = JarProcess.run(arguments("replay", how));
    assertThat(jar.exitCode()).isEqualTo(2);
    assertThat(jar.output()).contains(sentence);
    assertThat(jar.output().lines().filter(l -> !l.isBlank())).hasSize(1);
  }
}
