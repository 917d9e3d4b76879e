package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.calamus.core.dialogue.Event;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.port.AudioSource;
import org.calamus.port.TimbreMemory;
import org.calamus.port.UtteranceKeeper;

/** Real ears on a source that a test controls. */
final class EarsRig implements AutoCloseable {

  static final Grammar NUMBERS =
      new Grammar(
          "numbers",
          repeated(
              "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine",
              "point", "[unk]"));
  static final Grammar COMMANDS =
      new Grammar("commands", List.of("save record", "repeat", "cancel", "[unk]"));

  final BlockingQueue<Event> events = new LinkedBlockingQueue<>();
  final VoskEars ears;

  EarsRig(AudioSource source) {
    this(TestModel.folder(), source);
  }

  EarsRig(Path model, AudioSource source) {
    ears = new VoskEars(model, source, Instant::now, VoskEars.Settings.usual());
  }

  EarsRig(AudioSource source, VoskEars.Settings settings, TimbreMemory memory) {
    ears =
        new VoskEars(
            TestModel.folder(), source, Instant::now, settings, UtteranceKeeper.none(), memory);
  }

  EarsRig start(Grammar grammar) {
    ears.listenFor(grammar);
    ears.start(events::add);
    return this;
  }

  /** The next event of a kind; others before it are dropped. */
  <T extends Event> T next(Class<T> kind) throws InterruptedException {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    Event event = events.poll(20, TimeUnit.SECONDS);
    while (event != null && !kind.isInstance(event)) {
      event = events.poll(deadline - System.nanoTime(), TimeUnit.NANOSECONDS);
    }
    assertThat(event).as("an event of " + kind.getSimpleName()).isNotNull();
    return kind.cast(event);
  }

  String nextText() throws InterruptedException {
    return next(Event.Heard.class).utterance().text();
  }

  /** All that was heard until the source ended. */
  List<String> textsUntilTheEnd() throws InterruptedException {
    return utterancesUntilTheEnd().stream().map(Utterance::text).toList();
  }

  /** The same, with all that is known of each. */
  List<Utterance> utterancesUntilTheEnd() throws InterruptedException {
    List<Utterance> utterances = new ArrayList<>();
    Event event = next(Event.class);
    while (!(event instanceof Event.PartDown)) {
      if (event instanceof Event.Heard heard) {
        utterances.add(heard.utterance());
      }
      event = next(Event.class);
    }
    return utterances;
  }

  @Override
  public void close() {
    ears.close();
  }

  private static List<String> repeated(String... words) {
    List<String> all = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      all.addAll(Arrays.asList(words));
    }
    return all;
  }
}
