package org.calamus.acoustic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * The states of the graph and the steps between them, phone by phone.
 *
 * <p>The step into a state's node is the leaving of the state before (its transition in the
 * recogniser's terms is the "forward" one), and the node carries the state's loop: the order the
 * recogniser's word alignment expects.
 */
final class PhoneSteps {

  private final PhoneTable phones;
  private final TransitionMatrices transitions;
  private final Settings settings;
  private final List<Arc> arcs = new ArrayList<>();
  private int states;

  /** A variant of a phone: what is heard and how long it lasts. */
  record Variant(List<Integer> senones, int matrix) {}

  /** Where a phone ends, and the cost of leaving it. */
  record Exit(int state, double cost) {}

  PhoneSteps(PhoneTable phones, TransitionMatrices transitions, Settings settings) {
    this.phones = phones;
    this.transitions = transitions;
    this.settings = settings;
  }

  /** All of them, without those that lead nowhere. */
  WordGraph graph(BitSet ends) {
    return new WordGraph(states, arcs, ends).connected();
  }

  /** The phone between its neighbours. */
  Variant variant(Position position, int phone, int left, int right) {
    return variant(phones.find(position, phone, left, right));
  }

  /** The phone whatever stands beside it. */
  Variant variant(int phone) {
    List<Integer> senones = Arrays.stream(phones.senones(phone)).boxed().toList();
    return new Variant(senones, phones.transitionMatrix(phone));
  }

  /** Hears a phone from a state on; its first step has a word's label and a cost. */
  Exit hear(int from, int phone, Variant variant, int word, double cost) {
    return hear(new Exit(from, 0), phone, variant, word, cost);
  }

  /** Hears a phone behind another one. */
  Exit hear(Exit from, int phone, Variant variant, int word, double cost) {
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

  /** A step in which nothing is heard, with the cost of leaving a phone and one of its own. */
  void join(int from, int to, double leave, double cost) {
    arcs.add(Arc.silent(from, to, leave * settings.transitionScale() + cost));
  }

  /** A further state. */
  int newState() {
    return states++;
  }
}
