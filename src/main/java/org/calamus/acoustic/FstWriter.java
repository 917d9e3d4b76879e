package org.calamus.acoustic;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Writes a transducer in OpenFST's binary "vector" format over "standard" arcs.
 *
 * <p>A header names the format and counts states and arcs; then each state gives its final weight,
 * its number of arcs, and the arcs. Arcs are sorted by output label, as composing on the output
 * side needs; the header says so, or the recogniser would sort them again at each start.
 */
final class FstWriter {

  private static final int MAGIC = 2125659606;
  private static final int VERSION = 2;
  private static final long EXPANDED_AND_MUTABLE = 0x3L;
  private static final long OUTPUT_SORTED = 0x40000000L;
  private static final long INPUT_SORTED = 0x10000000L;
  private static final int ARC_BYTES = 16;
  private static final int STATE_BYTES = 12;

  /** An arc: labels, weight and where it leads. */
  record FstArc(int input, int output, float weight, int to) {}

  private final List<List<FstArc>> states = new ArrayList<>();
  private final List<Boolean> ends = new ArrayList<>();

  /** Adds the next state; the first is the start. */
  void add(List<FstArc> arcs, boolean end) {
    List<FstArc> sorted = new ArrayList<>(arcs);
    sorted.sort(
        Comparator.comparingInt(FstArc::output)
            .thenComparingInt(FstArc::input)
            .thenComparingInt(FstArc::to));
    states.add(sorted);
    ends.add(end);
  }

  /** Gives the file's bytes. */
  byte[] bytes() {
    byte[] type = "vector".getBytes(StandardCharsets.US_ASCII);
    byte[] arcType = "standard".getBytes(StandardCharsets.US_ASCII);
    int arcCount = states.stream().mapToInt(List::size).sum();
    int header = 5 * Integer.BYTES + type.length + arcType.length + 4 * Long.BYTES;
    ByteBuffer out =
        ByteBuffer.allocate(header + STATE_BYTES * states.size() + ARC_BYTES * arcCount)
            .order(ByteOrder.LITTLE_ENDIAN);
    out.putInt(MAGIC).putInt(type.length).put(type).putInt(arcType.length).put(arcType);
    out.putInt(VERSION).putInt(0).putLong(properties());
    out.putLong(0).putLong(states.size()).putLong(arcCount);
    for (int state = 0; state < states.size(); state++) {
      out.putFloat(ends.get(state) ? 0f : Float.POSITIVE_INFINITY);
      out.putLong(states.get(state).size());
      for (FstArc arc : states.get(state)) {
        out.putInt(arc.input()).putInt(arc.output()).putFloat(arc.weight()).putInt(arc.to());
      }
    }
    return out.array();
  }

  private long properties() {
    boolean inputSorted =
        states.stream()
            .allMatch(
                arcs -> {
                  for (int i = 1; i < arcs.size(); i++) {
                    if (arcs.get(i).input() < arcs.get(i - 1).input()) {
                      return false;
                    }
                  }
                  return true;
                });
    return EXPANDED_AND_MUTABLE | OUTPUT_SORTED | (inputSorted ? INPUT_SORTED : 0);
  }
}
