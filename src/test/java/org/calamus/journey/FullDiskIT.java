package org.calamus.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.calamus.support.JarProcess;
import org.calamus.support.Outside;
import org.calamus.support.ShortForm;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A disk that fills up in mid-record: a small one in memory, which only root can mount. */
class FullDiskIT {

  @TempDir Path folder;
  private Path disk;
  private boolean isMounted;

  @BeforeEach
  void mount() throws Exception {
    disk = Files.createDirectories(folder.resolve("disk"));
    String mount = Outside.program("mount").toString();
    isMounted = run(mount, "-t", "tmpfs", "-o", "size=1m", "tmpfs", disk.toString()) == 0;
    if (!isMounted) {
      throw Outside.missing("the right to mount a small disk");
    }
  }

  @AfterEach
  void unmount() throws Exception {
    if (isMounted) {
      assertThat(run("umount", "-l", disk.toString())).isZero();
    }
  }

  private static int run(String... command) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    return process.waitFor();
  }

  private JarProcess console() throws IOException {
    ShortForm.into(disk);
    return JarProcess.start(
        "capture",
        "--plain",
        "--keypad",
        "--quiet",
        "--data",
        disk.toString(),
        "--cache",
        JarProcess.cache().toString());
  }

  /** Writes until nothing goes any more. */
  private void fill(Path file) throws IOException {
    byte[] block = new byte[4096];
    try (OutputStream out = Files.newOutputStream(file)) {
      while (disk.toFile().getUsableSpace() > 0) {
        out.write(block);
      }
    }
  }

  @Test
  void storesOnceThereIsRoomWhatWasTakenWhileTheDiskWasFull() throws Exception {
    Path ballast = disk.resolve("ballast");
    try (JarProcess first = console()) {
      first.await("asked: Band number");
      first.type("284155601\n");
      first.await("taken: Band number");
      fill(ballast);
      first.type("7270\n");
      assertThat(first.await("store DOWN")).contains("is full; free some space");
      first.await("Not stored yet");
      first.type("1\n");
      first.await("asked: Sex");
      Files.delete(ballast);
      first.awaitTimes("store ok", 2);
      first.await("Stored now.");
      first.kill();
    }
    try (JarProcess second = console()) {
      assertThat(second.await("An unfinished bird was found"))
          .contains("band 2841-55601  species WBNU  age AHY");
    }
  }

  @Test
  void keepsWhatWasStoredBeforeTheDiskWasFull() throws Exception {
    try (JarProcess first = console()) {
      first.await("asked: Band number");
      first.type("284155601\n");
      first.await("taken: Band number");
      fill(disk.resolve("ballast"));
      first.type("7270\n");
      first.await("Not stored yet");
      first.closeInput();
      assertThat(first.exitCode()).isEqualTo(1);
      assertThat(first.output()).contains("could not be stored: write them down now");
    }
    Files.delete(disk.resolve("ballast"));
    try (JarProcess second = console()) {
      assertThat(second.await("An unfinished bird was found"))
          .contains("band 2841-55601")
          .doesNotContain("WBNU");
    }
  }
}
