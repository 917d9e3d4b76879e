package org.calamus.adapter.microphone;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CaptureUseTest {

  @TempDir Path proc;

  private void status(String part, String text) throws IOException {
    Path folder = Files.createDirectories(proc.resolve("asound").resolve(part));
    Files.writeString(folder.resolve("status"), text);
  }

  private void running(int pid, String name) throws IOException {
    Files.writeString(
        Files.createDirectories(proc.resolve(String.valueOf(pid))).resolve("comm"), name + "\n");
  }

  private CaptureUse use() {
    return new CaptureUse(proc);
  }

  @Test
  void programIsUnknownWhereTheSystemDoesNotTell() {
    assertThat(new CaptureUse(proc.resolve("nowhere")).program()).isEmpty();
    assertThat(use().program()).isEmpty();
  }

  @Test
  void programIsNoneWhereNobodyListens() throws IOException {
    status("card0/pcm0c/sub0", "closed\n");
    assertThat(use().program()).isEmpty();
  }

  @Test
  void programIsTheOneThatHoldsAMicrophone() throws IOException {
    status("card0/pcm0c/sub0", "closed\n");
    status("card1/pcm0c/sub0", "state: RUNNING\nowner_pid   : 4711\ntrigger_time: 1.2\n");
    running(4711, "recorder");
    assertThat(use().program()).contains("recorder");
  }

  @Test
  void programIsNotOneThatOnlyPlays() throws IOException {
    status("card0/pcm0p/sub0", "state: RUNNING\nowner_pid   : 4711\n");
    running(4711, "player");
    assertThat(use().program()).isEmpty();
  }

  @Test
  void programIsUnnamedWhereItsNameIsNotTold() throws IOException {
    status("card0/pcm0c/sub0", "state: RUNNING\nowner_pid   : 4711\n");
    assertThat(use().program()).contains("unnamed");
  }
}
