package org.calamus.boot;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.calamus.adapter.files.UtteranceLists;
import org.calamus.adapter.vosk.ModelException;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.adapter.vosk.VoskRecogniser;
import org.calamus.core.dialogue.Circumstances;
import org.calamus.core.dialogue.Dialogue;
import org.calamus.core.record.FieldId;
import org.calamus.port.KeptUtterances;
import org.calamus.port.KeptUtterances.Kept;
import org.calamus.port.KeptUtterances.KeptException;
import org.calamus.port.KeptUtterances.Line;
import org.calamus.port.Recogniser;

/** Hears kept utterances and recordings anew, and says what has changed. */
final class ReplayCommand {

  private static final String SOUND = ".wav";

  private final Options options;
  private final ReplayOptions replay;
  private final KeptUtterances lists = new UtteranceLists();

  ReplayCommand(Options options, ReplayOptions replay) {
    this.options = options;
    this.replay = replay;
  }

  /** Something to replay: a line of a list, or a recording and what it meets. */
  private record Item(Optional<Line> line, Path recording, Optional<Circumstances> met) {

    static Item of(Line line) {
      return new Item(Optional.of(line), Path.of(""), Optional.empty());
    }

    static Item of(Path recording, Circumstances met) {
      return new Item(Optional.empty(), recording, Optional.of(met));
    }
  }

  int run() {
    Folders folders = options.folders();
    Station station = Station.read(folders, UnaryOperator.identity());
    List<Item> items = new ArrayList<>();
    for (Path file : replay.files()) {
      items.addAll(items(file, station));
    }
    ReplayReport report = new ReplayReport(System.out);
    try (ModelFolder model = SpeechModel.open(folders, options.model(), station.vocabulary());
        Recogniser recogniser = recogniser(folders, model)) {
      Replay today =
          new Replay(recogniser, new Dialogue(station.setup()).accounts(), report, Instant::now);
      items.forEach(item -> play(today, item));
    }
    return report.end();
  }

  private static void play(Replay today, Item item) {
    item.line().ifPresent(today::line);
    item.met().ifPresent(met -> today.recording(item.recording(), met));
  }

  private static Recogniser recogniser(Folders folders, ModelFolder model) {
    try {
      return new VoskRecogniser(
          model.path(),
          VoskEars.Settings.usual().framesOf(model.frameMillis()).loggingTo(folders.log()));
    } catch (ModelException e) {
      throw new Halt(ExitCode.MISSING, e.getMessage(), e);
    } catch (UnsatisfiedLinkError | NoClassDefFoundError e) {
      throw new Halt(
          ExitCode.MISSING, "There is no speech recogniser for this kind of computer.", e);
    }
  }

  private List<Item> items(Path file, Station station) {
    if (!Files.exists(file)) {
      throw new Halt(ExitCode.WRONG_USE, "There is no " + file + "; check its name.", null);
    }
    Path list = Files.isDirectory(file) ? file.resolve(UtteranceLists.NAME) : file;
    if (!isSound(file)) {
      return lines(list).stream().map(Item::of).toList();
    }
    Path beside = file.toAbsolutePath().resolveSibling(UtteranceLists.NAME);
    Optional<FieldId> field = replay.field(station.form());
    if (field.isPresent()) {
      Map<FieldId, String> values = Map.of(FieldId.KIND, replay.kind().code());
      return List.of(Item.of(file, Circumstances.asking(field.get(), values)));
    }
    List<Item> kept =
        Files.exists(beside)
            ? lines(beside).stream().filter(l -> isOf(l, file)).map(Item::of).toList()
            : List.of();
    if (kept.isEmpty()) {
      throw new Halt(
          ExitCode.WRONG_USE,
          file + " stands in no list of utterances: say what was asked, as --field wing.",
          null);
    }
    return kept;
  }

  private List<Line> lines(Path list) {
    try {
      return lists.read(list);
    } catch (KeptException e) {
      throw new Halt(ExitCode.WRONG_USE, e.getMessage(), e);
    }
  }

  private static boolean isSound(Path file) {
    return Files.isRegularFile(file)
        && file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(SOUND);
  }

  private static boolean isOf(Line line, Path wav) {
    return line instanceof Kept kept && kept.wav().getFileName().equals(wav.getFileName());
  }
}
