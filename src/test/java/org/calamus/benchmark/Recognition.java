package org.calamus.benchmark;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.calamus.acoustic.Settings;
import org.calamus.acoustic.WordToBuild;
import org.calamus.adapter.vosk.ModelCache;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.VocabularyWord;
import org.calamus.support.Fenwick;

/**
 * Measures how well the console's own grammars are recognised, and what comes of it in the
 * dialogue.
 *
 * <p>Speakers and utterances are split into two halves. Settings may be chosen on the first only
 * ({@code TUNING}); what is published is the second ({@code REPORTING}). Only words that cannot be
 * split, such as the commands, occur in both. The one real speaker cannot be split either: her
 * utterances are, and she took part in the tuning.
 */
final class Recognition {

  private final Path audio;
  private final Half half;
  private final boolean showsErrors;
  private final Map<List<String>, Grammar> grammars = new HashMap<>();

  private Recognition(Path audio, Half half, boolean showsErrors) {
    this.audio = audio;
    this.half = half;
    this.showsErrors = showsErrors;
  }

  /**
   * Entry point.
   *
   * @param args the half, {@code tuning} or {@code reporting}; then {@code errors} to see each
   *     utterance that was not heard rightly
   */
  public static void main(String[] args) throws IOException, InterruptedException {
    List<String> given = List.of(args);
    Half half = given.contains("tuning") ? Half.TUNING : Half.REPORTING;
    measure(half, given.contains("errors"), System.out);
    System.exit(0); // the recogniser's library keeps threads
  }

  /** Measures a half and prints its tables. */
  static void measure(Half half, boolean showsErrors, PrintStream out)
      throws IOException, InterruptedException {
    Path work = Path.of("target", "benchmark").toAbsolutePath();
    Recognition recognition = new Recognition(work.resolve("audio"), half, showsErrors);
    try (ModelFolder model = model(work.resolve("model"))) {
      recognition.measure(model.path(), out);
    }
  }

  /** The model of the program's own vocabularies. */
  static ModelFolder model(Path cache) {
    List<WordToBuild> words =
        Fenwick.vocabulary().wordsToPronounce().stream().map(Recognition::word).toList();
    return new ModelCache(cache).open(words, Settings.standard());
  }

  private static WordToBuild word(VocabularyWord word) {
    Optional<String> chain = word.chain().isEmpty() ? Optional.empty() : Optional.of(word.chain());
    return new WordToBuild(word.word(), word.pronunciations(), chain, word.where());
  }

  static List<Speaker> speakers() throws IOException {
    List<Speaker> speakers = new ArrayList<>();
    speakers.add(Speaker.flite("slt", Half.TUNING));
    speakers.add(Speaker.flite("awb", Half.TUNING));
    speakers.add(Speaker.festival("cmu_us_slt_arctic_hts", Half.TUNING));
    speakers.add(Speaker.espeak("en-us", Half.TUNING));
    speakers.add(Speaker.flite("rms", Half.REPORTING));
    speakers.add(Speaker.flite("kal16", Half.REPORTING));
    speakers.add(Speaker.festival("kal_diphone", Half.REPORTING));
    speakers.add(Speaker.espeak("en-gb", Half.REPORTING));
    for (Path folder : RecordedPrompts.folders()) {
      for (Half half : Half.values()) {
        speakers.add(new Speaker("person", half, "person", new RecordedPrompts(folder)));
      }
    }
    return speakers;
  }

