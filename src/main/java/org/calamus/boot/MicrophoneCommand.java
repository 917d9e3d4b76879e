package org.calamus.boot;

import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.UnaryOperator;
import org.calamus.adapter.files.MicrophoneCheckFile;
import org.calamus.adapter.microphone.MeteredSource;
import org.calamus.adapter.microphone.MicrophoneSource;
import org.calamus.adapter.microphone.WavSource;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.core.hearing.Levels;
import org.calamus.core.hearing.MicrophoneCheck;
import org.calamus.core.hearing.MicrophoneVerdict;
import org.calamus.core.hearing.SelfTest;
import org.calamus.core.speech.Grammar;
import org.calamus.port.AudioSource;
import org.calamus.port.Clock;
import org.calamus.port.Ears;
import org.calamus.port.MicrophoneChecks;

/**
 * Tries the microphone at its place: its noise, then words that are shown one after the other. The
 * verdict on a microphone is remembered; that on a recording is not.
 */
final class MicrophoneCommand {

  private final Options options;
  private final Optional<Path> recording;
  private final Clock clock;
  private final PrintStream out;

  MicrophoneCommand(Options options, Optional<Path> recording) {
    this(options, recording, Instant::now, System.out);
  }

  MicrophoneCommand(Options options, Optional<Path> recording, Clock clock, PrintStream out) {
    this.options = options;
    this.recording = recording;
    this.clock = clock;
    this.out = out;
  }

  int run() throws InterruptedException {
    Folders folders = options.folders();
    Station station = Station.read(folders, UnaryOperator.identity());
    MeteredSource sound = new MeteredSource(source(station));
    AtomicReference<Optional<Ears>> ears = new AtomicReference<>(Optional.empty());
    MicrophoneTrial trial =
        new MicrophoneTrial(
            new SelfTest(station.form(), station.vocabulary()),
            out,
            recording.isPresent()
                ? MicrophoneTrial.AtEnd.NOT_HEARD
                : MicrophoneTrial.AtEnd.NO_VERDICT,
            sound::speechBegins,
            grammar -> listen(ears.get(), grammar));
    try (ModelFolder model = SpeechModel.open(folders, options.model(), station.vocabulary())) {
      out.println("Listening to the place: say nothing for three seconds.");
      VoskEars.Settings how =
          VoskEars.Settings.usual()
              .framesOf(model.frameMillis())
              .loggingTo(folders.log())
              .learning(false); // it judges the microphone, by what anybody's voice would find
      try (Ears made = new VoskEars(model.path(), sound, clock, how)) {
        ears.set(Optional.of(made));
        made.start(trial::hear);
        trial.await();
      }
    }
    return verdict(trial, sound.levels(), new MicrophoneCheckFile(folders.data()));
  }

  private static void listen(Optional<Ears> ears, Grammar grammar) {
    ears.ifPresent(e -> e.listenFor(grammar));
  }

  private AudioSource source(Station station) {
    if (recording.isPresent()) {
      return new WavSource(recording.get(), WavSource.Pace.FAST);
    }
    Optional<String> name = station.settings().microphone();
    return name.map(MicrophoneSource::new).orElseGet(MicrophoneSource::new);
  }

  /** Says the verdict and remembers it; gives the exit code. */
  int verdict(MicrophoneTrial trial, Levels levels, MicrophoneChecks checks) {
    if (trial.trouble().isPresent()) {
      out.println(trial.trouble().get());
      return ExitCode.MISSING;
    }
    MicrophoneVerdict verdict = MicrophoneVerdict.of(levels, trial.score());
    out.println(verdict.sentence());
    verdict.advice().forEach(out::println);
    if (recording.isEmpty()) {
      keep(trial.microphone(), verdict, checks);
    }
    return verdict.grade() == MicrophoneVerdict.Grade.NOT_USABLE ? ExitCode.FAILURE : ExitCode.DONE;
  }

  private void keep(String microphone, MicrophoneVerdict verdict, MicrophoneChecks checks) {
    try {
      checks.keep(
          new MicrophoneCheck(microphone, clock.now(), verdict.grade(), verdict.sentence()));
    } catch (MicrophoneChecks.KeepException e) {
      // the verdict itself has been said; it stands
      out.println(e.getMessage());
    }
  }
}
