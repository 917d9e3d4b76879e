package org.calamus.acoustic;

import java.util.ArrayList;
import java.util.Arrays;
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
 * <p>"[unk]" is a loop over the bare phones: anything can be said through it, at a cost a phone.
 *
 * <p>The step into a state's node is the leaving of the state before (its transition in the
 * recogniser's terms is the "forward" one), and the node carries the state's loop: the order the
 * recogniser's word alignment expects.
 */
final class GraphBuilder {

  /** About the number of phones: the cost of choosing one of them. */
  private static final double PHONE_CHOICE_COST = Math.log(40);

  private final PhoneTable phones;
  private final TransitionMatrices transitions;
  private final KaldiPhones numbers;
  private final Settings settings;
  private final List<Arc> arcs = new ArrayList<>();
  private final Map<Meeting, Integer> junctions = new HashMap<>();
  private int states;
  private int start;
  private int entry;
  private int wordEnd;

  /** Two sounds that meet without a pause. */
  private record Meeting(Optional<String> chain, int last, int first) {}

  /** A variant of a phone: what is heard and how long it lasts. */
  private record Variant(List<Integer> senones, int matrix) {}

  /** Where a phone ends, and the cost of leaving it. */
  private record Exit(int state, double cost) {}

  GraphBuilder(
      PhoneTable phones, TransitionMatrices transitions, KaldiPhones numbers, Settings settings) {
    this.phones = phones;
    this.transitions = transitions;
    this.numbers = numbers;
    this.settings = settings;
  }

  /** Builds the graph; words are numbered from the given number on, in the lexicon's order. */
  WordGraph build(Lexicon lexicon, int firstWord, int unknown) {
    start = newState();
    entry = newState();
    wordEnd = newState();
    addPause();
    Chains chains = new Chains(lexicon, phones.silence());
    int word = firstWord;
    for (Lexicon.Entry one : lexicon.entries()) {
      for (List<Integer> way : one.pronunciations()) {
        if (way.size() == 1) {
          addSinglePhone(one, way.get(0), word, chains);
        } else {
          addPhones(one, way, word, chains);
        }
      }
      word++;
    }
    addUnknown(unknown);
    BitSet ends = new BitSet();
    ends.set(start);
    ends.set(entry);
    ends.set(wordEnd);
    return new WordGraph(states, arcs, ends).connected();
  }

  private void addPause() {
    join(start, entry, 0, noPauseCost());
    int silence = phones.silence();
    Exit exit =
        hear(
            start,
            KaldiPhones.SILENCE,
            variant(silence),
            0,
            -Math.log(settings.silenceProbability()));
    join(exit.state(), entry, exit.cost(), 0);
    join(wordEnd, start, 0, 0);
  }

  private void addUnknown(int unknown) {
    int inside = newState();
    double cost = PHONE_CHOICE_COST + settings.unknownPhoneCost();
    for (int phone : phones.speech()) {
      Variant bare = variant(phone);
      Exit first = hear(entry, numbers.number(phone, Position.BEGIN), bare, unknown, cost);
      join(first.state(), inside, first.cost(), 0);
      Exit more = hear(inside, numbers.number(phone, Position.INTERNAL), bare, 0, cost);
      join(more.state(), inside, more.cost(), 0);
      Exit last = hear(inside, numbers.number(phone, Position.END), bare, 0, cost);
      join(last.state(), wordEnd, last.cost(), 0);
    }
  }

  private void addPhones(Lexicon.Entry one, List<Integer> way, int word, Chains chains) {
    int last = way.size() - 1;
    int current = newState();
    addFirst(one, way, word, chains.before(one), current);
    double leave = 0;
    for (int i = 1; i < last; i++) {
      Variant variant = variant(Position.INTERNAL, way.get(i), way.get(i - 1), way.get(i + 1));
      int phone = numbers.number(way.get(i), Position.INTERNAL);
      Exit exit = hear(new Exit(current, leave), phone, variant, 0, 0);
      current = exit.state();
      leave = exit.cost();
    }
    addLast(one, way, chains.after(one), new Exit(current, leave));
  }

