package org.calamus.acoustic;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;

/** For each chain of words the sounds its words begin and end with: what can meet in it. */
final class Chains {

  private final Map<String, SortedSet<Integer>> firsts = new HashMap<>();
  private final Map<String, SortedSet<Integer>> lasts = new HashMap<>();
  private final int silence;

  Chains(Lexicon lexicon, int silence) {
    this.silence = silence;
    for (Lexicon.Entry entry : lexicon.entries()) {
      entry.chain().ifPresent(chain -> entry.pronunciations().forEach(way -> add(chain, way)));
    }
  }

  private void add(String chain, Pronunciation way) {
    firsts.computeIfAbsent(chain, c -> new TreeSet<>()).add(way.first());
    lasts.computeIfAbsent(chain, c -> new TreeSet<>()).add(way.last());
  }

  /** What may stand before a word: silence, then the last sounds of its chain. */
  List<Integer> before(Lexicon.Entry entry) {
    return withSilence(lasts, entry);
  }

  /** What may follow a word: silence, then the first sounds of its chain. */
  List<Integer> after(Lexicon.Entry entry) {
    return withSilence(firsts, entry);
  }

  private List<Integer> withSilence(Map<String, SortedSet<Integer>> sounds, Lexicon.Entry entry) {
    List<Integer> all = new ArrayList<>();
    all.add(silence);
    entry.chain().ifPresent(chain -> all.addAll(sounds.get(chain)));
    return all;
  }
}
