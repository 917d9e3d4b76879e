package org.calamus.adapter.microphone;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.TargetDataLine;
import org.calamus.port.AudioSource.AudioException;

/**
 * A line of the sound card with a thread of its own, which alone touches it: opens, reads and
 * closes it. A line whose sound server was ended in the middle was seen never to return from a
 * question as harmless as how much sound it has; whoever waits here waits no longer than agreed,
 * and leaves such a line to its thread.
 *
 * <p>{@link #next} is used from one thread, {@link #end} from any.
 */
final class LineReader {

  private static final int BLOCKS_A_SECOND = 20;
  private static final Duration LOOK_AGAIN = Duration.ofMillis(5);

  /** The read of a line whose server died gives 0 at once, for ever. */
  private static final int EMPTY_READS_MEANING_LOST = 3;

  private static final Duration CLOSING_LIMIT = Duration.ofSeconds(1);

  private final Supplier<TargetDataLine> opening;
  private final Duration patience;
  private final Thread thread;
  private final CompletableFuture<AudioFormat> opened = new CompletableFuture<>();

  /** One only: sound waits in the line, where it is as old as it would be without the thread. */
  private final BlockingQueue<short[]> blocks = new ArrayBlockingQueue<>(1);

  private final long madeNanos = System.nanoTime();
  private volatile boolean isEnding;
  private volatile boolean isLost;

  /**
   * A reader of a line that is yet to be opened.
   *
   * @param opening opens the line; throws {@link AudioException} where it cannot
   * @param patience how long the line may take to open, and then to give the next sound
   */
  LineReader(Supplier<TargetDataLine> opening, Duration patience) {
    this.opening = opening;
    this.patience = patience;
    thread = new Thread(this::run, "microphone");
    thread.setDaemon(true);
  }

  /**
   * Opens the line and begins to read it; called again, goes on waiting for that.
   *
   * @return the format of the line; empty where it does not answer, and may be asked again
   * @throws AudioException where the line cannot be opened
   */
  Optional<AudioFormat> open() {
    if (thread.getState() == Thread.State.NEW) {
      thread.start();
    }
    try {
      return Optional.of(opened.get(patience.toMillis(), TimeUnit.MILLISECONDS));
    } catch (TimeoutException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof LinkageError noNatives) {
        throw noNatives;
      }
      throw (RuntimeException) e.getCause();
    }
  }

  /** Whether it has been at the opening for longer than so. */
  boolean isOpeningFor(Duration longest) {
    boolean isOpening = thread.isAlive() && !opened.isDone();
    return isOpening && System.nanoTime() - madeNanos > longest.toNanos();
  }

  /** Waits for the next sound, one channel; empty where the line stopped or {@link #end} came. */
  Optional<short[]> next() {
    long deadline = System.nanoTime() + patience.toNanos();
    try {
      while (!isEnding && System.nanoTime() < deadline) {
        short[] block = blocks.poll(20, TimeUnit.MILLISECONDS);
        if (block != null) {
          return Optional.of(block);
        }
        if (isLost) {
          return Optional.empty();
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return Optional.empty();
  }

  /** Ends it without waiting: the line is closed as soon as it answers. */
  void abandon() {
    isEnding = true;
  }

  /** Ends it; the line is closed where it answers, and otherwise left to its thread. */
  void end() {
    abandon();
    try {
      thread.join(CLOSING_LIMIT.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    Optional<TargetDataLine> line = Optional.empty();
    try {
      line = Optional.of(opening.get());
      line.get().start();
      opened.complete(line.get().getFormat());
      readUntilEnd(line.get());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (RuntimeException | LinkageError e) {
      // of a line that is open already nobody asks why: it is lost
      opened.completeExceptionally(e);
    } finally {
      isLost = true;
      line.ifPresent(LineReader::close);
    }
  }

  private static void close(TargetDataLine line) {
    try {
      line.stop();
      line.close();
    } catch (RuntimeException e) {
      // whatever is wrong with it, it is not read any more
      line.close();
    }
  }

  private void readUntilEnd(TargetDataLine line) throws InterruptedException {
    AudioFormat format = line.getFormat();
    int rate = Math.round(format.getSampleRate());
    byte[] buffer = new byte[rate / BLOCKS_A_SECOND * format.getFrameSize()];
    int emptyReads = 0;
    while (!isEnding && emptyReads < EMPTY_READS_MEANING_LOST) {
      // not a waiting read: that of a line whose device hangs would never return
      if (line.available() < buffer.length) {
        LockSupport.parkNanos(LOOK_AGAIN.toNanos());
        continue;
      }
      int length = line.read(buffer, 0, buffer.length);
      if (length > 0) {
        emptyReads = 0;
        hand(PcmMono.mix(buffer, length, format.getChannels()));
      } else {
        emptyReads++;
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(20));
      }
    }
  }

  private void hand(short[] block) throws InterruptedException {
    boolean isTaken = false;
    while (!isTaken && !isEnding) {
      isTaken = blocks.offer(block, 100, TimeUnit.MILLISECONDS);
    }
  }
}
