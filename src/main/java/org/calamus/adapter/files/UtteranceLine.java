package org.calamus.adapter.files;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.dialogue.Account;
import org.calamus.core.dialogue.Circumstances;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Outcome;
import org.calamus.core.dialogue.Understood;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Credibility;
import org.calamus.core.speech.Hypothesis;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Word;
import org.calamus.port.KeptUtterances.Kept;

/** One utterance as a line of a list: a JSON object (RFC 8259) without line breaks. */
final class UtteranceLine {

  private static final ObjectMapper JSON = new ObjectMapper();

  private UtteranceLine() {}

  /** The line of an utterance; the list stands beside its sound. */
  static String write(Kept kept) {
    Event.Heard event = kept.event();
    Account account = kept.account();
    ObjectNode line = JSON.createObjectNode();
    line.put("at", event.at().toString())
        .put("sound", kept.wav().getFileName().toString())
        .put("samples", kept.samples())
        .put("grammar", kept.grammar());
    line.set("met", met(account.met()));
    line.set("heard", heard(event));
    ArrayNode signs = line.putArray("signs");
    account.signs().stream().sorted().forEach(s -> signs.add(s.name()));
    line.putObject("understood")
        .put("kind", account.understood().kind().name())
        .put("what", account.understood().what());
    ObjectNode outcome = line.putObject("outcome");
    outcome.put("kind", account.outcome().kind().name());
    account.outcome().taken().forEach(outcome.putArray("taken")::add);
    outcome.put("said", account.outcome().said());
    return line.toString();
  }

  private static ObjectNode met(Circumstances met) {
    ObjectNode node = JSON.createObjectNode();
    node.put("asked", met.asked().map(FieldId::name).orElse(""))
        .put("question", met.question())
        .put("paused", met.isPaused())
        .put("unheeded", met.isUnheeded())
        .put("corrects", met.corrects().map(FieldId::name).orElse(""))
        .put("expected", met.expected().map(BandNumber::text).orElse(""));
    ObjectNode values = node.putObject("values");
    met.values().forEach((field, value) -> values.put(field.name(), value));
    return node;
  }

  private static ObjectNode heard(Event.Heard event) {
    Utterance utterance = event.utterance();
    ObjectNode node = JSON.createObjectNode();
    node.put("speechEndedAt", event.speechEndedAt().toString())
        .put("loudness", utterance.loudness())
        .put("voicedMillis", utterance.voiced().toMillis())
        .put("aboveNoise", utterance.aboveNoise())
        .put("pitchedMillis", utterance.pitched().toMillis());
    put(node.putArray("words"), utterance.words());
    ArrayNode hypotheses = node.putArray("hypotheses");
    for (Hypothesis hypothesis : utterance.hypotheses()) {
      ObjectNode one = hypotheses.addObject().put("share", hypothesis.share());
      put(one.putArray("words"), hypothesis.words());
    }
    return node;
  }

  private static void put(ArrayNode array, List<Word> words) {
    for (Word word : words) {
      array
          .addObject()
          .put("word", word.text())
          .put("confidence", word.confidence())
          .put("start", word.startMillis())
          .put("end", word.endMillis());
    }
  }

  /**
   * The utterance of a line.
   *
   * @param folder where its sound is
   * @throws IllegalArgumentException where the line is not one that was written here
   */
  static Kept read(Path folder, String text) {
    try {
      JsonNode line = JSON.readTree(text);
      String wav = text(line, "sound");
      if (!SessionFolder.isSound(wav)) {
        throw new IllegalArgumentException("no name of a sound: " + wav);
      }
      return new Kept(
          folder.resolve(wav),
          node(line, "samples").asInt(),
          event(Instant.parse(text(line, "at")), node(line, "heard")),
          text(line, "grammar"),
          new Account(
              met(node(line, "met")),
              signs(node(line, "signs")),
              understood(node(line, "understood")),
              outcome(node(line, "outcome"))));
    } catch (JsonProcessingException | DateTimeException e) {
      throw new IllegalArgumentException(e);
    }
  }

  private static Event.Heard event(Instant at, JsonNode heard) {
    List<Hypothesis> hypotheses = new ArrayList<>();
    for (JsonNode one : heard.path("hypotheses")) {
      hypotheses.add(new Hypothesis(words(node(one, "words")), node(one, "share").asDouble()));
    }
    long voiced = node(heard, "voicedMillis").asLong();
    Utterance utterance =
        new Utterance(
            words(node(heard, "words")),
            hypotheses,
            node(heard, "loudness").asInt(),
            Duration.ofMillis(voiced),
            node(heard, "aboveNoise").asInt(),
            // lines of earlier versions have no pitch
            Duration.ofMillis(heard.path("pitchedMillis").asLong(voiced)));
    return new Event.Heard(at, utterance, Instant.parse(text(heard, "speechEndedAt")));
  }

  private static List<Word> words(JsonNode nodes) {
    List<Word> words = new ArrayList<>();
    for (JsonNode word : nodes) {
      words.add(
          new Word(
              text(word, "word"),
              node(word, "confidence").asDouble(),
              node(word, "start").asLong(),
              node(word, "end").asLong()));
    }
    return words;
  }

  private static Circumstances met(JsonNode met) {
    Map<FieldId, String> values = new EnumMap<>(FieldId.class);
    node(met, "values")
        .properties()
        .forEach(e -> values.put(FieldId.valueOf(e.getKey()), e.getValue().asText()));
    return new Circumstances(
        field(met, "asked"),
        text(met, "question"),
        node(met, "paused").asBoolean(),
        node(met, "unheeded").asBoolean(),
        field(met, "corrects"),
        BandNumber.ofOtherScheme(text(met, "expected")),
        values);
  }

  private static Set<Credibility.Sign> signs(JsonNode names) {
    Set<Credibility.Sign> signs = EnumSet.noneOf(Credibility.Sign.class);
    names.forEach(name -> signs.add(Credibility.Sign.valueOf(name.asText())));
    return signs;
  }

  private static Understood understood(JsonNode node) {
    return new Understood(Understood.Kind.valueOf(text(node, "kind")), text(node, "what"));
  }

  private static Outcome outcome(JsonNode node) {
    List<String> taken = new ArrayList<>();
    node(node, "taken").forEach(value -> taken.add(value.asText()));
    return new Outcome(Outcome.Kind.valueOf(text(node, "kind")), taken, text(node, "said"));
  }

  private static Optional<FieldId> field(JsonNode node, String key) {
    return Optional.of(text(node, key)).filter(n -> !n.isEmpty()).map(FieldId::valueOf);
  }

  private static String text(JsonNode node, String key) {
    return node(node, key).asText();
  }

  private static JsonNode node(JsonNode node, String key) {
    JsonNode found = node.path(key);
    if (found.isMissingNode() || found.isNull()) {
      throw new IllegalArgumentException("nothing is said of " + key);
    }
    return found;
  }
}
