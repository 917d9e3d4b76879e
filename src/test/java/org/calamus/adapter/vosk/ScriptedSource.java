package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.calamus.port.AudioSource;

/** A source that gives what a test puts into it. */
final class ScriptedSource implements AudioSource {

  private final BlockingQueue<Supplier<Optional<Read>>> reads = new LinkedBlockingQueue<>();
  private final BlockingQueue<String> refusals = new LinkedBlockingQueue<>();

  /** Gives sound, in blocks of 50 ms. */
  ScriptedSource give(short[]... parts) {
    short[] all = Sounds.join(parts);
    for (int at = 0; at < all.length; at += 800) {
      give(new Block(Arrays.copyOfRange(all, at, Math.min(all.length, at + 800))));
    }
    return this;
  }

  /** Gives something else than sound. */
  ScriptedSource give(Read read) {
    reads.add(() -> Optional.of(read));
    return this;
  }

  /** Refuses to be opened, once. */
  ScriptedSource refuse(String sentence) {
    refusals.add(sentence);
    return this;
  }

  /** Waits until all that was given has been heard. */
  void awaitHeard() throws InterruptedException {
    CountDownLatch heard = new CountDownLatch(1);
    reads.add(
        () -> {
          heard.countDown();
          return Optional.empty();
        });
    assertThat(heard.await(20, TimeUnit.SECONDS)).as("all sound was read").isTrue();
  }

  @Override
  public void open() {
    String refusal = refusals.poll();
    if (refusal != null) {
      throw new AudioException(refusal, new IllegalStateException("scripted"));
    }
  }

  @Override
  public Read read() {
    try {
      Optional<Read> read = reads.take().get();
      while (read.isEmpty()) {
        read = reads.take().get();
      }
      return read.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return new Ended();
    }
  }

  @Override
  public String name() {
    return "scripted sound";
  }

  @Override
  public void close() {
    give(new Ended());
  }
}
