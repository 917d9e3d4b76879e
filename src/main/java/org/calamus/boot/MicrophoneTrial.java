package org.calamus.boot;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.hearing.Answer;
import org.calamus.core.hearing.Probe;
import org.calamus.core.hearing.Score;
import org.calamus.core.hearing.SelfTest;
import org.calamus.core.speech.Grammar;

/**
 * The course of a microphone check: the place, then one thing after the other that is to be said,
 * and once more what was missed. Goes on by what the ears post, on their thread, so that a
 * recording is heard like a bander.
 */
final class MicrophoneTrial {

  /** The ears post the level five times a second of sound. */
  private static final int PLACE_LEVELS = 15;

  private static final int ANSWER_LEVELS = 50;

  /** What becomes of the rest when the ears stop. */
  enum AtEnd {
    /** A recording that ends has answered nothing more. */
    NOT_HEARD,
    /** A microphone that fails has no verdict. */
    NO_VERDICT
  }

  private final SelfTest test;
  private final PrintStream out;
  private final AtEnd atEnd;
  private final Runnable speechBegins;
  private final Consumer<Grammar> listen;
  private final CountDownLatch done = new CountDownLatch(1);
  private final List<Probe> left;
  private final List<Probe> missed = new ArrayList<>();
  private final int asked;
  private final Set<Probe> heard = new HashSet<>();
  private int levels;
  private boolean isAsking;
  private boolean isRepeat;
  private String microphone = "";
  private Optional<String> trouble = Optional.empty();

  /**
   * A trial that has not begun.
   *
   * @param test what is asked
   * @param out where it is asked
   * @param atEnd what becomes of the rest when the ears stop
   * @param speechBegins called when the place has been heard
   * @param listen told what may be said next
   */
  MicrophoneTrial(
      SelfTest test,
      PrintStream out,
      AtEnd atEnd,
      Runnable speechBegins,
      Consumer<Grammar> listen) {
    this.test = test;
    this.out = out;
    this.atEnd = atEnd;
    this.speechBegins = speechBegins;
    this.listen = listen;
    this.left = new ArrayList<>(test.probes());
    this.asked = left.size();
  }

  /** Waits until everything was asked, or the ears stopped. */
  void await() throws InterruptedException {
    done.await();
  }

  /** Whether it is over. */
  boolean isDone() {
    return done.getCount() == 0;
  }

  /** How it went; once it is over. */
  synchronized Score score() {
    return new Score(asked, heard.size(), asked - missed.size());
  }

  /** The name of the microphone; empty where none was ever opened. */
  synchronized String microphone() {
    return microphone;
  }

  /** Why there is no verdict. */
  synchronized Optional<String> trouble() {
    return trouble;
  }

  /** Takes what the ears post. */
  synchronized void hear(Event event) {
    if (isDone()) {
      return;
    }
    if (event instanceof Event.PartUp up && up.part() == Part.EARS) {
      microphone = up.name();
    } else if (event instanceof Event.PartDown down && down.part() == Part.EARS) {
      stopped(down.sentence());
      done.countDown();
    } else if (event instanceof Event.LevelMeasured) {
      measured();
    } else if (event instanceof Event.Heard said && isAsking) {
      take(test.answer(left.get(0), said.utterance()));
    }
  }

  private void measured() {
    levels++;
    if (!isAsking && levels >= PLACE_LEVELS) {
      isAsking = true;
      speechBegins.run();
      ask();
    } else if (isAsking && levels >= ANSWER_LEVELS) {
      take(new Answer.NotHeard());
    }
  }

  private void stopped(String sentence) {
    if (atEnd == AtEnd.NOT_HEARD && isAsking) {
      missed.addAll(left);
    } else {
      trouble = Optional.of(sentence);
    }
  }

  private void ask() {
    levels = 0;
    listen.accept(test.grammar(left.get(0)));
    out.println("Say: " + left.get(0).spoken());
  }

  private void take(Answer answer) {
    Probe probe = left.remove(0);
    if (!(answer instanceof Answer.NotHeard)) {
      heard.add(probe);
    }
    if (answer instanceof Answer.Right) {
      out.println("  right");
    } else {
      missed.add(probe);
      out.println(
          answer instanceof Answer.HeardAs other
              ? "  heard as \"" + other.words() + "\""
              : "  not heard");
    }
    if (left.isEmpty() && !isRepeat && !missed.isEmpty()) {
      isRepeat = true;
      left.addAll(missed);
      missed.clear();
      out.println("Once more:");
    }
    if (left.isEmpty()) {
      done.countDown();
    } else {
      ask();
    }
  }
}
