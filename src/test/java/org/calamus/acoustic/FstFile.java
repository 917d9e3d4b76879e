package org.calamus.acoustic;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a transducer in OpenFST's binary vector format.
 *
 * @param arcs the arcs of each state; state 0 is the start
 * @param ends final weight of each state, infinite where nothing may end
 */
public record FstFile(List<List<FstArc>> arcs, List<Float> ends) {

  /** An arc. */
  public record FstArc(int input, int output, float weight, int to) {}

  /** Reads a file's bytes. */
  public static FstFile read(byte[] bytes) {
    ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    require(in.getInt() == 0x7eb2fdd6, "magic");
    require(text(in).equals("vector") && text(in).equals("standard"), "type");
    require(in.getInt() == 2 && in.getInt() == 0, "version and flags");
    in.getLong();
    require(in.getLong() == 0, "start");
    long states = in.getLong();
    long arcCount = in.getLong();
    List<List<FstArc>> arcs = new ArrayList<>();
    List<Float> ends = new ArrayList<>();
    for (long state = 0; state < states; state++) {
      ends.add(in.getFloat());
      List<FstArc> out = new ArrayList<>();
      for (long n = in.getLong(); n > 0; n--) {
        out.add(new FstArc(in.getInt(), in.getInt(), in.getFloat(), in.getInt()));
      }
      arcCount -= out.size();
      arcs.add(out);
    }
    require(arcCount == 0 && !in.hasRemaining(), "counts");
    return new FstFile(arcs, ends);
  }

  private static String text(ByteBuffer in) {
    byte[] text = new byte[in.getInt()];
    in.get(text);
    return new String(text, StandardCharsets.US_ASCII);
  }

  private static void require(boolean holds, String what) {
    if (!holds) {
      throw new AssertionError("bad " + what);
    }
  }
}
