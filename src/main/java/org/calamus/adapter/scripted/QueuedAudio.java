package org.calamus.adapter.scripted;

import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.calamus.port.AudioSource;

/**
 * A quiet room in which recordings are played one after the other, as a microphone would hear them:
 * silence before each, silence behind it, and silence in between.
 *
 * <pre>{@code
 * QueuedAudio room = new QueuedAudio(QueuedAudio.Pace.AS_SPOKEN);
 * room.play(clip);        // from any thread; heard when the ears read on
 * }</pre>
 */
public final class QueuedAudio implements AudioSource {

  private static final int BLOCK = RATE / 10;
  private static final int BLOCK_MILLIS = 100;
  private static final int LEAD_BLOCKS = 4;
  private static final int TAIL_BLOCKS = 15;

  private final BlockingQueue<AudioSource> waiting = new LinkedBlockingQueue<>();
  private final Pace pace;
  private Optional<AudioSource> playing = Optional.empty();
  private int silentBlocksLeft;
  private volatile boolean isClosed;

  /** How time passes in the room. */
  public enum Pace {
    /** As outside: a block of 100 ms takes 100 ms. */
    AS_SPOKEN,
    /** As fast as it is read; between recordings time stands still. */
    AS_FAST_AS_READ
  }

  /** A quiet room. */
  public QueuedAudio(Pace pace) {
    this.pace = pace;
  }

  /** Plays a recording after those that still wait. */
  public void play(AudioSource recording) {
    waiting.add(recording);
  }

  @Override
  public void open() {
    // a room needs no opening; each recording is opened when its turn comes
  }

  @Override
  public Read read() {
    while (!isClosed) {
      if (silentBlocksLeft > 0) {
        silentBlocksLeft--;
        return silence();
      }
      if (playing.isPresent()) {
        Read read = playing.get().read();
        if (read instanceof Block) {
          return read;
        }
        playing.get().close();
        playing = Optional.empty();
        silentBlocksLeft = TAIL_BLOCKS;
      } else if (!next()) {
        return silence();
      }
    }
    return new Ended();
  }

  /** Begins the next recording, or says that none waits and silence is to be heard. */
  private boolean next() {
    try {
      AudioSource next =
          pace == Pace.AS_SPOKEN ? waiting.poll() : waiting.poll(1, TimeUnit.SECONDS);
      if (next != null) {
        next.open();
        playing = Optional.of(next);
        silentBlocksLeft = LEAD_BLOCKS;
      }
      return next != null || pace == Pace.AS_FAST_AS_READ;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      isClosed = true;
      return true;
    }
  }

  private Read silence() {
    if (pace == Pace.AS_SPOKEN) {
      long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(BLOCK_MILLIS);
      while (System.nanoTime() < until && !isClosed) {
        java.util.concurrent.locks.LockSupport.parkNanos(until - System.nanoTime());
      }
    }
    return new Block(new short[BLOCK]);
  }

  @Override
  public String name() {
    return "recordings";
  }

  @Override
  public void close() {
    isClosed = true;
  }
}
