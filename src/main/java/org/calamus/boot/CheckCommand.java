package org.calamus.boot;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;
import org.calamus.adapter.microphone.MicrophoneSource;
import org.calamus.adapter.serial.SerialInstruments;
import org.calamus.adapter.sqlite.SqliteRecordStore;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.port.AudioSource;
import org.calamus.port.Clock;
import org.calamus.port.RecordStore;
import org.calamus.port.StationSettings.InstrumentAt;
import org.calamus.port.Voice;

/** Says what was found, a line each, and changes nothing but the cache. */
final class CheckCommand {

  private static final Duration LISTENING = Duration.ofSeconds(3);
  private static final Duration ANSWER = Duration.ofSeconds(3);

  /** As the records' line counts them; two numbers for one disk made readers wonder. */
  private static final long MEGABYTE = 1000L * 1000;

  private static final long ENOUGH_MEGABYTES = 200;

  private final Options options;
  private final Clock clock = Instant::now;
  private final PrintStream out = System.out;
  private int exitCode = ExitCode.DONE;

  CheckCommand(Options options) {
    this.options = options;
  }

  int run() throws InterruptedException {
    Folders folders = options.folders();
    Station station = Station.read(folders, UnaryOperator.identity());
    good(
        "words",
        station.vocabulary().words().size()
            + " words, "
            + station.reference().species().species().size()
            + " species");
    SpeechModel.soundAlikes(station, form -> true).forEach(this::note);
    model(folders, station);
    microphone(station);
    speaker(station);
    ports(station);
    database(folders);
    disk(folders);
    return exitCode;
  }

  private void good(String part, String what) {
    out.println(String.join(" ", "ok  ", part + ":", what));
  }

  /** What the user should know, though nothing is wrong. */
  private void note(String what) {
    out.println("note words: " + what);
  }

  private void bad(String part, String what, int code) {
    for (String line : what.lines().toList()) {
      out.println(String.join(" ", "BAD ", part + ":", line));
    }
    exitCode = exitCode == ExitCode.FAILURE ? exitCode : code;
  }

  private void model(Folders folders, Station station) {
    Instant start = clock.now();
    try (ModelFolder model = SpeechModel.open(folders, options.model(), station.vocabulary())) {
      long millis = Duration.between(start, clock.now()).toMillis();
      good("model", model.path() + ", ready in " + millis + " ms, has every word");
    } catch (Halt e) {
      bad("model", e.getMessage(), ExitCode.MISSING);
    }
  }

  private void microphone(Station station) {
    Optional<String> name = station.settings().microphone();
    try (MicrophoneSource source =
        name.map(MicrophoneSource::new).orElseGet(MicrophoneSource::new)) {
      source.open();
      Loudness loudness = listen(source);
      if (loudness.lost().isPresent()) {
        bad("microphone", loudness.lost().get(), ExitCode.MISSING);
      } else if (loudness.peak() == 0) {
        bad(
            "microphone",
            source.name() + " is open but silent: unmute it, or choose another.",
            ExitCode.MISSING);
      } else {
        good("microphone", source.name() + ", " + loudness.words());
      }
    } catch (AudioSource.AudioException e) {
      bad("microphone", e.getMessage(), ExitCode.MISSING);
    }
  }

  private record Loudness(int peak, double meanSquare, Optional<String> lost) {
    String words() {
      return String.format(
          Locale.ROOT,
          "peak %.0f dB, mean %.0f dB of full scale in three seconds",
          decibels(peak),
          decibels(Math.sqrt(meanSquare)));
    }

    private static double decibels(double amplitude) {
      return 20 * Math.log10(Math.max(amplitude, 1) / Short.MAX_VALUE);
    }
  }

