package org.calamus.adapter.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.stream.Stream;
import org.calamus.core.hearing.MicrophoneCheck;
import org.calamus.core.hearing.MicrophoneVerdict.Grade;
import org.calamus.port.MicrophoneChecks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MicrophoneCheckFileTest {

  private static final Instant NOW = Instant.parse("2026-03-14T06:30:00Z");

  @TempDir Path data;

  private static MicrophoneCheck check(String name, Instant at, Grade grade) {
    return new MicrophoneCheck(name, at, grade, "A \"sentence\".");
  }

  private MicrophoneChecks file() {
    return new MicrophoneCheckFile(data);
  }

  @Test
  void pastIsEmptyWhereNoneWasMade() {
    assertThat(file().past().checks()).isEmpty();
  }

  @Test
  void keepReplacesTheEarlierCheckOfTheSameMicrophoneOnly() throws IOException {
    MicrophoneCheck headset = check("Headset [plug, \u00fc]", NOW, Grade.GOOD);
    MicrophoneCheck early = check("microphone", NOW, Grade.NOT_USABLE);
    MicrophoneCheck late = check("microphone", NOW.plusSeconds(60), Grade.USABLE);
    file().keep(headset);
    file().keep(early);
    assertThat(file().past().last("microphone")).contains(early);
    file().keep(late);
    assertThat(file().past().checks()).containsExactlyInAnyOrder(headset, late);
    assertThat(file().past().last("other")).isEmpty();
    try (Stream<Path> files = Files.list(data)) {
      assertThat(files).containsExactly(data.resolve("microphone-checks.jsonl"));
    }
  }

  @Test
  void keepMakesTheDataFolder() {
    MicrophoneChecks fresh = new MicrophoneCheckFile(data.resolve("new"));
    fresh.keep(check("microphone", NOW, Grade.GOOD));
    assertThat(fresh.past().checks()).hasSize(1);
  }

  @Test
  void pastLeavesOutWhatWasNotWrittenHere() throws IOException {
    file().keep(check("microphone", NOW, Grade.GOOD));
    Path kept = data.resolve("microphone-checks.jsonl");
    String line = Files.readString(kept);
    Files.writeString(
        kept,
        "{\"microphone\"\n{}\n"
            + line.replace("GOOD", "FINE")
            + line.replace("2026", "soon")
            + line.replace("\"microphone\",", "\"second\","));
    assertThat(file().past().checks()).singleElement().isEqualTo(check("second", NOW, Grade.GOOD));
    Files.write(kept, new byte[] {(byte) 0xff, (byte) 0xfe, 10});
    assertThat(file().past().checks()).as("no text at all").isEmpty();
    file().keep(check("microphone", NOW, Grade.GOOD));
    assertThat(file().past().checks()).as("written anew").hasSize(1);
  }

  @Test
  void keepSaysWhatToDoWhereItCannotWrite() throws IOException {
    Path noFolder = Files.writeString(data.resolve("file"), "");
    MicrophoneChecks checks = new MicrophoneCheckFile(noFolder);
    assertThatThrownBy(() -> checks.keep(check("microphone", NOW, Grade.GOOD)))
        .isInstanceOf(MicrophoneChecks.KeepException.class)
        .hasMessageContaining("The verdict is not remembered")
        .hasMessageContaining("free space");
  }
}
