package org.calamus.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.calamus.adapter.sqlite.SqliteRecordStore;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.core.dialogue.Effect;
import org.calamus.core.record.CaptureRecord;
import org.calamus.support.Talk;

/** The parts of the measurement that want a process of their own. */
final class Child {

  private Child() {}

  /**
   * Entry point.
   *
   * @param args what to measure and where: {@code build FOLDER}, {@code hear FOLDER}, {@code
   *     history FOLDER}, {@code whole FOLDER} or {@code save FOLDER COUNT}
   */
  public static void main(String[] args) throws IOException, InterruptedException {
    Path folder = Path.of(args[1]);
    switch (args[0]) {
      case "build" -> System.out.println("took " + build(folder));
      case "hear" -> hear(folder);
      case "history" -> Seasons.history(folder);
      case "whole" -> Seasons.whole(folder);
      default -> save(folder, Integer.parseInt(args[2]));
    }
    System.exit(0); // the recogniser's library keeps threads
  }

  /** Runs this class in a process of its own and gives the numbers it prints behind "took". */
  static List<Double> run(List<String> before, String... args)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(before);
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), Child.class.getName()));
    command.addAll(List.of(args));
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    process.waitFor();
    List<Double> numbers = new ArrayList<>();
    for (String line : out.lines().filter(l -> l.startsWith("took ")).toList()) {
      for (String number : line.substring(5).split(" ")) {
        numbers.add(Double.valueOf(number));
      }
    }
    return numbers;
  }

  /** Milliseconds for reading the tables and making the model. */
  private static double build(Path folder) {
    long began = System.nanoTime();
    ModelFolder model = Recognition.model(folder);
    double took = millisSince(began);
    model.close();
    return took;
  }

  /** Time and processor time by length of the sound, over the demonstration's recordings. */
  private static void hear(Path folder) throws IOException, InterruptedException {
    try (ModelFolder model = Recognition.model(folder)) {
      List<Room.Play> plays = new ArrayList<>();
      for (DemoUtterances.Recording recording : DemoUtterances.all()) {
        plays.add(new Room.Play(recording.wav(), recording.grammar()));
      }
      long began = System.nanoTime();
      long used = processorNanos();
      Room.Result result = Room.hear(model.path(), VoskEars.Settings.usual(), plays);
      System.out.println(
          "took "
              + millisSince(began) / 1000 / result.seconds()
              + " "
              + (processorNanos() - used) / 1e9 / result.seconds());
    }
  }

  private static long processorNanos() {
    return ProcessHandle.current().info().totalCpuDuration().orElseThrow().toNanos();
  }

  /** Milliseconds for journalling a value and for saving a record, each of so many birds. */
  private static void save(Path folder, int count) throws IOException {
    Files.createDirectories(folder);
    List<Effect> effects =
        Talk.atFenwick()
            .say("two eight four one five five six zero one")
            .say("white breasted nuthatch")
            .say("second year")
            .say("male")
            .say("nine two")
            .say("two two point three")
            .say("save record")
            .effects();
    try (SqliteRecordStore store = new SqliteRecordStore(folder, folder.resolve("natives"))) {
      for (int i = 0; i < count; i++) {
        long id = store.nextRecordId();
        for (Effect effect : effects) {
          if (effect instanceof Effect.JournalValue value) {
            long began = System.nanoTime();
            store.journal(numbered(value.record(), id), value.field(), value.entry());
            System.out.println("took 0 " + millisSince(began));
          } else if (effect instanceof Effect.SaveRecord save) {
            long began = System.nanoTime();
            store.save(numbered(save.record(), id), save.record().capturedAt());
            System.out.println("took 1 " + millisSince(began));
          }
        }
      }
    }
  }

  private static CaptureRecord numbered(CaptureRecord record, long id) {
    return new CaptureRecord(
        id, record.capturedAt(), record.place(), record.bander(), record.entries());
  }

  private static double millisSince(long began) {
    return (System.nanoTime() - began) / 1e6;
  }
}
