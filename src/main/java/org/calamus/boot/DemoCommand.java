package org.calamus.boot;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.Month;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.stream.Stream;
import org.calamus.adapter.files.FormFile;
import org.calamus.adapter.files.MemoFiles;
import org.calamus.adapter.lanterna.LanternaScreen;
import org.calamus.adapter.microphone.WavSource;
import org.calamus.adapter.plain.PlainScreen;
import org.calamus.adapter.scripted.PlayedInstruments;
import org.calamus.adapter.scripted.QueuedAudio;
import org.calamus.adapter.speaker.FreeTtsVoice;
import org.calamus.adapter.speaker.SilentVoice;
import org.calamus.adapter.sqlite.SqliteRecordStore;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.core.record.CaptureRecord;
import org.calamus.engine.Ports;
import org.calamus.port.Clock;
import org.calamus.port.RecordStore;
import org.calamus.port.Screen;
import org.calamus.port.SessionWatcher;
import org.calamus.port.StationSettings;
import org.calamus.port.StationSettings.InstrumentAt;
import org.calamus.port.Voice;

/**
 * The demonstration: an invented evening at Fenwick Marsh, from recordings, through the same path
 * as a microphone and a port. Its records go to a folder of their own, which is removed at the end
 * where the user gave none.
 */
final class DemoCommand {

  private static final String SCALE = "two-letter-header";
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private final Options options;
  private final boolean isFast;
  private final Clock clock = inJune();

  /**
   * An evening in June, from the start of the demonstration on: its birds and their ages belong to
   * that season, whenever it is run.
   */
  private static Clock inJune() {
    Instant began = Instant.now();
    Instant evening =
        LocalDateTime.of(2026, Month.JUNE, 20, 18, 0).atZone(ZoneId.systemDefault()).toInstant();
    return () -> evening.plus(Duration.between(began, Instant.now()));
  }

  DemoCommand(Options options, boolean isFast) {
    this.options = options;
    this.isFast = isFast;
  }

  int run() throws IOException, InterruptedException {
    Folders given = options.folders();
    if (given.givenData().isPresent()) {
      return run(given);
    }
    Path folder = Files.createTempDirectory("calamus-demo-");
    try {
      return run(new Folders(Optional.of(folder), Optional.of(given.cache())));
    } finally {
      remove(folder);
    }
  }

  private int run(Folders folders) throws InterruptedException {
    Station station = Station.of(fenwickMarsh(), folders, FormFile.ofDemonstration());
    PrintStream out = System.out;
    QueuedAudio room =
        new QueuedAudio(isFast ? QueuedAudio.Pace.AS_FAST_AS_READ : QueuedAudio.Pace.AS_SPOKEN);
    PlayedInstruments scale =
        new PlayedInstruments(
            station.devices().get(SCALE),
            clock,
            isFast ? PlayedInstruments.Pace.AT_ONCE : PlayedInstruments.Pace.REAL_TIME);
    WavSource.Pace pace = isFast ? WavSource.Pace.FAST : WavSource.Pace.LIVE;
    DemoPerson person = new DemoPerson(DemoScript.read("evening.script"), room, scale, pace);
    if (!isPlain()) {
      Log.instead(folders.log());
    }
    try (ModelFolder model = SpeechModel.open(folders, options.model(), station.vocabulary());
        RecordStore store = new SqliteRecordStore(folders.data(), folders.natives())) {
      int before = store.saved().size();
      VoskEars ears = new VoskEars(model.path(), room, clock, settings(folders, model));
      Ports ports =
          new Ports(
              ears,
              voice(),
              store,
              new MemoFiles(folders.data()),
              screen(station, out),
              clock,
              watcher(person, station));
      Optional<String> trouble = play(new Session(station.setup(), ports, scale), person);
      List<CaptureRecord> all = store.saved();
      report(out, station, all.subList(before, all.size()), person);
      trouble.ifPresent(out::println);
      return trouble.isEmpty() ? ExitCode.DONE : ExitCode.FAILURE;
    }
  }

  private static VoskEars.Settings settings(Folders folders, ModelFolder model) {
    return VoskEars.Settings.usual().framesOf(model.frameMillis()).loggingTo(folders.log());
  }

  private static StationSettings fenwickMarsh() {
    return new StationSettings(
        "Fenwick Marsh (invented)",
        "QX",
        ZoneId.systemDefault(),
        Optional.empty(),
        Optional.empty(),
        List.of(new InstrumentAt("recording", SCALE)));
  }

  /** Runs the session while the person talks on a thread of their own. */
  private static Optional<String> play(Session session, DemoPerson person)
      throws InterruptedException {
    FutureTask<Optional<String>> talk =
        new FutureTask<>(
            () -> {
              try {
                return person.play();
              } finally {
                session.stop();
              }
            });
    Thread thread = new Thread(talk, "person");
    thread.setDaemon(true);
    thread.start();
    session.run();
    if (!talk.isDone()) {
      return Optional.of("The demonstration was ended before its end.");
    }
    try {
      return talk.get();
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    }
  }

  private Voice voice() {
    return isFast ? new SilentVoice(clock) : new FreeTtsVoice(clock, FreeTtsVoice.Settings.usual());
  }

  private boolean isPlain() {
    return options.isPlain() || System.console() == null;
  }

  private SessionWatcher watcher(DemoPerson person, Station station) {
    if (!isPlain()) {
      return person;
    }
    HeardLines lines = new HeardLines(System.out, station.settings().zone());
    return (event, effects, view) -> {
      lines.stepped(event, effects, view);
      person.stepped(event, effects, view);
    };
  }

  private Screen screen(Station station, PrintStream out) {
    return isPlain()
        ? new PlainScreen(clock, station.settings().zone(), out)
        : new LanternaScreen(clock, System.getenv());
  }

  private void report(
      PrintStream out, Station station, List<CaptureRecord> saved, DemoPerson person) {
    out.println();
    out.println("Saved records (invented birds, " + station.settings().place() + "):");
    for (CaptureRecord record : saved) {
      out.println(
          TIME.format(record.capturedAt().atZone(station.settings().zone()))
              + "  "
              + station.setup().phrases().line(record)
              + "  by "
              + record.bander());
    }
    List<Duration> times = person.answerTimes();
    if (!isFast && !times.isEmpty()) {
      out.println(
          "From the end of speech to the start of the answer: median "
              + times.get(times.size() / 2).toMillis()
              + " ms, longest "
              + times.get(times.size() - 1).toMillis()
              + " ms, of "
              + times.size()
              + ".");
    }
  }

  private static void remove(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    }
  }
}