  private void measure(Path model, PrintStream out) throws IOException, InterruptedException {
    List<Said> utterances = new ArrayList<>(UtteranceSets.of(half));
    utterances.addAll(Chatter.of(half));
    for (Path folder : RecordedPrompts.folders()) {
      List<String> prompts =
          RecordedPrompts.prompts(folder).stream().map(p -> p.getFileName().toString()).toList();
      utterances.addAll(Chatter.atMoments(prompts, half));
    }
    Sums sums = new Sums();
    Map<String, Double> minutes = new TreeMap<>();
    for (Speaker speaker : speakers().stream().filter(s -> s.half() == half).toList()) {
      List<Said> own =
          utterances.stream()
              .filter(s -> !isPrompt(s) || speaker.group().equals("person"))
              .filter(speaker.mouth()::canSay)
              .toList();
      hear(model, speaker, own.stream().filter(s -> !s.isChatter()).toList(), sums, out);
      List<Said> chatter = own.stream().filter(Said::isChatter).toList();
      minutes.put(speaker.name(), hear(model, speaker, chatter, sums, out) / 60);
    }
    out.printf(Locale.ROOT, "%n%s half%n", half);
    table("set", sums.sets(), out);
    table("speaker, all sets", sums.speakers(), out);
    out.printf(Locale.ROOT, "%n%-30s %8s %18s%n", "chatter", "minutes", "taken or done");
    sums.chatter()
        .forEach(
            (speaker, sum) ->
                out.printf(
                    Locale.ROOT,
                    "%-30s %8.1f %18d%n",
                    speaker,
                    minutes.get(speaker),
                    sum.of(Verdict.WRONG)));
  }

  private static boolean isPrompt(Said said) {
    return said.isChatter() && said.spoken().endsWith(".g722");
  }

  /** Lets a speaker say all of it and adds up what came of it; gives the seconds of sound. */
  private double hear(Path model, Speaker speaker, List<Said> said, Sums sums, PrintStream out)
      throws IOException, InterruptedException {
    List<Room.Play> plays = new ArrayList<>();
    for (Said one : said) {
      Grammar grammar = grammars.computeIfAbsent(one.before(), b -> Verdict.grammar(one));
      plays.add(new Room.Play(speaker.recording(one, audio), grammar));
    }
    Room.Result result = Room.hear(model, VoskEars.Settings.usual(), plays);
    for (int i = 0; i < said.size(); i++) {
      List<Utterance> heard = result.utterances().get(i);
      Verdict verdict = Verdict.of(said.get(i), heard);
      String text = heard.stream().map(Utterance::text).collect(Collectors.joining(" | "));
      sums.add(speaker, said.get(i), text, verdict);
      if (showsErrors && !text.equals(said.get(i).words())) {
        out.println(
            speaker.name()
                + (" [" + plays.get(i).grammar().name() + "] " + verdict)
                + (" said " + said.get(i).spoken() + ", heard " + text));
      }
    }
    return result.seconds();
  }

  /** The sums by set, by speaker, and of chatter. */
  private record Sums(
      Map<String, Accuracy> sets, Map<String, Accuracy> speakers, Map<String, Accuracy> chatter) {

    private Sums() {
      this(new TreeMap<>(), new TreeMap<>(), new TreeMap<>());
    }

    private void add(Speaker speaker, Said said, String heard, Verdict verdict) {
      if (said.isChatter()) {
        sum(chatter, speaker.name()).add("", heard, verdict);
      } else {
        sum(sets, said.set() + ", " + speaker.group()).add(said.words(), heard, verdict);
        sum(speakers, speaker.name()).add(said.words(), heard, verdict);
      }
    }

    private static Accuracy sum(Map<String, Accuracy> sums, String name) {
      return sums.computeIfAbsent(name, n -> new Accuracy());
    }
  }

  private static void table(String title, Map<String, Accuracy> rows, PrintStream out) {
    out.printf(
        Locale.ROOT,
        "%n%-30s %5s %7s %9s %8s %8s %8s%n",
        title,
        "said",
        "WER %",
        "all words",
        "value",
        "again",
        "wrong");
    Accuracy all = new Accuracy();
    rows.values().forEach(all::add);
    rows.forEach((name, sum) -> row(name, sum, out));
    row("together", all, out);
  }

  private static void row(String name, Accuracy sum, PrintStream out) {
    out.printf(
        Locale.ROOT,
        "%-30s %5d %7.1f %8.1f%% %8d %8d %8d%n",
        name,
        sum.utterances(),
        sum.wordErrorRate(),
        100.0 * sum.wholeRight() / Math.max(1, sum.utterances()),
        sum.of(Verdict.RIGHT),
        sum.of(Verdict.AGAIN),
        sum.of(Verdict.WRONG));
  }
}