  private static Loudness listen(AudioSource source) {
    long wanted = LISTENING.toSeconds() * AudioSource.RATE;
    long heard = 0;
    int peak = 0;
    double squares = 0;
    while (heard < wanted) {
      AudioSource.Read read = source.read();
      if (read instanceof AudioSource.Lost lost) {
        return new Loudness(peak, 0, Optional.of(lost.sentence()));
      }
      if (!(read instanceof AudioSource.Block block)) {
        break;
      }
      for (short sample : block.samples()) {
        peak = Math.max(peak, Math.abs(sample));
        squares += (double) sample * sample;
      }
      heard += block.samples().length;
    }
    return new Loudness(peak, squares / Math.max(1, heard), Optional.empty());
  }

  private void speaker(Station station) throws InterruptedException {
    BlockingQueue<Event> events = new LinkedBlockingQueue<>();
    try (Voice voice = Voices.of(station.settings(), clock)) {
      voice.start(events::add);
      report(Part.VOICE, "speaker", events, ANSWER);
    }
  }

  /** Waits for what a part says of itself. */
  private void report(Part part, String name, BlockingQueue<Event> events, Duration limit)
      throws InterruptedException {
    Instant until = clock.now().plus(limit);
    while (clock.now().isBefore(until)) {
      Event event = events.poll(100, TimeUnit.MILLISECONDS);
      if (event instanceof Event.PartUp up && up.part() == part) {
        good(name, up.name());
        return;
      }
      if (event instanceof Event.PartDown down && down.part() == part) {
        bad(name, down.sentence(), ExitCode.MISSING);
        return;
      }
    }
    bad(name, "did not say within " + limit.toSeconds() + " s whether it works.", ExitCode.MISSING);
  }

  private void ports(Station station) throws InterruptedException {
    List<String> ports = SerialInstruments.ports();
    good("ports", ports.isEmpty() ? "none that the system names" : String.join("; ", ports));
    for (InstrumentAt instrument : station.settings().instruments()) {
      answers(station, instrument);
    }
  }

  /** Whether an instrument sends something that its description understands. */
  private void answers(Station station, InstrumentAt instrument) throws InterruptedException {
    String name = "instrument " + instrument.device() + " at " + instrument.port();
    SerialInstruments.Connection connection =
        new SerialInstruments.Connection(
            instrument.port(), station.devices().get(instrument.device()));
    BlockingQueue<Event> events = new LinkedBlockingQueue<>();
    Instant until = clock.now().plus(ANSWER);
    try (SerialInstruments serial = new SerialInstruments(List.of(connection), clock)) {
      serial.start(events::add);
      while (clock.now().isBefore(until)) {
        Event event = events.poll(100, TimeUnit.MILLISECONDS);
        if (event instanceof Event.ReadingArrived arrived) {
          good(name, "answers: " + arrived.reading().raw());
          return;
        }
        if (event instanceof Event.PartDown down) {
          bad(name, down.sentence(), ExitCode.MISSING);
          return;
        }
      }
    }
    bad(
        name,
        "the port opens, but nothing came that the description understands: switch the instrument"
            + " on, let it send, and compare baud and format with its manual.",
        ExitCode.MISSING);
  }

  private void database(Folders folders) {
    try {
      good("records", SqliteRecordStore.health(folders.data(), folders.natives()));
    } catch (RecordStore.StoreException e) {
      bad("records", e.getMessage(), ExitCode.FAILURE);
    }
  }

  private void disk(Folders folders) {
    Path existing = folders.data().toAbsolutePath();
    while (!Files.exists(existing) && existing.getParent() != null) {
      existing = existing.getParent();
    }
    try {
      FileStore store = Files.getFileStore(existing);
      long megabytes = store.getUsableSpace() / MEGABYTE;
      if (megabytes < ENOUGH_MEGABYTES) {
        bad(
            "disk",
            megabytes + " MB free at " + existing + ": make room, 200 MB at least.",
            ExitCode.MISSING);
      } else {
        good("disk", megabytes + " MB free at " + existing);
      }
    } catch (IOException e) {
      bad("disk", "the free space of " + existing + " cannot be read.", ExitCode.FAILURE);
    }
  }
}
