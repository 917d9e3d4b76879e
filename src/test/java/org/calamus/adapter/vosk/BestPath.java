package org.calamus.adapter.vosk;

import java.util.Arrays;
import java.util.List;
import org.calamus.acoustic.FstFile;
import org.calamus.acoustic.KaldiNetwork;

/**
 * The best way through a graph of sounds for given words and frames, found by trying all of them:
 * what the recogniser's beam search should find too.
 */
final class BestPath {

  private static final double NONE = Double.POSITIVE_INFINITY;

  private final FstFile graph;
  private final KaldiNetwork network;
  private final int[] words;
  private final double acousticScale;
  private double[] cost;
  private double[] graphCost;
  private double[] soundCost;

  private BestPath(FstFile graph, KaldiNetwork network, int[] words, double acousticScale) {
    this.graph = graph;
    this.network = network;
    this.words = words;
    this.acousticScale = acousticScale;
  }

  /** Score of the best path: how much sound and graph each weigh is the recogniser's own affair. */
  record Score(double graph, double sound) {}

  static Score find(
      FstFile graph, KaldiNetwork network, int[] words, double acousticScale, double[][] frames) {
    BestPath path = new BestPath(graph, network, words, acousticScale);
    path.start();
    for (int t = 0; t < frames.length; t++) {
      path.hear(network.outputs(frames, t));
      path.step();
    }
    return path.end();
  }

  private int place(int state, int said) {
    return state * (words.length + 1) + said;
  }

  private void start() {
    clear();
    cost[place(0, 0)] = 0;
    step();
  }

  private void clear() {
    int size = graph.arcs().size() * (words.length + 1);
    cost = new double[size];
    Arrays.fill(cost, NONE);
    graphCost = new double[size];
    soundCost = new double[size];
  }

  /** Takes arcs on which nothing is heard, as long as that makes anything cheaper. */
  private void step() {
    boolean better = true;
    while (better) {
      better = false;
      for (int state = 0; state < graph.arcs().size(); state++) {
        for (FstFile.FstArc arc : graph.arcs().get(state)) {
          for (int said = 0; arc.input() == 0 && said <= words.length; said++) {
            int from = place(state, said);
            better |= relax(arc, said, cost[from], graphCost[from], soundCost[from], 0);
          }
        }
      }
    }
  }

  private void hear(float[] outputs) {
    double[] oldCost = cost;
    double[] oldGraph = graphCost;
    double[] oldSound = soundCost;
    clear();
    for (int state = 0; state < graph.arcs().size(); state++) {
      for (FstFile.FstArc arc : graph.arcs().get(state)) {
        for (int said = 0; arc.input() != 0 && said <= words.length; said++) {
          int from = place(state, said);
          if (oldCost[from] < NONE) {
            double sound = -outputs[network.pdf(arc.input())];
            relax(arc, said, oldCost[from], oldGraph[from], oldSound[from], sound);
          }
        }
      }
    }
  }

  private boolean relax(
      FstFile.FstArc arc,
      int said,
      double oldCost,
      double oldGraph,
      double oldSound,
      double sound) {
    int next = said;
    if (arc.output() != 0) {
      if (said == words.length || words[said] != arc.output()) {
        return false;
      }
      next = said + 1;
    }
    double total = oldCost + arc.weight() + acousticScale * sound;
    int to = place(arc.to(), next);
    if (total >= cost[to] - 1e-9) {
      return false;
    }
    cost[to] = total;
    graphCost[to] = oldGraph + arc.weight();
    soundCost[to] = oldSound + sound;
    return true;
  }

  private Score end() {
    int best = -1;
    List<Float> ends = graph.ends();
    for (int state = 0; state < ends.size(); state++) {
      int at = place(state, words.length);
      if (ends.get(state) == 0 && cost[at] < NONE && (best < 0 || cost[at] < cost[best])) {
        best = at;
      }
    }
    return new Score(graphCost[best], soundCost[best]);
  }
}
