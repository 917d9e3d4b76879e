package org.calamus.benchmark;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.calamus.support.JarProcess;
import org.calamus.support.ShortForm;

/**
 * Measures the finished jar against its budgets and prints a table; then how well it hears.
 *
 * <p>Run it with {@code mvn -Pbenchmark verify -DskipTests}; docs/benchmarks.md says what the
 * numbers mean.
 */
final class Benchmarks {

  private static final int RUNS = 3;
  private static final Path WORK = Path.of("target", "benchmark").toAbsolutePath();
  private static final Path MODEL = WORK.resolve("model");
  private static final Pattern ANSWERS = Pattern.compile("median (\\d+) ms, longest (\\d+) ms");
  private static final List<Path> SPEECH =
      List.of(
          Path.of("demo-data/speech/01-band.wav"),
          Path.of("demo-data/speech/17-bird.wav"),
          Path.of("demo-data/speech/04-sex.wav"),
          Path.of("demo-data/speech/18-wing.wav"),
          Path.of("demo-data/speech/06-correction.wav"));

  private final PrintStream out = System.out;

  private Benchmarks() {}

  /**
   * Entry point.
   *
   * @param args {@code quick} leaves the recognition out
   */
  public static void main(String[] args) throws IOException, InterruptedException {
    Files.createDirectories(WORK);
    Benchmarks benchmarks = new Benchmarks();
    benchmarks.table();
    if (!List.of(args).contains("quick")) {
      Recognition.measure(System.out);
    }
    System.exit(0); // the recogniser's library keeps threads
  }

  private void table() throws IOException, InterruptedException {
    out.printf(
        Locale.ROOT,
        "%d processors, Java %s, load %.1f before the first run%n%n",
        Runtime.getRuntime().availableProcessors(),
        System.getProperty("java.version"),
        java.lang.management.ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    out.printf(Locale.ROOT, "%-58s %10s %10s %8s%n", "measured", "median", "worst", "budget");
    building();
    starting();
    hearing();
    answering();
    memory();
    sizes();
    saving();
    remembering();
    out.println();
    Keystrokes.print(out);
    out.println();
    Redrawing.print(out);
  }

  private void building() throws IOException, InterruptedException {
    List<Double> seconds = new ArrayList<>();
    for (int i = 0; i < RUNS; i++) {
      Path empty = Files.createTempDirectory(WORK, "build");
      seconds.add(Child.run(List.of(), "build", empty.toString()).get(0) / 1000);
      remove(empty);
    }
    row("model and graph built, empty cache, new process, s", seconds, 2.0);
  }

  private void starting() throws IOException, InterruptedException {
    List<Double> first = new ArrayList<>();
    List<Double> later = new ArrayList<>();
    for (int i = 0; i < RUNS; i++) {
      Path fresh = Files.createTempDirectory(WORK, "start");
      first.add(secondsToListening(fresh));
      later.add(secondsToListening(fresh));
      remove(fresh);
    }
    row("very first start to listening, s", first, 0);
    row("later start to listening, s", later, 1.5);
  }

  /** From the start of the process until the ears are up and the first field is asked. */
  private static double secondsToListening(Path folder) throws IOException, InterruptedException {
    long began = System.nanoTime();
    try (JarProcess jar = capture(folder, SPEECH.subList(0, 1))) {
      jar.await("asked: Band number");
      jar.await("ears ok");
      double seconds = (System.nanoTime() - began) / 1e9;
      jar.kill();
      return seconds;
    }
  }

  private static JarProcess capture(Path folder, List<Path> recordings) throws IOException {
    ShortForm.into(folder.resolve("data"));
    List<String> arguments = new ArrayList<>(List.of("capture", "--plain", "--quiet"));
    arguments.addAll(List.of("--data", folder.resolve("data").toString()));
    arguments.addAll(List.of("--cache", folder.resolve("cache").toString()));
    for (Path recording : recordings) {
      arguments.addAll(List.of("--listen", recording.toString()));
    }
    return JarProcess.start(arguments.toArray(new String[0]));
  }

  private void hearing() throws IOException, InterruptedException {
    boolean pins = Files.isExecutable(Path.of("/usr/bin/taskset"));
    List<String> oneCore = pins ? List.of("taskset", "-c", "0") : List.of();
    List<Double> wall = new ArrayList<>();
    List<Double> processor = new ArrayList<>();
    for (int i = 0; i < RUNS; i++) {
      List<Double> factors = Child.run(oneCore, "hear", MODEL.toString());
      wall.add(factors.get(0));
      processor.add(factors.get(1));
    }
    row("time to hear / length of sound, " + (pins ? "one core" : "all cores"), wall, 0.15);
    row("processor time / length of sound", processor, 0.15);
  }

  private void answering() throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory(WORK, "demo");
    try (JarProcess demo =
        JarProcess.start(
            "demo",
            "--plain",
            "--data",
            folder.resolve("data").toString(),
            "--cache",
            folder.resolve("cache").toString())) {
      demo.closeInput();
      String line = demo.awaitFor("From the end of speech", 300);
      Matcher found = ANSWERS.matcher(line);
      if (!found.find()) {
        throw new IOException("no times in: " + line);
      }
      double median = Double.parseDouble(found.group(1)) / 1000;
      double longest = Double.parseDouble(found.group(2)) / 1000;
      print("end of speech to start of answer, paced demo, s", median, longest, 0.8);
    }
    remove(folder);
  }

