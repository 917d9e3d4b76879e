package org.calamus.core.speech;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Cuts an utterance into spoken forms, the longest first; what several kinds of value ask of them.
 */
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

  /** Whether it is a digit that stands behind a ten, as in "twenty two". */
  static boolean isUnit(Token token) {
    return token instanceof Token.Digit digit && digit.value() > 0;
  }

  /**
   * The figures of one of several number words in a row, as in a time or a year: those of "forty
   * five" are 4 and 5, those of "forty" by itself 40.
   *
   * @param tokens the words in their order
   * @param at which of them
   * @return empty where it is no number word
   */
  static Optional<String> figures(List<Token> tokens, int at) {
    Token token = tokens.get(at);
    if (token instanceof Token.Tens tens && at + 1 < tokens.size() && isUnit(tokens.get(at + 1))) {
      return Optional.of(String.valueOf(tens.value() / 10));
    }
    boolean isNumber =
        token instanceof Token.Digit || token instanceof Token.Teen || token instanceof Token.Tens;
    return isNumber ? Optional.of(String.valueOf(token.number().getAsInt())) : Optional.empty();
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
