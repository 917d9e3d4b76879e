package org.calamus.acoustic;

import java.util.stream.IntStream;

/**
 * Writes the recogniser's transition model: one topology for all phones, and the combinations of
 * phone, state and output that the graph's transition numbers stand for.
 *
 * <p>The graph carries the real transition costs, so the probabilities here are even.
 */
final class TransitionModel {

  private static final float EVEN = 0.5f;

  private TransitionModel() {}

  static void write(KaldiBytes out, int phones, TransitionIds ids) {
    out.token("<TransitionModel>").token("<Topology>");
    out.numbers(IntStream.rangeClosed(1, phones).toArray());
    out.numbers(IntStream.rangeClosed(0, phones).map(phone -> phone == 0 ? -1 : 0).toArray());
    out.number(1).number(PhoneTable.STATES + 1);
    for (int state = 0; state < PhoneTable.STATES; state++) {
      out.number(state).number(2);
      out.number(state).number(EVEN).number(state + 1).number(EVEN);
    }
    out.number(-1).number(0);
    out.token("</Topology>").token("<Triples>").number(ids.tuples().size());
    for (TransitionIds.Tuple tuple : ids.tuples()) {
      out.number(tuple.phone()).number(tuple.state()).number(tuple.pdf());
    }
    out.token("</Triples>").token("<LogProbs>");
    float[] logs = new float[2 * ids.tuples().size() + 1];
    for (int i = 1; i < logs.length; i++) {
      logs[i] = (float) Math.log(EVEN);
    }
    out.vector(logs).token("</LogProbs>").token("</TransitionModel>");
  }
}
