package org.calamus.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.calamus.support.JarProcess;
import org.calamus.support.Outside;
import org.calamus.support.ShortForm;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A balance on a serial port: one end of a pair of pseudo-terminals, which socat provides. */
class ScaleIT {

  private static final String EMPTY = "ST,+00000.0  g\r\n";
  private static final String MOVING = "US,+00021.9  g\r\n";
  private static final String STABLE = "ST,+00022.3  g\r\n";

  @TempDir Path folder;
  private Path port;
  private Path balance;
  private Process cable;

  @BeforeEach
  void plugIn() throws IOException {
    port = folder.resolve("port");
    balance = folder.resolve("balance");
    cable =
        new ProcessBuilder(
                Outside.program("socat").toString(),
                "pty,raw,echo=0,link=" + port,
                "pty,raw,echo=0,link=" + balance)
            .redirectErrorStream(true)
            .start();
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (!Files.exists(port) || !Files.exists(balance)) {
      assertThat(System.nanoTime()).as("socat makes its ports in time").isLessThan(end);
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(20));
    }
  }

  @AfterEach
  void pullOut() throws InterruptedException {
    if (cable != null) {
      cable.destroy();
      cable.waitFor();
    }
  }

  private JarProcess console() throws IOException {
    ShortForm.into(folder.resolve("data"));
    return JarProcess.start(
        "capture",
        "--plain",
        "--keypad",
        "--quiet",
        "--data",
        folder.resolve("data").toString(),
        "--scale",
        port + "=two-letter-header");
  }

  private void send(String... lines) throws IOException {
    Files.write(
        balance,
        String.join("", lines).getBytes(StandardCharsets.US_ASCII),
        StandardOpenOption.WRITE);
  }

  @Test
  void takesTheMassByItselfAndKeepsItWhenKilled() throws Exception {
    try (JarProcess first = console()) {
      first.await("scale ok");
      first.type("284155601\n7270\n1\n4\n92\n");
      first.await("asked: Mass");
      send(EMPTY, MOVING, STABLE, STABLE);
      first.await("taken: Mass 22.3 g (measured)");
      first.kill();
    }
    try (JarProcess second = console()) {
      assertThat(second.await("An unfinished bird was found")).contains("mass 22.3 g");
      second.type("\n++");
      assertThat(second.await("saved 1: ")).contains("2841-55601", "mass 22.3 g");
    }
  }

  @Test
  void takesNothingHalfWeighedWhenTheCableIsPulled() throws Exception {
    try (JarProcess jar = console()) {
      jar.await("scale ok");
      jar.type("284155601\n");
      jar.await("taken: Band number");
      send(EMPTY, MOVING, STABLE, "ST,+0002");
      pullOut();
      assertThat(jar.await("scale DOWN")).contains("plug it in again");
      plugIn();
      jar.awaitTimes("scale ok", 2);
      // what came before the cable was pulled must not be completed by what comes now
      send("2.3  g\r\n", STABLE, STABLE);
      send(EMPTY, MOVING);
      jar.type("7270\n");
      jar.await("taken: Species");
      assertThat(jar.output()).doesNotContain("taken: Mass");
      send("ST,+00021.7  g\r\n", "ST,+00021.7  g\r\n");
      jar.await("taken: Mass 21.7 g (measured)");
      jar.closeInput();
      assertThat(jar.exitCode()).isZero();
      assertThat(jar.output()).doesNotContain("22.3");
    }
  }
}