  private void memory() throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory(WORK, "memory");
    List<Double> resident = new ArrayList<>();
    List<Double> peak = new ArrayList<>();
    for (int i = 0; i < 2; i++) {
      try (JarProcess jar = capture(folder, SPEECH)) {
        jar.await("taken: Wing chord 92 mm");
        String status = Files.readString(Path.of("/proc", "" + jar.pid(), "status"));
        resident.add(megabytes(status, "VmRSS"));
        peak.add(megabytes(status, "VmHWM"));
        jar.kill();
      }
      remove(folder.resolve("data"));
    }
    row("memory after five utterances, MB", resident, 400);
    row("memory at its peak, MB", peak, 400);
    remove(folder);
  }

  /** A line of a process's status in megabytes. */
  static double megabytes(String status, String name) {
    Matcher found = Pattern.compile(name + ":\\s+(\\d+) kB").matcher(status);
    return found.find() ? Double.parseDouble(found.group(1)) / 1024 : Double.NaN;
  }

  private void sizes() throws IOException {
    try (Stream<Path> all = Files.walk(MODEL)) {
      double bytes = all.filter(Files::isRegularFile).mapToLong(p -> p.toFile().length()).sum();
      print("model in the cache, MB", bytes / 1e6, bytes / 1e6, 0);
    }
    double jar = Files.size(JarProcess.jar()) / 1e6;
    print("jar, MB", jar, jar, 0);
  }

  private void saving() throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory(WORK, "save");
    List<Double> took = Child.run(List.of(), "save", folder.resolve("a").toString(), "40");
    for (int kind = 0; kind < 2; kind++) {
      List<Double> millis = new ArrayList<>();
      for (int i = 0; i < took.size(); i += 2) {
        if (took.get(i) == kind) {
          millis.add(took.get(i + 1));
        }
      }
      row(kind == 0 ? "a value into the journal, ms" : "a record saved, ms", millis, 0);
    }
    if (Files.isExecutable(Path.of("/usr/bin/strace"))) {
      double once = syncs(folder, 10) - syncs(folder, 5);
      print("waits for the disk a bird (six values and saving)", once / 5, once / 5, 0);
    } else {
      out.println("waits for the disk: strace is not on this machine");
    }
    remove(folder);
  }

  /** How often the system is asked to bring everything to the disk while so many birds are kept. */
  private static double syncs(Path folder, int birds) throws IOException, InterruptedException {
    Path trace = folder.resolve("trace" + birds);
    Child.run(
        List.of("strace", "-f", "-e", "trace=fsync,fdatasync", "-o", trace.toString()),
        "save",
        folder.resolve("b" + birds).toString(),
        "" + birds);
    try (Stream<String> lines = Files.lines(trace)) {
      return lines.filter(l -> l.contains("sync(") && !l.contains("resumed")).count();
    }
  }

  private void remembering() throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory(WORK, "seasons");
    Seasons.make(folder.resolve("data"));
    List<Double> seconds = new ArrayList<>();
    List<Double> held = new ArrayList<>();
    List<Double> saves = new ArrayList<>();
    for (int i = 0; i < RUNS; i++) {
      List<Double> took = Child.run(List.of(), "history", folder.resolve("data").toString());
      seconds.add(took.get(0));
      held.add(took.get(1));
      saves.addAll(took.subList(3, took.size()));
    }
    row("50,000 saved records read and indexed, s", seconds, 0);
    row("50,000 saved records in memory, MB", held, 60);
    row("one more among 50,000, ms", saves, 5);
    List<Double> starts = new ArrayList<>();
    for (int i = 0; i < RUNS; i++) {
      starts.add(secondsToListening(folder));
    }
    row("start to listening with 50,000 saved records, s", starts, 0);
    remove(folder);
  }

  private void row(String name, List<Double> values, double budget) {
    List<Double> sorted = values.stream().sorted().toList();
    print(name, sorted.get(sorted.size() / 2), sorted.get(sorted.size() - 1), budget);
  }

  private void print(String name, double median, double worst, double budget) {
    String wanted = budget == 0 ? "" : String.format(Locale.ROOT, "%.2f", budget);
    String missed = budget > 0 && median > budget ? "  MISSED" : "";
    out.printf(Locale.ROOT, "%-58s %10.2f %10.2f %8s%s%n", name, median, worst, wanted, missed);
  }

  private static void remove(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    }
  }
}
