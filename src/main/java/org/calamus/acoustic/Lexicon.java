package org.calamus.acoustic;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The words of the model and how they are said.
 *
 * @param entries in alphabetical order
 */
record Lexicon(List<Entry> entries) {

  /** The recogniser's own entries of the word list. */
  static final List<String> MARKS = List.of("<eps>", "<s>", "</s>", "#0", "[unk]", "!sil");

  /** The mark for speech outside the grammar; it is always there. */
  static final String UNKNOWN = "[unk]";

  /**
   * A word.
   *
   * @param chain the chain it belongs to
   * @param pronunciations the ways to say it
   */
  record Entry(String word, Optional<String> chain, List<Pronunciation> pronunciations) {}

  /** Looks up all words; throws with every one that cannot be used. */
  static Lexicon of(List<WordToBuild> words, String dictionary, PhoneTable phones) {
    Map<String, List<String>> known = lookUp(words, dictionary);
    // a pronunciation written beside a word serves it wherever else it stands
    for (WordToBuild word : words) {
      if (known.get(word.word()).isEmpty()) {
        known.get(word.word()).addAll(word.pronunciations());
      }
    }
    List<WordProblem> problems = new ArrayList<>();
    Map<String, Set<Pronunciation>> said = new TreeMap<>();
    Map<String, String> chains = new HashMap<>();
    for (WordToBuild word : words) {
      if (word.word().equals(UNKNOWN) || word.isPhrase()) {
        continue;
      }
      List<String> ways =
          word.pronunciations().isEmpty() ? known.get(word.word()) : word.pronunciations();
      Optional<String> problem = problem(word, ways, phones);
      problem.ifPresent(why -> problems.add(new WordProblem(word.word(), word.where(), why)));
      if (problem.isEmpty()) {
        Set<Pronunciation> all = said.computeIfAbsent(word.word(), w -> new LinkedHashSet<>());
        ways.forEach(way -> all.add(Pronunciation.of(numbers(way, phones))));
        word.chain().ifPresent(chain -> chains.putIfAbsent(word.word(), chain));
      }
    }
    if (problems.isEmpty()) {
      addPhrases(words.stream().filter(WordToBuild::isPhrase).toList(), said, problems);
    }
    if (!problems.isEmpty()) {
      throw new UnusableWordsException(problems);
    }
    List<Entry> entries = new ArrayList<>();
    said.forEach(
        (word, ways) ->
            entries.add(new Entry(word, Optional.ofNullable(chains.get(word)), List.copyOf(ways))));
    return new Lexicon(Collections.unmodifiableList(entries));
  }

  private static void addPhrases(
      List<WordToBuild> phrases, Map<String, Set<Pronunciation>> said, List<WordProblem> problems) {
    for (WordToBuild phrase : phrases) {
      List<String> words = WordToBuild.parted(phrase.word());
      if (said.keySet().containsAll(words)) {
        said.put(phrase.word(), waysToSay(words.stream().map(said::get).toList()));
      } else {
        String why = "is taken for a phrase, for the \"_\" in it, and not of words that are known";
        problems.add(new WordProblem(phrase.word(), phrase.where(), why));
      }
    }
  }

  /** Every way to say the first word with every way to say the next. */
  private static Set<Pronunciation> waysToSay(List<Set<Pronunciation>> words) {
    Set<Pronunciation> ways = words.get(0);
    for (Set<Pronunciation> next : words.subList(1, words.size())) {
      Set<Pronunciation> longer = new LinkedHashSet<>();
      ways.forEach(before -> next.forEach(way -> longer.add(before.then(way))));
      ways = longer;
    }
    return ways;
  }

  private static Optional<String> problem(WordToBuild word, List<String> ways, PhoneTable phones) {
    if (word.word().isEmpty() || !word.word().equals(word.word().replaceAll("\\s", ""))) {
      return Optional.of("is not one word: blanks cannot be part of it");
    }
    if (MARKS.contains(word.word())) {
      return Optional.of("is a mark of the recogniser and cannot be a word");
    }
    if (ways.isEmpty()) {
      return Optional.of("is not in the pronouncing dictionary: write its pronunciation beside it");
    }
    for (String way : ways) {
      for (String phone : way.strip().split("\\s+")) {
        if (phones.number(phone) < 0) {
          return Optional.of("has the pronunciation \"" + way + "\" with no phone " + phone);
        }
      }
    }
    return Optional.empty();
  }

  private static List<Integer> numbers(String way, PhoneTable phones) {
    List<Integer> numbers = new ArrayList<>();
    for (String phone : way.strip().split("\\s+")) {
      numbers.add(phones.number(phone));
    }
    return List.copyOf(numbers);
  }

  /** Goes through the dictionary once; further ways to say a word are marked "word(2)". */
  static Map<String, List<String>> lookUp(Collection<WordToBuild> words, String dictionary) {
    Map<String, List<String>> found = new LinkedHashMap<>();
    words.forEach(word -> found.put(word.word(), new ArrayList<>()));
    int start = 0;
    while (start < dictionary.length()) {
      int end = dictionary.indexOf('\n', start);
      end = end < 0 ? dictionary.length() : end;
      int space = dictionary.indexOf(' ', start);
      if (space > start && space < end) {
        List<String> ways = found.get(headword(dictionary.substring(start, space)));
        if (ways != null) {
          ways.add(dictionary.substring(space + 1, end).strip());
        }
      }
      start = end + 1;
    }
    return found;
  }

  private static String headword(String entry) {
    int bracket = entry.indexOf('(');
    return bracket < 0 ? entry : entry.substring(0, bracket);
  }
}