  private void addFirst(
      Lexicon.Entry one, List<Integer> way, int word, List<Integer> before, int target) {
    int first = way.get(0);
    Map<Variant, List<Integer>> groups = new LinkedHashMap<>();
    for (int left : before) {
      Variant variant = variant(Position.BEGIN, first, left, way.get(1));
      groups.computeIfAbsent(variant, v -> new ArrayList<>()).add(left);
    }
    groups.forEach(
        (variant, lefts) -> {
          int from = into(one, lefts, first);
          Exit exit =
              hear(from, numbers.number(first, Position.BEGIN), variant, word, settings.wordCost());
          join(exit.state(), target, exit.cost(), 0);
        });
  }

  /** One state for all neighbours that ask for the same variant. */
  private int into(Lexicon.Entry one, List<Integer> lefts, int first) {
    if (lefts.size() == 1) {
      return wayIn(one, lefts.get(0), first);
    }
    int shared = newState();
    for (int left : lefts) {
      join(wayIn(one, left, first), shared, 0, 0);
    }
    return shared;
  }

  private void addLast(Lexicon.Entry one, List<Integer> way, List<Integer> after, Exit from) {
    int last = way.get(way.size() - 1);
    Map<Variant, List<Integer>> groups = new LinkedHashMap<>();
    for (int right : after) {
      Variant variant = variant(Position.END, last, way.get(way.size() - 2), right);
      groups.computeIfAbsent(variant, v -> new ArrayList<>()).add(right);
    }
    groups.forEach(
        (variant, rights) -> {
          Exit exit = hear(from, numbers.number(last, Position.END), variant, 0, 0);
          rights.forEach(right -> wayOut(one, exit, last, right));
        });
  }

  /** A word of one phone: both its neighbours choose the variant. */
  private void addSinglePhone(Lexicon.Entry one, int phone, int word, Chains chains) {
    for (int left : chains.before(one)) {
      Map<Variant, List<Integer>> groups = new LinkedHashMap<>();
      for (int right : chains.after(one)) {
        Variant variant = variant(Position.SINGLE, phone, left, right);
        groups.computeIfAbsent(variant, v -> new ArrayList<>()).add(right);
      }
      int from = wayIn(one, left, phone);
      groups.forEach(
          (variant, rights) -> {
            int number = numbers.number(phone, Position.SINGLE);
            Exit exit = hear(from, number, variant, word, settings.wordCost());
            rights.forEach(right -> wayOut(one, exit, phone, right));
          });
    }
  }

  private int wayIn(Lexicon.Entry one, int left, int first) {
    return left == phones.silence() ? entry : junction(one, left, first);
  }

  private void wayOut(Lexicon.Entry one, Exit exit, int last, int right) {
    if (right == phones.silence()) {
      join(exit.state(), wordEnd, exit.cost(), 0);
    } else {
      join(exit.state(), junction(one, last, right), exit.cost(), noPauseCost());
    }
  }

  private double noPauseCost() {
    return -Math.log(1 - settings.silenceProbability());
  }

  private int junction(Lexicon.Entry one, int last, int first) {
    return junctions.computeIfAbsent(new Meeting(one.chain(), last, first), m -> newState());
  }

  private Variant variant(Position position, int phone, int left, int right) {
    return variant(phones.find(position, phone, left, right));
  }

  private Variant variant(int phone) {
    List<Integer> senones = Arrays.stream(phones.senones(phone)).boxed().toList();
    return new Variant(senones, phones.transitionMatrix(phone));
  }

  private Exit hear(int from, int phone, Variant variant, int word, double cost) {
    return hear(new Exit(from, 0), phone, variant, word, cost);
  }

  private Exit hear(Exit from, int phone, Variant variant, int word, double cost) {
    double scale = settings.transitionScale();
    int current = from.state();
    double enter = from.cost() * scale + cost;
    for (int state = 0; state < PhoneTable.STATES; state++) {
      int next = newState();
      int senone = variant.senones().get(state);
      arcs.add(new Arc(current, next, phone, state, senone, false, state == 0 ? word : 0, enter));
      double stay = transitions.stayCost(variant.matrix(), state) * scale;
      arcs.add(new Arc(next, next, phone, state, senone, true, 0, stay));
      enter = transitions.leaveCost(variant.matrix(), state) * scale;
      current = next;
    }
    return new Exit(current, transitions.leaveCost(variant.matrix(), PhoneTable.STATES - 1));
  }

  private void join(int from, int to, double leave, double cost) {
    arcs.add(Arc.silent(from, to, leave * settings.transitionScale() + cost));
  }

  private int newState() {
    return states++;
  }
}
