package org.calamus.acoustic;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Lays the words out as a graph of phone states.
 *
 * <p>From the start an optional pause leads to the word entry; there each pronunciation of each
 * word begins, with the word's label on its first step, and all come back by the word end to the
 * start. A pause has silence on its far side, so words meet there in the context of silence.
 *
 * <p>Words of a chain also meet directly. For each last sound of one and first sound of the next
 * there is a junction, and the first and last phone of a word come in as many variants as those
 * neighbours call for; neighbours that give the same senones share one.
 *
 * <p>A phrase of several words is one word to the recogniser, so that nothing but the whole of it
 * can be heard; see {@link PhraseSteps}.
 *
 * <p>"[unk]" is a loop over the bare phones: anything can be said through it, at a cost a phone.
 */
final class GraphBuilder {

  /** About the number of phones: the cost of choosing one of them. */
  private static final double PHONE_CHOICE_COST = Math.log(40);

  private final PhoneTable phones;
  private final KaldiPhones numbers;
  private final Settings settings;
  private final PhoneSteps steps;
  private final Map<Meeting, Integer> junctions = new HashMap<>();
  private int start;
  private int entry;
  private int wordEnd;

  /** Two sounds that meet without a pause. */
  private record Meeting(Optional<String> chain, int last, int first) {}

  GraphBuilder(
      PhoneTable phones, TransitionMatrices transitions, KaldiPhones numbers, Settings settings) {
    this.phones = phones;
    this.numbers = numbers;
    this.settings = settings;
    this.steps = new PhoneSteps(phones, transitions, settings);
  }

  /** Builds the graph; words are numbered from the given number on, in the lexicon's order. */
  WordGraph build(Lexicon lexicon, int firstWord, int unknown) {
    start = steps.newState();
    entry = steps.newState();
    wordEnd = steps.newState();
    addPause();
    PhraseSteps phrases = new PhraseSteps(phones, numbers, settings, steps);
    Chains chains = new Chains(lexicon, phones.silence());
    int word = firstWord;
    for (Lexicon.Entry one : lexicon.entries()) {
      for (Pronunciation way : one.pronunciations()) {
        if (way.words() > 1) {
          phrases.add(way, word, entry, wordEnd);
        } else if (way.phones().size() == 1) {
          addSinglePhone(one, way.first(), word, chains);
        } else {
          addPhones(one, way.phones(), word, chains);
        }
      }
      word++;
    }
    addUnknown(unknown);
    BitSet ends = new BitSet();
    ends.set(start);
    ends.set(entry);
    ends.set(wordEnd);
    return steps.graph(ends);
  }

  private void addPause() {
    steps.join(start, entry, 0, noPauseCost());
    int silence = phones.silence();
    PhoneSteps.Exit exit =
        steps.hear(
            start,
            KaldiPhones.SILENCE,
            steps.variant(silence),
            0,
            -Math.log(settings.silenceProbability()));
    steps.join(exit.state(), entry, exit.cost(), 0);
    steps.join(wordEnd, start, 0, 0);
  }

  private void addUnknown(int unknown) {
    int inside = steps.newState();
    double cost = PHONE_CHOICE_COST + settings.unknownPhoneCost();
    for (int phone : phones.speech()) {
      PhoneSteps.Variant bare = steps.variant(phone);
      PhoneSteps.Exit first =
          steps.hear(entry, numbers.number(phone, Position.BEGIN), bare, unknown, cost);
      steps.join(first.state(), inside, first.cost(), 0);
      PhoneSteps.Exit more =
          steps.hear(inside, numbers.number(phone, Position.INTERNAL), bare, 0, cost);
      steps.join(more.state(), inside, more.cost(), 0);
      PhoneSteps.Exit last = steps.hear(inside, numbers.number(phone, Position.END), bare, 0, cost);
      steps.join(last.state(), wordEnd, last.cost(), 0);
    }
  }

