package org.calamus.adapter.speaker;

import java.io.File;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.Tone;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.Voice;

/**
 * Speaks with a program that is installed on the computer, one process a phrase: {@code flite
 * -voice slt -t {}}, {@code espeak-ng {}} or {@code say {}}. No shell is between: the phrase is one
 * argument, whatever stands in it. A phrase is cut off by ending its process.
 */
public final class ProcessVoice implements Voice {

  /** Stands in the command for the phrase. */
  public static final String PLACE = "{}";

  private static final String MISSING = "cannot be started; install it or choose another voice.";

  private final List<String> command;
  private final Clock clock;
  private final FreeTtsVoice.Settings settings;
  private final Thread thread = new Thread(this::run, "voice program");
  private final Deque<Phrase> waiting = new ArrayDeque<>();
  private EventSink sink = event -> {};
  private Optional<Process> running = Optional.empty();
  private Optional<Loudspeaker> tones = Optional.empty();
  private boolean isDown;
  private boolean isCut;
  private boolean isClosing;

  /**
   * A voice that starts a program.
   *
   * @param command the program and its arguments; one of them is or holds {@link #PLACE}
   * @param clock stamps the events
   * @param settings of these only the volume and switch of the tones count: the program has its own
   */
  public ProcessVoice(List<String> command, Clock clock, FreeTtsVoice.Settings settings) {
    this.command = List.copyOf(command);
    this.clock = clock;
    this.settings = settings;
    if (command.stream().skip(1).noneMatch(argument -> argument.contains(PLACE))) {
      throw new IllegalArgumentException("the voice command needs {} where the phrase belongs");
    }
    thread.setDaemon(true);
  }

  @Override
  public synchronized void start(EventSink sink) {
    this.sink = sink;
    if (settings.hasTones()) {
      // only its tones are used: what it says about a speaker is the program's matter
      Loudspeaker quiet =
          new Loudspeaker("tones", settings, () -> text -> new short[0], clock, event -> {});
      tones = Optional.of(quiet);
      quiet.start();
    }
    if (isInstalled()) {
      up();
    } else {
      down(MISSING);
    }
    thread.start();
  }

  @Override
  public synchronized void say(String phrase) {
    waiting.add(new Phrase(phrase, clock, sink));
    cut();
    notifyAll();
  }

  @Override
  public synchronized void hush() {
    waiting.forEach(Phrase::end);
    waiting.clear();
    cut();
  }

  private void cut() {
    isCut = running.isPresent();
    running.ifPresent(Process::destroyForcibly);
  }

  @Override
  public synchronized void sound(Tone tone) {
    tones.ifPresent(it -> it.sound(tone));
  }

  @Override
  public void close() {
    synchronized (this) {
      isClosing = true;
      hush();
      notifyAll();
      tones.ifPresent(Loudspeaker::close);
    }
    try {
      thread.join(2_000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    try {
      Optional<Phrase> phrase = nextPhrase();
      while (phrase.isPresent()) {
        Optional<Process> process = launched(phrase.get());
        if (process.isPresent()) {
          int code = process.get().waitFor();
          finished(phrase.get(), code);
        }
        phrase = nextPhrase();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private synchronized Optional<Phrase> nextPhrase() throws InterruptedException {
    while (waiting.isEmpty() && !isClosing) {
      wait();
    }
    while (waiting.size() > 1) {
      waiting.remove().end();
    }
    return Optional.ofNullable(waiting.poll());
  }

  private synchronized Optional<Process> launched(Phrase phrase) {
    try {
      Process process =
          new ProcessBuilder(argumentsFor(phrase.text()))
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      process.getOutputStream().close();
      running = Optional.of(process);
      isCut = false;
      phrase.begin();
      return running;
    } catch (IOException e) {
      down(MISSING);
      phrase.end();
      return Optional.empty();
    }
  }

  private synchronized void finished(Phrase phrase, int code) {
    running = Optional.empty();
    if (code != 0 && !isCut) {
      down("cannot speak; check its command in the settings.");
    } else if (code == 0 && isDown) {
      up();
    }
    phrase.end();
  }

  private List<String> argumentsFor(String text) {
    // a phrase that begins with a dash would be taken for an option
    String safe = text.startsWith("-") ? " " + text : text;
    return command.stream().map(argument -> argument.replace(PLACE, safe)).toList();
  }

  private boolean isInstalled() {
    String folders = System.getenv().getOrDefault("PATH", "");
    return Arrays.stream(folders.split(File.pathSeparator))
            .flatMap(folder -> Stream.of("", ".exe").map(end -> new File(folder, program() + end)))
            .anyMatch(File::canExecute)
        || new File(program()).canExecute();
  }

  private String program() {
    return command.get(0);
  }

  private void up() {
    isDown = false;
    sink.post(new Event.PartUp(clock.now(), Part.VOICE, program()));
  }

  /** Says it once, however often it is tried. */
  private void down(String what) {
    if (isDown) {
      return;
    }
    isDown = true;
    sink.post(
        new Event.PartDown(clock.now(), Part.VOICE, "The voice program " + program() + " " + what));
  }
}
