package org.calamus.adapter.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.calamus.adapter.files.DeviceFiles;
import org.calamus.adapter.serial.SerialInstruments.Connection;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Event.PartDown;
import org.calamus.core.dialogue.Event.PartUp;
import org.calamus.core.dialogue.Event.ReadingArrived;
import org.calamus.support.Outside;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The real serial library against a pair of pseudo-terminals, which socat provides. */
@Timeout(60)
class SerialInstrumentsTest {

  @TempDir private Path folder;

  private final LinkedBlockingQueue<Event> events = new LinkedBlockingQueue<>();
  private final List<AutoCloseable> open = new ArrayList<>();

  @AfterEach
  void close() throws Exception {
    for (AutoCloseable each : open) {
      each.close();
    }
  }

  @Test
  void readingsArriveWholeHoweverTheLinesAreCut() throws Exception {
    socat();
    start("two-letter-header");
    assertThat(next()).isInstanceOf(PartUp.class);

    try (FileOutputStream scale = new FileOutputStream(scaleEnd())) {
      send(scale, "ST,+00022.3  g\r\nUS,+000");
      assertThat(amount(next())).isEqualTo("22.3");
      send(scale, "21.9  g\r\n");
      assertThat(amount(next())).isEqualTo("21.9");
    }
  }

  @Test
  void aLostPortIsReportedAndFoundAgainAndHalfALineIsDropped() throws Exception {
    Process socat = socat();
    start("two-letter-header");
    assertThat(next()).isInstanceOf(PartUp.class);
    try (FileOutputStream scale = new FileOutputStream(scaleEnd())) {
      send(scale, "US,+00021.9  g\r\nST,+0002");
      assertThat(amount(next())).isEqualTo("21.9");
    }

    socat.destroy();
    socat.waitFor();

    assertThat(((PartDown) next()).sentence()).contains("is gone").contains(port());
    assertThat(((PartDown) next()).sentence()).contains("is not there");

    socat();
    assertThat(next()).isInstanceOf(PartUp.class);
    try (FileOutputStream scale = new FileOutputStream(scaleEnd())) {
      send(scale, "1.4  g\r\nST,+00022.3  g\r\n");
      assertThat(amount(next())).isEqualTo("22.3");
    }
    assertThat(events).isEmpty();
  }

  @Test
  void halfALineThenTheEndGivesNothing() throws Exception {
    Process socat = socat();
    SerialInstruments instruments = start("two-letter-header");
    next();
    try (FileOutputStream scale = new FileOutputStream(scaleEnd())) {
      send(scale, "US,+00021.9  g\r\n");
      next();
      send(scale, "ST,+00022.3");
    }
    socat.destroy();
    socat.waitFor();
    assertThat(next()).isInstanceOf(PartDown.class);
    instruments.close();

    assertThat(events.stream().filter(ReadingArrived.class::isInstance)).isEmpty();
  }

  @Test
  void anInstrumentThatIsAskedAnswers() throws Exception {
    socat();
    start("dialog-space");
    assertThat(next()).isInstanceOf(PartUp.class);

    try (RandomAccessFile scale = new RandomAccessFile(scaleEnd(), "rw")) {
      byte[] request = new byte[4];
      scale.readFully(request);
      assertThat(new String(request, StandardCharsets.US_ASCII)).isEqualTo("SI\r\n");
      scale.write("S S      22.31 g\r\n".getBytes(StandardCharsets.US_ASCII));
      assertThat(amount(next())).isEqualTo("22.31");
      scale.readFully(request); // it is asked again
    }
  }

  @Test
  void aPortThatIsNotThereIsReportedInOneSentence() throws Exception {
    start("two-letter-header");

    assertThat(((PartDown) next()).sentence())
        .isEqualTo(
            "The port "
                + port()
                + " is not there; plug the instrument in, or choose a port that \"check\" lists.");
  }

  @Test
  void aPortThatAnotherProgramHasIsReportedAsSuch() throws Exception {
    socat();
    Process other =
        new ProcessBuilder(
                Outside.program("flock").toString(), port(), "--command", "echo held; read line")
            .start();
    open.add(() -> stop(other));
    other.inputReader().readLine();

    start("two-letter-header");

    assertThat(((PartDown) next()).sentence())
        .isEqualTo("The port " + port() + " is in use by another program; close that program.");
  }

  @Test
  void closeEndsWithinItsLimit() throws Exception {
    socat();
    SerialInstruments instruments = start("two-letter-header");
    next();

    long start = System.nanoTime();
    instruments.close();

    assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(3));
  }

  @Test
  void portsGivesOneLineAPort() {
    assertThat(SerialInstruments.ports()).allMatch(line -> line.matches("\\S+ - .+"));
  }

  private SerialInstruments start(String device) {
    SerialInstruments instruments =
        new SerialInstruments(
            List.of(new Connection(port(), DeviceFiles.carried().device(device))), Instant::now);
    open.add(0, instruments);
    instruments.start(events::add);
    return instruments;
  }

  /** Named like a device under /dev, for which the library would take it while it is absent. */
  private String port() {
    return folder.resolve("console").toString();
  }

  private File scaleEnd() {
    return folder.resolve("scale").toFile();
  }

  private Process socat() throws IOException {
    Process socat =
        new ProcessBuilder(
                Outside.program("socat").toString(),
                "pty,raw,echo=0,link=" + port(),
                "pty,raw,echo=0,link=" + scaleEnd())
            .redirectErrorStream(true)
            .start();
    open.add(() -> stop(socat));
    long deadline = System.nanoTime() + Duration.ofSeconds(10).toNanos();
    while (!Files.exists(Path.of(port())) || !scaleEnd().exists()) {
      assertThat(System.nanoTime()).as("socat is ready in time").isLessThan(deadline);
      LockSupport.parkNanos(1_000_000);
    }
    return socat;
  }

  private static void stop(Process process) throws InterruptedException {
    process.destroy();
    process.waitFor(10, TimeUnit.SECONDS);
  }

  private static void send(FileOutputStream scale, String text) throws IOException {
    scale.write(text.getBytes(StandardCharsets.US_ASCII));
  }

  private Event next() throws InterruptedException {
    Event event = events.poll(10, TimeUnit.SECONDS);
    assertThat(event).as("an event within ten seconds").isNotNull();
    return event;
  }

  private static String amount(Event event) {
    assertThat(event).isInstanceOf(ReadingArrived.class);
    return ((ReadingArrived) event).reading().amount().toPlainString();
  }
}
