package org.calamus.acoustic;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The recogniser's numbers for transitions: two for each combination of phone, state and output,
 * the loop first.
 */
final class TransitionIds {

  /**
   * A combination in use.
   *
   * @param phone the recogniser's number of the phone
   * @param state which of its states
   * @param pdf output of the network
   */
  record Tuple(int phone, int state, int pdf) {}

  private final List<Tuple> tuples;
  private final Map<Tuple, Integer> places = new HashMap<>();
  private final PdfLayout layout;

  TransitionIds(WordGraph graph, PdfLayout layout) {
    this.layout = layout;
    tuples =
        new ArrayList<>(
            graph.arcs().stream()
                .filter(Arc::isHeard)
                .map(this::tuple)
                .distinct()
                .sorted(
                    Comparator.comparingInt(Tuple::phone)
                        .thenComparingInt(Tuple::state)
                        .thenComparingInt(Tuple::pdf))
                .toList());
    for (int i = 0; i < tuples.size(); i++) {
      places.put(tuples.get(i), i);
    }
  }

  private Tuple tuple(Arc arc) {
    return new Tuple(arc.phone(), arc.state(), layout.pdf(arc.senone()));
  }

  /** The combinations in the order of their numbers. */
  List<Tuple> tuples() {
    return tuples;
  }

  /** Number of the transition an arc stands for; 0 when nothing is heard. */
  int of(Arc arc) {
    if (!arc.isHeard()) {
      return 0;
    }
    return 2 * places.get(tuple(arc)) + (arc.loop() ? 1 : 2);
  }
}
