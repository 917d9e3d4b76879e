package org.calamus.boot;

import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.function.UnaryOperator;
import org.calamus.adapter.microphone.MeteredSource;
import org.calamus.adapter.microphone.MicrophoneSource;
import org.calamus.adapter.microphone.WavSource;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.hearing.Answer;
import org.calamus.core.hearing.MicrophoneVerdict;
import org.calamus.core.hearing.Probe;
import org.calamus.core.hearing.SelfTest;
import org.calamus.port.AudioSource;
import org.calamus.port.Clock;

/**
 * Tries the microphone at its place: its noise, then words that are shown one after the other. Goes
 * on by what the ears post, on their thread, so that a recording is heard like a bander.
 */
final class MicrophoneCommand {

  /** The ears post the level five times a second of sound. */
  private static final int PLACE_LEVELS = 15;

  private static final int ANSWER_LEVELS = 50;

  private final Options options;
  private final Optional<Path> recording;
  private final Clock clock = Instant::now;
  private final PrintStream out = System.out;
  private final CountDownLatch done = new CountDownLatch(1);
  private final List<Probe> missed = new ArrayList<>();
  private SelfTest test;
  private MeteredSource sound;
  private VoskEars ears;
  private List<Probe> left = new ArrayList<>();
  private int asked;
  private int levels;
  private boolean isAsking;
  private boolean isRepeat;
  private Optional<String> trouble = Optional.empty();

  MicrophoneCommand(Options options, Optional<Path> recording) {
    this.options = options;
    this.recording = recording;
  }

  int run() throws InterruptedException {
    Folders folders = options.folders();
    Station station = Station.read(folders, UnaryOperator.identity());
    test = new SelfTest(station.form(), station.vocabulary());
    left = new ArrayList<>(test.probes());
    asked = left.size();
    sound = new MeteredSource(source(station));
    try (ModelFolder model = SpeechModel.open(folders, options.model(), station.vocabulary())) {
      out.println("Listening to the place: say nothing for three seconds.");
      ears =
          new VoskEars(
              model.path(),
              sound,
              clock,
              VoskEars.Settings.usual().framesOf(model.frameMillis()).loggingTo(folders.log()));
      ears.start(this::hear);
      done.await();
      ears.close();
    }
    return verdict();
  }

  private AudioSource source(Station station) {
    if (recording.isPresent()) {
      return new WavSource(recording.get(), WavSource.Pace.FAST);
    }
    Optional<String> name = station.settings().microphone();
    return name.map(MicrophoneSource::new).orElseGet(MicrophoneSource::new);
  }

  private synchronized void hear(Event event) {
    if (done.getCount() == 0) {
      return;
    }
    if (event instanceof Event.PartDown down && down.part() == Part.EARS) {
      stopped(down.sentence());
      done.countDown();
    } else if (event instanceof Event.LevelMeasured) {
      levels++;
      if (!isAsking && levels >= PLACE_LEVELS) {
        isAsking = true;
        sound.speechBegins();
        ask();
      } else if (isAsking && levels >= ANSWER_LEVELS) {
        take(new Answer.NotHeard());
      }
    } else if (event instanceof Event.Heard heard && isAsking) {
      take(test.answer(left.get(0), heard.utterance()));
    }
  }

  /** A recording that ends has answered nothing more; a microphone that fails has no verdict. */
  private void stopped(String sentence) {
    if (recording.isPresent() && isAsking) {
      missed.addAll(left);
    } else {
      trouble = Optional.of(sentence);
    }
  }

  private void ask() {
    levels = 0;
    ears.listenFor(test.grammar(left.get(0)));
    out.println("Say: " + left.get(0).spoken());
  }

  private void take(Answer answer) {
    Probe probe = left.remove(0);
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

  private int verdict() {
    if (trouble.isPresent()) {
      out.println(trouble.get());
      return ExitCode.MISSING;
    }
    MicrophoneVerdict verdict = MicrophoneVerdict.of(sound.levels(), asked - missed.size(), asked);
    out.println(verdict.sentence());
    verdict.advice().forEach(out::println);
    return verdict.grade() == MicrophoneVerdict.Grade.NOT_USABLE ? ExitCode.FAILURE : ExitCode.DONE;
  }
}
