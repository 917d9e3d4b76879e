package org.calamus.adapter.vosk;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.calamus.acoustic.Phrases;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Hypothesis;
import org.calamus.core.speech.Word;
import org.calamus.port.AudioSource;
import org.vosk.Model;
import org.vosk.Recognizer;

/**
 * One Vosk recogniser, used an utterance at a time: each begins with a fresh front end, since its
 * normalisation would otherwise rest on whatever silence lay between.
 *
 * <p>Belongs to the thread that made it. Each utterance is ended by {@code getFinalResult}, never
 * by {@code getResult}: only the former makes the recogniser start afresh, and changing the grammar
 * in mid-utterance would end the process.
 */
final class Decoder implements AutoCloseable {

  /** Vosk prints times as frames of 30 ms, whatever the frames of the model are. */
  private static final double PRINTED_FRAME_MILLIS = 30;

  /**
   * How many ways to hear an utterance are asked for; on the tuning half the right one was hardly
   * ever behind them.
   */
  private static final int HYPOTHESES = 20;

  private static final ObjectMapper JSON = new ObjectMapper();

  private final Recognizer recognizer;
  private final Phrases phrases;
  private final double frameMillis;
  private Optional<Grammar> grammar = Optional.empty();
  private long samplesBefore;
  private long samplesInUtterance;

  /**
   * A recogniser on a model.
   *
   * @param model used by it until closed; not closed by it
   * @param phrases those that the model hears whole
   * @param frameMillis the length of the model's output frames: 10 for one with a frame subsampling
   *     factor of 1, 30 for the usual 3
   * @throws IOException where the recogniser refuses the model
   */
  Decoder(Model model, Phrases phrases, int frameMillis) throws IOException {
    this.phrases = phrases;
    this.frameMillis = frameMillis;
    recognizer = new Recognizer(model, AudioSource.RATE, "[\"" + Word.UNKNOWN + "\"]");
    recognizer.setWords(true);
    recognizer.setMaxAlternatives(HYPOTHESES);
  }

  /** Listens for this grammar from now on. Only between utterances. */
  void listenFor(Grammar wanted) {
    if (samplesInUtterance > 0) {
      throw new IllegalStateException("the grammar may only change between utterances");
    }
    if (!grammar.equals(Optional.of(wanted))) {
      recognizer.setGrammar(json(wanted.phrases().stream().map(phrases::joined).toList()));
      grammar = Optional.of(wanted);
    }
  }

  /** Whether it knows what to listen for. */
  boolean hasGrammar() {
    return grammar.isPresent();
  }

  /** What it listens for; only where it has a grammar. */
  Grammar grammar() {
    return grammar.orElseThrow();
  }

  /** Takes sound; true where the recogniser itself takes the utterance for ended. */
  boolean feed(short[] samples) {
    samplesInUtterance += samples.length;
    return recognizer.acceptWaveForm(samples, samples.length);
  }

  /**
   * Whether what it has heard so far is part of an answer of fixed length, and more must follow.
   */
  boolean lacksWords() {
    return grammar.filter(g -> g.whole().lacksWords(soFar())).isPresent();
  }

  private List<String> soFar() {
    String partial = recognizer.getPartialResult();
    try {
      String text = JSON.readTree(partial).path("partial").asText();
      return Arrays.stream(text.split(" "))
          .filter(w -> !w.isEmpty())
          .flatMap(w -> phrases.parted(w).stream())
          .toList();
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the recogniser's result is no JSON: " + partial, e);
    }
  }

  /** How much of the utterance it has been fed, in samples. */
  long samplesInUtterance() {
    return samplesInUtterance;
  }

  /**
   * Ends the utterance.
   *
   * @param startMillis when the sound fed first was heard
   * @return the ways in which it may be heard, the likeliest first; empty where there is no word
   */
  List<Hypothesis> finish(long startMillis) {
    String result = recognizer.getFinalResult();
    double startPrinted = samplesBefore * 1000.0 / AudioSource.RATE;
    samplesBefore += samplesInUtterance;
    samplesInUtterance = 0;
    return hypotheses(result, startPrinted, startMillis);
  }

  /** Forgets the utterance. */
  void abandon() {
    if (samplesInUtterance > 0) {
      finish(0);
    }
  }

  @Override
  public void close() {
    recognizer.close();
  }

  /** The phrases and the word for all else, as Vosk wants them; repeats are kept, they count. */
  static String json(List<String> phrases) {
    ArrayNode array = JSON.createArrayNode();
    phrases.forEach(array::add);
    if (!phrases.contains(Word.UNKNOWN)) {
      array.add(Word.UNKNOWN);
    }
    return array.toString();
  }

  private List<Hypothesis> hypotheses(String result, double startPrinted, long startMillis) {
    try {
      List<List<Word>> words = new ArrayList<>();
      List<Double> scores = new ArrayList<>();
      for (JsonNode alternative : JSON.readTree(result).path("alternatives")) {
        words.add(words(alternative.path("result"), startPrinted, startMillis));
        scores.add(alternative.path("confidence").asDouble());
      }
      boolean isSilence = words.isEmpty() || words.get(0).isEmpty();
      return isSilence ? List.of() : Hypothesis.ofScores(words, scores);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the recogniser's result is no JSON: " + result, e);
    }
  }

  /**
   * The words of one hypothesis; how sure each is shows only beside the others. Of a phrase it is
   * only known when the whole was said: each of its words gets a like part of it.
   */
  private List<Word> words(JsonNode nodes, double startPrinted, long startMillis) {
    List<Word> words = new ArrayList<>();
    for (JsonNode node : nodes) {
      long start = startMillis + millis(node.path("start").asDouble(), startPrinted);
      long end = startMillis + millis(node.path("end").asDouble(), startPrinted);
      List<String> parts = phrases.parted(node.path("word").asText());
      for (int i = 0; i < parts.size(); i++) {
        long from = start + (end - start) * i / parts.size();
        long to = start + (end - start) * (i + 1) / parts.size();
        words.add(new Word(parts.get(i), 1, from, to));
      }
    }
    return words;
  }

  /** Only what lies behind the start of the utterance is counted in frames. */
  private long millis(double printedSeconds, double startPrinted) {
    return Math.round((printedSeconds * 1000 - startPrinted) * frameMillis / PRINTED_FRAME_MILLIS);
  }
}
