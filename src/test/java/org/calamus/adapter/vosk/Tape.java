package org.calamus.adapter.vosk;

import java.io.IOException;
import java.util.concurrent.atomic.AtomicReference;
import org.calamus.port.Memos;

/** A place for a memo that a test can look at, and whose room can run out. */
final class Tape implements Memos.Place {

  static final String FULL = "The note is not recorded: the disk is full; free some space.";

  private final AtomicReference<short[]> sound = new AtomicReference<>(new short[0]);
  private final int room;
  private volatile boolean isKept;
  private volatile boolean isClosed;

  /** With room for so many samples. */
  Tape(int room) {
    this.room = room;
  }

  /** What was written to it. */
  short[] sound() {
    return sound.get();
  }

  boolean isKept() {
    return isKept;
  }

  boolean isThrownAway() {
    return isClosed && !isKept;
  }

  @Override
  public Memos.Recording begin() {
    if (room == 0) {
      throw full();
    }
    return new Memos.Recording() {
      @Override
      public void add(short[] samples) {
        if (sound.get().length + samples.length > room) {
          throw full();
        }
        sound.set(Sounds.join(sound.get(), samples));
      }

      @Override
      public String keep() {
        isKept = true;
        return "12-1.wav";
      }

      @Override
      public void close() {
        isClosed = true;
      }
    };
  }

  private static Memos.MemoException full() {
    return new Memos.MemoException(FULL, new IOException("no space"));
  }
}
