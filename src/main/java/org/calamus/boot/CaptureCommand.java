package org.calamus.boot;

import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.calamus.adapter.files.MemoFiles;
import org.calamus.adapter.files.MicrophoneCheckFile;
import org.calamus.adapter.files.UtteranceFiles;
import org.calamus.adapter.files.VoicesFile;
import org.calamus.adapter.lanterna.LanternaScreen;
import org.calamus.adapter.microphone.MicrophoneSource;
import org.calamus.adapter.microphone.WavSource;
import org.calamus.adapter.plain.PlainScreen;
import org.calamus.adapter.scripted.DeafEars;
import org.calamus.adapter.scripted.QueuedAudio;
import org.calamus.adapter.serial.SerialInstruments;
import org.calamus.adapter.speaker.SilentVoice;
import org.calamus.adapter.sqlite.SqliteRecordStore;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.core.dialogue.Setup;
import org.calamus.engine.Ports;
import org.calamus.port.AudioSource;
import org.calamus.port.Clock;
import org.calamus.port.Ears;
import org.calamus.port.KeepUtterances;
import org.calamus.port.RecordStore;
import org.calamus.port.Screen;
import org.calamus.port.SessionWatcher;
import org.calamus.port.StationSettings;
import org.calamus.port.StationSettings.InstrumentAt;
import org.calamus.port.TimbreMemory;
import org.calamus.port.UtteranceKeeper;
import org.calamus.port.Voice;

/** The live console. */
final class CaptureCommand {

  private final Options options;
  private final CaptureOptions capture;
  private final Clock clock = Instant::now;
  private final AtomicReference<Optional<ModelFolder>> model =
      new AtomicReference<>(Optional.empty());

  CaptureCommand(Options options, CaptureOptions capture) {
    this.options = options;
    this.capture = capture;
  }

  int run() throws InterruptedException {
    Folders folders = options.folders();
    Station station = Station.read(folders, written -> connected(capture.over(written)));
    Optional<AudioSource> sound = sound(station);
    if (!options.isPlain()) {
      Log.instead(folders.log());
    }
    UtteranceKeeper keeper = keeper(folders, station);
    Ears ears = ears(folders, station, sound, keeper);
    try (RecordStore store = new SqliteRecordStore(folders.data(), folders.natives())) {
      Ports ports =
          new Ports(
              ears,
              voice(station),
              store,
              new MemoFiles(folders.data()),
              screen(station, clock),
              clock,
              watcher(station),
              keeper);
      new Session(setup(folders, station), ports, serial(station)).run();
    } finally {
      model.get().ifPresent(ModelFolder::close);
    }
    return ExitCode.DONE;
  }

  /**
   * With the instruments of the command line; where there is one, those of the file are left out.
   */
  private StationSettings connected(StationSettings settings) {
    List<InstrumentAt> named = instruments();
    return named.isEmpty() ? settings : settings.withInstruments(named);
  }

  /** Only of a live microphone is it told whether it was checked. */
  private Setup setup(Folders folders, Station station) {
    boolean isLive = !capture.isKeypadOnly() && capture.recordings().isEmpty();
    return isLive
        ? station.setup().hearing(new MicrophoneCheckFile(folders.data()).past())
        : station.setup();
  }

  private List<InstrumentAt> instruments() {
    List<InstrumentAt> found = new ArrayList<>();
    for (String text : capture.instruments()) {
      int at = text.lastIndexOf('=');
      if (at < 1 || at == text.length() - 1) {
        throw new Halt(
            ExitCode.WRONG_USE,
            "--scale " + text + " is not PORT=DEVICE, such as /dev/ttyUSB0=two-letter-header.",
            null);
      }
      found.add(new InstrumentAt(text.substring(0, at), text.substring(at + 1)));
    }
    return found;
  }

