package org.calamus.adapter.microphone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.reflect.Proxy;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.TargetDataLine;
import org.calamus.port.AudioSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Lines that do what lines of sound cards were seen to do. */
@Timeout(20)
class LineReaderTest {

  private static final AudioFormat FORMAT = new AudioFormat(16_000, 16, 1, true, false);
  private static final Duration PATIENCE = Duration.ofMillis(500);

  private final CountDownLatch hanging = new CountDownLatch(1);
  private final CountDownLatch isClosed = new CountDownLatch(1);

  @AfterEach
  void letGo() {
    hanging.countDown();
  }

  @Test
  void soundIsGivenUntilTheLineDoesNotAnswerHowMuchItHas() throws Exception {
    Line line = new Line();
    line.blocksUntilHang = 2;
    LineReader reader = new LineReader(() -> line.proxy(), PATIENCE);

    assertThat(reader.open()).contains(FORMAT);
    assertThat(reader.next().orElseThrow()).hasSize(800);
    assertThat(reader.next().orElseThrow()).hasSize(800);
    assertThat(reader.next()).isEmpty();

    // nobody but its own thread closes it: who else did would wait for the line as well
    reader.end();
    assertThat(isClosed.getCount()).isEqualTo(1);
    hanging.countDown();
    assertThat(isClosed.await(5, TimeUnit.SECONDS)).isTrue();
  }

  @Test
  void lineIsLostWhenItGivesNothingAtOnceForEver() {
    Line line = new Line();
    line.readsNothing = true;
    LineReader reader = new LineReader(() -> line.proxy(), Duration.ofHours(1));

    reader.open();

    assertThat(reader.next()).isEmpty();
  }

  @Test
  void lineIsClosedWhenItIsEnded() throws Exception {
    LineReader reader = new LineReader(() -> new Line().proxy(), PATIENCE);
    reader.open();
    reader.next();

    reader.end();

    assertThat(isClosed.getCount()).isZero();
    assertThat(reader.next()).isEmpty();
  }

  private LineReader late() {
    return new LineReader(
        () -> {
          hang();
          return new Line().proxy();
        },
        PATIENCE);
  }

  @Test
  void lineThatOpensLateIsThereWhenAskedForAgain() {
    LineReader reader = late();

    assertThat(reader.open()).isEmpty();
    assertThat(reader.isOpeningFor(Duration.ZERO)).isTrue();
    assertThat(reader.isOpeningFor(Duration.ofMinutes(1))).isFalse();
    hanging.countDown();
    assertThat(reader.open()).contains(FORMAT);

    assertThat(reader.isOpeningFor(Duration.ZERO)).isFalse();
    assertThat(reader.next()).isPresent();
  }

  @Test
  void lineThatOpensWhenNobodyWaitsAnyMoreIsClosedAgain() throws Exception {
    LineReader reader = late();
    reader.open();

    reader.abandon();
    hanging.countDown();

    assertThat(isClosed.await(5, TimeUnit.SECONDS)).isTrue();
  }

  @Test
  void lineThatFailsWhileItIsReadIsLostAndClosed() throws Exception {
    Line line = new Line();
    line.fails = true;
    LineReader reader = new LineReader(() -> line.proxy(), Duration.ofHours(1));

    assertThat(reader.open()).contains(FORMAT);
    assertThat(reader.next()).isEmpty();

    assertThat(isClosed.await(5, TimeUnit.SECONDS)).isTrue();
  }

  @Test
  void reasonIsPassedOnWhenTheLineCannotBeOpened() {
    Supplier<TargetDataLine> refusing =
        () -> {
          throw new AudioSource.AudioException("In use.", new IllegalStateException());
        };

    assertThatThrownBy(() -> new LineReader(refusing, PATIENCE).open())
        .isInstanceOf(AudioSource.AudioException.class)
        .hasMessage("In use.");
  }

  private void hang() {
    try {
      hanging.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private final class Line {
    private Optional<Integer> left = Optional.empty();
    private int blocksUntilHang = Integer.MAX_VALUE;
    private boolean readsNothing;
    private boolean fails;

    private TargetDataLine proxy() {
      return (TargetDataLine)
          Proxy.newProxyInstance(
              getClass().getClassLoader(),
              new Class<?>[] {TargetDataLine.class},
              (proxy, method, arguments) ->
                  switch (method.getName()) {
                    case "getFormat" -> FORMAT;
                    case "available" -> available();
                    case "read" -> readsNothing ? 0 : arguments[2];
                    case "close" -> {
                      isClosed.countDown();
                      yield null;
                    }
                    default -> null;
                  });
    }

    private int available() {
      if (fails) {
        throw new IllegalStateException("the device is gone");
      }
      int now = left.orElse(blocksUntilHang);
      if (now == 0) {
        hang();
      }
      left = Optional.of(now - 1);
      return 1_600;
    }
  }
}
