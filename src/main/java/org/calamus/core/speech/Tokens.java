package org.calamus.core.speech;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Cuts an utterance into spoken forms, the longest first. */
final class Tokens {

  private Tokens() {}

  /** The meanings of the forms in order; empty where a word belongs to no form. */
  static Optional<List<Token>> of(List<Word> words, Vocabulary vocabulary) {
    List<String> texts = words.stream().map(Word::text).toList();
    List<Token> tokens = new ArrayList<>();
    int at = 0;
    while (at < texts.size()) {
      Optional<SpokenForm> form = longest(texts.subList(at, texts.size()), vocabulary);
      if (form.isEmpty()) {
        return Optional.empty();
      }
      tokens.add(form.get().meaning());
      at += form.get().words().size();
    }
    return Optional.of(tokens);
  }

  private static Optional<SpokenForm> longest(List<String> texts, Vocabulary vocabulary) {
    SpokenForm best = null;
    for (SpokenForm form : vocabulary.forms()) {
      int length = form.words().size();
      boolean fits = length <= texts.size() && texts.subList(0, length).equals(form.words());
      if (fits && (best == null || length > best.words().size())) {
        best = form;
      }
    }
    return Optional.ofNullable(best);
  }
}
