package org.calamus.adapter.microphone;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import org.calamus.core.hearing.Levels;
import org.calamus.port.AudioSource;
import org.junit.jupiter.api.Test;

class MeteredSourceTest {

  private static final int BLOCK = AudioSource.RATE / 20;

  /** Gives what it was told to give, and then ends. */
  private static final class Given implements AudioSource {
    private final Deque<Read> reads = new ArrayDeque<>();
    private boolean isOpen;

    @Override
    public void open() {
      isOpen = true;
    }

    @Override
    public Read read() {
      return reads.isEmpty() ? new Ended() : reads.remove();
    }

    @Override
    public String name() {
      return "headset";
    }

    @Override
    public void close() {
      isOpen = false;
    }
  }

  private final Given inner = new Given();
  private final MeteredSource metered = new MeteredSource(inner);

  /** A block of a square wave, whose root mean square is its height. */
  private static short[] square(int height) {
    short[] samples = new short[BLOCK];
    for (int i = 0; i < BLOCK; i++) {
      samples[i] = (short) (i % 2 == 0 ? height : -height);
    }
    return samples;
  }

  private MeteredSource hear(int blocks, short[] samples) {
    for (int i = 0; i < blocks; i++) {
      inner.reads.add(new AudioSource.Block(samples));
    }
    while (metered.read() instanceof AudioSource.Block) {
      // measured on its way
    }
    return metered;
  }

  @Test
  void readHandsEverythingOnAsItIs() {
    AudioSource.Block block = new AudioSource.Block(square(5));
    AudioSource.Lost lost = new AudioSource.Lost("It is gone; plug it in.");
    inner.reads.add(block);
    inner.reads.add(lost);
    metered.open();
    assertThat(inner.isOpen).isTrue();
    assertThat(metered.name()).isEqualTo("headset");
    assertThat(metered.read()).isSameAs(block);
    assertThat(metered.read()).isSameAs(lost);
    assertThat(metered.read()).isEqualTo(new AudioSource.Ended());
    metered.close();
    assertThat(inner.isOpen).isFalse();
  }

  @Test
  void levelsAreSilenceWhereNothingWasHeard() {
    assertThat(metered.levels()).isEqualTo(new Levels(-96, -96, 0));
  }

  @Test
  void levelsTellThePlaceFromSpeech() {
    hear(60, square(33)).speechBegins();
    // 20 log of 33 and of 3277 over 32768
    assertThat(hear(60, square(3_277)).levels()).isEqualTo(new Levels(-60, -20, 0));
  }

  @Test
  void levelsLeaveTheLoudestTenthOfThePlaceOut() {
    hear(54, square(33));
    // a door is shut
    assertThat(hear(6, square(20_000)).levels().noise()).isEqualTo(-60);
    assertThat(hear(60, square(20_000)).levels().noise()).as("it goes on").isGreaterThan(-10);
  }

  @Test
  void levelsLeaveThePausesOfSpeechOut() {
    hear(60, square(33)).speechBegins();
    hear(300, square(33));
    assertThat(hear(20, square(3_277)).levels().speech()).isEqualTo(-20);
    // 10 dB softer is a soft vowel and counts: the mean of both
    assertThat(hear(20, square(1_036)).levels().speech()).isEqualTo(-23);
  }

  @Test
  void levelsCountWhatStandsAtFullScaleInSpeechAlone() {
    hear(60, square(Short.MAX_VALUE));
    metered.speechBegins();
    assertThat(hear(60, square(16_000)).levels().clippedPerMille()).isZero();
    short[] clipped = square(16_000);
    Arrays.fill(clipped, 0, 8, Short.MAX_VALUE);
    assertThat(hear(60, clipped).levels().clippedPerMille()).isEqualTo(5);
  }

  @Test
  void levelsNameAHumOfThePlaceAndNotOneOfSpeech() {
    hear(60, square(10)).speechBegins();
    hearTone(50);
    assertThat(metered.levels().hum()).isEmpty();
    MeteredSource other = new MeteredSource(inner);
    for (short[] block : tone(50)) {
      inner.reads.add(new AudioSource.Block(block));
      other.read();
    }
    assertThat(other.levels().hum()).hasValueSatisfying(h -> assertThat(h.hertz()).isEqualTo(50));
    // what was heard more than four seconds ago has been put right since
    for (int i = 0; i < 80; i++) {
      inner.reads.add(new AudioSource.Block(square(30)));
      other.read();
    }
    assertThat(other.levels().hum()).isEmpty();
  }

  private void hearTone(int hertz) {
    for (short[] block : tone(hertz)) {
      hear(1, block);
    }
  }

  /** Three seconds. */
  private static short[][] tone(int hertz) {
    short[][] blocks = new short[60][BLOCK];
    for (int i = 0; i < 60 * BLOCK; i++) {
      double angle = 2 * Math.PI * hertz * i / AudioSource.RATE;
      blocks[i / BLOCK][i % BLOCK] = (short) Math.round(300 * Math.sin(angle));
    }
    return blocks;
  }
}