  private void addPhones(Lexicon.Entry one, List<Integer> way, int word, Chains chains) {
    int last = way.size() - 1;
    int current = steps.newState();
    addFirst(one, way, word, chains.before(one), current);
    double leave = 0;
    for (int i = 1; i < last; i++) {
      PhoneSteps.Variant variant =
          steps.variant(Position.INTERNAL, way.get(i), way.get(i - 1), way.get(i + 1));
      int phone = numbers.number(way.get(i), Position.INTERNAL);
      PhoneSteps.Exit exit = steps.hear(new PhoneSteps.Exit(current, leave), phone, variant, 0, 0);
      current = exit.state();
      leave = exit.cost();
    }
    addLast(one, way, chains.after(one), new PhoneSteps.Exit(current, leave));
  }

  private void addFirst(
      Lexicon.Entry one, List<Integer> way, int word, List<Integer> before, int target) {
    int first = way.get(0);
    Map<PhoneSteps.Variant, List<Integer>> groups = new LinkedHashMap<>();
    for (int left : before) {
      PhoneSteps.Variant variant = steps.variant(Position.BEGIN, first, left, way.get(1));
      groups.computeIfAbsent(variant, v -> new ArrayList<>()).add(left);
    }
    groups.forEach(
        (variant, lefts) -> {
          int from = into(one, lefts, first);
          PhoneSteps.Exit exit =
              steps.hear(
                  from, numbers.number(first, Position.BEGIN), variant, word, settings.wordCost());
          steps.join(exit.state(), target, exit.cost(), 0);
        });
  }

  /** One state for all neighbours that ask for the same variant. */
  private int into(Lexicon.Entry one, List<Integer> lefts, int first) {
    if (lefts.size() == 1) {
      return wayIn(one, lefts.get(0), first);
    }
    int shared = steps.newState();
    for (int left : lefts) {
      steps.join(wayIn(one, left, first), shared, 0, 0);
    }
    return shared;
  }

  private void addLast(
      Lexicon.Entry one, List<Integer> way, List<Integer> after, PhoneSteps.Exit from) {
    int last = way.get(way.size() - 1);
    Map<PhoneSteps.Variant, List<Integer>> groups = new LinkedHashMap<>();
    for (int right : after) {
      PhoneSteps.Variant variant =
          steps.variant(Position.END, last, way.get(way.size() - 2), right);
      groups.computeIfAbsent(variant, v -> new ArrayList<>()).add(right);
    }
    groups.forEach(
        (variant, rights) -> {
          PhoneSteps.Exit exit =
              steps.hear(from, numbers.number(last, Position.END), variant, 0, 0);
          rights.forEach(right -> wayOut(one, exit, last, right));
        });
  }

  /** A word of one phone: both its neighbours choose the variant. */
  private void addSinglePhone(Lexicon.Entry one, int phone, int word, Chains chains) {
    for (int left : chains.before(one)) {
      Map<PhoneSteps.Variant, List<Integer>> groups = new LinkedHashMap<>();
      for (int right : chains.after(one)) {
        PhoneSteps.Variant variant = steps.variant(Position.SINGLE, phone, left, right);
        groups.computeIfAbsent(variant, v -> new ArrayList<>()).add(right);
      }
      int from = wayIn(one, left, phone);
      groups.forEach(
          (variant, rights) -> {
            int number = numbers.number(phone, Position.SINGLE);
            PhoneSteps.Exit exit = steps.hear(from, number, variant, word, settings.wordCost());
            rights.forEach(right -> wayOut(one, exit, phone, right));
          });
    }
  }

  private int wayIn(Lexicon.Entry one, int left, int first) {
    return left == phones.silence() ? entry : junction(one, left, first);
  }

  private void wayOut(Lexicon.Entry one, PhoneSteps.Exit exit, int last, int right) {
    if (right == phones.silence()) {
      steps.join(exit.state(), wordEnd, exit.cost(), 0);
    } else {
      steps.join(exit.state(), junction(one, last, right), exit.cost(), noPauseCost());
    }
  }

  private double noPauseCost() {
    return -Math.log(1 - settings.silenceProbability());
  }

  private int junction(Lexicon.Entry one, int last, int first) {
    return junctions.computeIfAbsent(new Meeting(one.chain(), last, first), m -> steps.newState());
  }
}
