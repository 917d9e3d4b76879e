package org.calamus.core.speech;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.Form;

/**
 * All that can be said, from every vocabulary file.
 *
 * @param forms the spoken forms in the files' order
 * @param pronunciations the pronunciations that the files give, by word
 * @param pronouncedAt where a word with a pronunciation stands, by word
 */
public record Vocabulary(
    List<SpokenForm> forms,
    Map<String, List<String>> pronunciations,
    Map<String, String> pronouncedAt) {

  /** Copies the collections. */
  public Vocabulary {
    forms = List.copyOf(forms);
    pronunciations = Collections.unmodifiableMap(new LinkedHashMap<>(pronunciations));
    pronouncedAt = Collections.unmodifiableMap(new LinkedHashMap<>(pronouncedAt));
  }

  /**
   * What of it can be said at a station: without the names and the codes of fields that its form
   * does not have, and without codes that only another code set has.
   */
  public Vocabulary within(Form form) {
    List<SpokenForm> kept =
        forms.stream().flatMap(f -> Within.of(f.meaning(), form).map(f::meaning).stream()).toList();
    return new Vocabulary(kept, pronunciations, pronouncedAt);
  }

  /**
   * The same with more forms.
   *
   * @param more forms that stand in no vocabulary file
   * @param problems where one sentence goes for each that has another meaning already
   */
  public Vocabulary with(List<SpokenForm> more, List<String> problems) {
    return WordsFile.join(
        List.of(
            new WordsFile.Contents(forms, pronunciations, pronouncedAt, List.of()),
            new WordsFile.Contents(more, Map.of(), Map.of(), List.of())),
        problems);
  }

  /** The forms of a section. */
  public List<SpokenForm> section(String name) {
    return forms.stream().filter(f -> f.section().name().equals(name)).toList();
  }

  /** The forms that are listened for. */
  List<SpokenForm> heard() {
    return forms.stream().filter(f -> !f.section().isWritten()).toList();
  }

  /** Every word that is listened for, once, in order of first appearance. */
  public Set<String> words() {
    Set<String> words = new LinkedHashSet<>();
    heard().forEach(f -> words.addAll(f.words()));
    return words;
  }

  /**
   * The forms of several words that are heard whole or not at all: all but those with a word in
   * them that joins others freely, such as the digits.
   */
  public List<SpokenForm> phrases() {
    Set<String> free =
        heard().stream()
            .filter(f -> f.section().isJoined())
            .flatMap(f -> f.words().stream())
            .collect(Collectors.toSet());
    return heard().stream()
        .filter(f -> f.words().size() > 1 && Collections.disjoint(f.words(), free))
        .toList();
  }

  /** Every word with the place of its first appearance and the joined section it belongs to. */
  public List<VocabularyWord> wordsToPronounce() {
    Map<String, VocabularyWord> found = new LinkedHashMap<>();
    for (SpokenForm form : heard()) {
      for (String word : form.words()) {
        String chain = form.section().isJoined() ? form.section().name() : "";
        VocabularyWord before = found.get(word);
        if (before == null || before.chain().isEmpty() && !chain.isEmpty()) {
          String where = before == null ? form.where() : before.where();
          found.put(
              word,
              new VocabularyWord(word, pronunciations.getOrDefault(word, List.of()), chain, where));
        }
      }
    }
    return new ArrayList<>(found.values());
  }
}
