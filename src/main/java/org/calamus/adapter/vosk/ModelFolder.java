package org.calamus.adapter.vosk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.calamus.acoustic.Phrases;
import org.calamus.acoustic.UnusableWordsException;
import org.calamus.acoustic.WordProblem;
import org.calamus.acoustic.WordToBuild;
import org.vosk.Model;

/**
 * A folder with a model that the recogniser can load, held until closed.
 *
 * <p>One from the cache is protected from being cleared away while held.
 */
public final class ModelFolder implements AutoCloseable {

  private static final int FRAME_SHIFT_MILLIS = 10;
  private static final int USUAL_FACTOR = 3;
  private static final Pattern FACTOR =
      Pattern.compile("\\s*--frame-subsampling-factor=(\\d{1,2})\\s*");

  private static final Path FRONT_END = Path.of("conf", "mfcc.conf");
  private static final Path NORMALISATION = Path.of("am", "global_cmvn.stats");

  /** Hardly any other model has windows of this length. */
  private static final String OUR_WINDOW = "--frame-length=25.625";

  private static final Path WORDS = Path.of("graph", "words.txt");

  private final Path path;
  private final UseMark mark;

  private ModelFolder(Path path, UseMark mark) {
    this.path = path;
    this.mark = mark;
  }

  static ModelFolder cached(Path path, UseMark mark) {
    return new ModelFolder(path, mark);
  }

  /**
   * Takes a model folder of the user's own.
   *
   * @throws ModelException when it is no model, or none that takes grammars at run time
   */
  public static ModelFolder ofUser(Path path) {
    if (!Files.isDirectory(path)) {
      throw new ModelException(
          "There is no speech model folder " + path + ": give the folder that holds am and graph.");
    }
    if (!Files.isRegularFile(path.resolve("am/final.mdl"))) {
      throw new ModelException(
          path
              + " is no speech model: it has no file am/final.mdl. Give the folder that holds am.");
    }
    for (String part : new String[] {"graph/HCLr.fst", "graph/Gr.fst"}) {
      if (!Files.isRegularFile(path.resolve(part))) {
        throw new ModelException(
            "The speech model "
                + path
                + " cannot be limited to the words of a field: it has no file "
                + part
                + ". Use a model with graph/HCLr.fst and graph/Gr.fst, as small models have.");
      }
    }
    return new ModelFolder(path, UseMark.NONE);
  }

  /**
   * Makes sure that the model knows every word; it would leave out silently what it does not know.
   *
   * @throws UnusableWordsException naming each word it does not know, and where it stands
   * @throws ModelException when the model cannot be loaded
   */
  public void requireWords(List<WordToBuild> words) {
    try (Model model = VoskLibrary.load(path)) {
      List<WordProblem> unknown = VoskLibrary.unknownWords(model, words);
      if (!unknown.isEmpty()) {
        throw new UnusableWordsException(unknown);
      }
    }
  }

  /** The phrases that a model hears whole; none where it does not say which words it has. */
  static Phrases phrasesOf(Path model) {
    try (Stream<String> lines = Files.lines(model.resolve(WORDS), StandardCharsets.UTF_8)) {
      return Phrases.among(lines.map(line -> line.split(" ")[0]));
    } catch (IOException | UncheckedIOException e) {
      return Phrases.among(Stream.of()); // a model of others
    }
  }

  /**
   * The mean of the features that a model expects before it has heard anything; empty where it is
   * not one of ours, whose features are known.
   */
  static Optional<double[]> expectedBy(Path model) {
    try {
      String frontEnd = Files.readString(model.resolve(FRONT_END), StandardCharsets.UTF_8);
      if (!frontEnd.contains(OUR_WINDOW)) {
        return Optional.empty();
      }
      String[] sums =
          Files.readString(model.resolve(NORMALISATION), StandardCharsets.UTF_8)
              .replace("[", " ")
              .strip()
              .split("\\s+");
      double[] means = new double[MelCepstra.COEFFICIENTS];
      double count = Double.parseDouble(sums[means.length]);
      for (int i = 0; i < means.length; i++) {
        means[i] = Double.parseDouble(sums[i]) / count;
      }
      return Optional.of(means);
    } catch (IOException | NumberFormatException | ArrayIndexOutOfBoundsException e) {
      return Optional.empty(); // a model of others
    }
  }

  /**
   * How long an output frame of the model is, in milliseconds: 10 times its frame subsampling
   * factor, which is 3 where the model does not name one, as in most published models.
   */
  public int frameMillis() {
    try {
      return Files.readAllLines(path.resolve("conf/model.conf"), StandardCharsets.UTF_8).stream()
          .map(FACTOR::matcher)
          .filter(Matcher::matches)
          .map(m -> FRAME_SHIFT_MILLIS * Integer.parseInt(m.group(1)))
          .findFirst()
          .orElse(FRAME_SHIFT_MILLIS * USUAL_FACTOR);
    } catch (IOException e) {
      return FRAME_SHIFT_MILLIS * USUAL_FACTOR;
    }
  }

  /** Returns the folder. */
  public Path path() {
    return path;
  }

  /** Lets the folder go. */
  @Override
  public void close() {
    mark.close();
  }
}