  /** The sound to listen to; recordings are opened once beforehand, to refuse a bad one at once. */
  private Optional<AudioSource> sound(Station station) {
    if (capture.isKeypadOnly()) {
      return Optional.empty();
    }
    if (capture.recordings().isEmpty()) {
      return Optional.of(
          station
              .settings()
              .microphone()
              .map(MicrophoneSource::new)
              .orElseGet(MicrophoneSource::new));
    }
    QueuedAudio room = new QueuedAudio(QueuedAudio.Pace.AS_SPOKEN);
    for (Path file : capture.recordings()) {
      try (WavSource probe = new WavSource(file, WavSource.Pace.FAST)) {
        probe.open();
        probe.warning().ifPresent(System.err::println);
      } catch (AudioSource.AudioException e) {
        throw new Halt(ExitCode.WRONG_USE, e.getMessage(), e);
      }
      room.play(new WavSource(file, WavSource.Pace.LIVE));
    }
    return Optional.of(room);
  }

  /**
   * The ears, made while the keypad works already; where there is no model the console goes on by
   * keypad and says why. A model that the user named is looked at beforehand: it was asked for.
   */
  private Ears ears(
      Folders folders, Station station, Optional<AudioSource> sound, UtteranceKeeper keeper) {
    if (sound.isEmpty()) {
      return new DeafEars(clock);
    }
    if (options.model().isPresent()) {
      SpeechModel.open(folders, options.model(), station.vocabulary()).close();
    }
    return new LateEars(
        () -> {
          NativeLibraries.keepRecogniser(folders.cache().resolve("recogniser"));
          VoskEars.loadAhead(Optional.of(folders.log()));
          ModelFolder folder = SpeechModel.open(folders, options.model(), station.vocabulary());
          model.set(Optional.of(folder));
          warnOfOwnWords(folders, station);
          boolean isForgotten =
              capture.isVoiceForgotten() || station.settings().keeping().isVoiceForgotten();
          return new VoskEars(
              folder.path(),
              sound.get(),
              clock,
              settings(folders, folder).learning(!isForgotten),
              keeper,
              memory(folders, station));
        },
        clock);
  }

  /** What is learnt of a voice in recordings says nothing of the bander's through a microphone. */
  private TimbreMemory memory(Folders folders, Station station) {
    return capture.recordings().isEmpty()
        ? new VoicesFile(
            folders.data(),
            station.settings().bander(),
            sentence -> Log.add(List.of(sentence), folders.log()))
        : TimbreMemory.none();
  }

  /** Logs which of the user's own forms sound like others; nobody waits for it. */
  private static void warnOfOwnWords(Folders folders, Station station) {
    String own = folders.words().toString();
    boolean hasOwn = station.vocabulary().forms().stream().anyMatch(f -> f.where().startsWith(own));
    if (hasOwn) {
      Log.add(SpeechModel.soundAlikes(station, f -> f.where().startsWith(own)), folders.log());
    }
  }

  private static VoskEars.Settings settings(Folders folders, ModelFolder folder) {
    return VoskEars.Settings.usual().framesOf(folder.frameMillis()).loggingTo(folders.log());
  }

  /** Keeps what is said only where the station or the command line asks for it. */
  private UtteranceKeeper keeper(Folders folders, Station station) {
    KeepUtterances wanted = station.settings().keeping();
    boolean isListening = !capture.isKeypadOnly();
    return isListening && (wanted.isOn() || capture.isKeeping())
        ? new UtteranceFiles(folders.data(), wanted.mostMegabytes(), clock)
        : UtteranceKeeper.none();
  }

  private Voice voice(Station station) {
    if (capture.isQuiet()) {
      return new SilentVoice(clock);
    }
    StationSettings settings = station.settings();
    return Voices.of(settings.sounding(capture.tones(settings.tones())), clock);
  }

  private SessionWatcher watcher(Station station) {
    return options.isPlain()
        ? new HeardLines(System.out, station.settings().zone())
        : (event, effects, view) -> {};
  }

  private Screen screen(Station station, Clock time) {
    PrintStream out = System.out;
    return options.isPlain()
        ? new PlainScreen(time, station.settings().zone(), out, System.in, PlainScreen.AtEnd.STOP)
        : new LanternaScreen(time, System.getenv());
  }

  private SerialInstruments serial(Station station) {
    return new SerialInstruments(
        station.settings().instruments().stream()
            .map(i -> new SerialInstruments.Connection(i.port(), station.devices().get(i.device())))
            .toList(),
        clock);
  }
}
