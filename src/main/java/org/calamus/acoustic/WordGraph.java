package org.calamus.acoustic;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;

/**
 * All ways to say any words after each other; state 0 is the start.
 *
 * @param states number of states
 * @param arcs the steps between them
 * @param ends states where an utterance may end
 */
record WordGraph(int states, List<Arc> arcs, BitSet ends) {

  /** Leaves out states that cannot be reached, or from which no end can be. */
  WordGraph connected() {
    BitSet start = new BitSet();
    start.set(0);
    BitSet useful = reach(start, true);
    useful.and(reach(ends, false));
    int[] renumbered = new int[states];
    int count = 0;
    for (int state = useful.nextSetBit(0); state >= 0; state = useful.nextSetBit(state + 1)) {
      renumbered[state] = count++;
    }
    List<Arc> kept = new ArrayList<>(arcs.size());
    for (Arc arc : arcs) {
      if (useful.get(arc.from()) && useful.get(arc.to())) {
        kept.add(arc.between(renumbered[arc.from()], renumbered[arc.to()]));
      }
    }
    BitSet keptEnds = new BitSet();
    ends.stream().filter(useful::get).forEach(end -> keptEnds.set(renumbered[end]));
    return new WordGraph(count, kept, keptEnds);
  }

  private BitSet reach(BitSet from, boolean forward) {
    List<List<Integer>> next = new ArrayList<>(states);
    for (int state = 0; state < states; state++) {
      next.add(new ArrayList<>(2));
    }
    for (Arc arc : arcs) {
      next.get(forward ? arc.from() : arc.to()).add(forward ? arc.to() : arc.from());
    }
    BitSet seen = (BitSet) from.clone();
    Deque<Integer> open = new ArrayDeque<>();
    from.stream().forEach(open::add);
    while (!open.isEmpty()) {
      for (int state : next.get(open.remove())) {
        if (!seen.get(state)) {
          seen.set(state);
          open.add(state);
        }
      }
    }
    return seen;
  }

  /** The steps out of each state. */
  List<List<Arc>> byState() {
    List<List<Arc>> byState = new ArrayList<>(states);
    for (int state = 0; state < states; state++) {
      byState.add(new ArrayList<>());
    }
    arcs.forEach(arc -> byState.get(arc.from()).add(arc));
    return byState;
  }
}
