package org.calamus.acoustic;

import static org.calamus.acoustic.FeatureParameters.STREAMS;
import static org.calamus.acoustic.Gaussians.DENSITIES;

import java.nio.charset.StandardCharsets;

/**
 * How much of each density goes into a senone. The table keeps one byte a weight: how many times
 * 1024 powers of 1.0001 it lies below one.
 */
final class MixtureWeights {

  private static final String TABLE = "sendump";
  private static final double LOG_STEP = -1024 * Math.log(1.0001);
  private static final int LONGEST_TEXT = 1 << 16;

  private final byte[] levels;
  private final int columns;

  /** Reads the table. */
  MixtureWeights(byte[] bytes, int senones) {
    TableReader in = new TableReader(TABLE, bytes);
    in.bytes(in.count("bytes of title", 1, LONGEST_TEXT));
    in.bytes(in.count("bytes of source", 1, LONGEST_TEXT));
    for (int n = nextText(in); n != 0; n = nextText(in)) {
      String text = new String(in.bytes(n), StandardCharsets.ISO_8859_1);
      in.require(
          !text.startsWith("cluster_count") || text.trim().endsWith(" 0"),
          "holds clustered weights");
    }
    in.require(in.int32() == DENSITIES, "has another number of densities");
    columns = in.count("senones", senones, 65536);
    levels = in.bytes(STREAMS * DENSITIES * columns);
  }

  private static int nextText(TableReader in) {
    return in.count("bytes of text", 0, LONGEST_TEXT);
  }

  /** Weights of a senone's densities in a stream; they sum to one. */
  double[] of(int senone, int stream) {
    double[] weights = new double[DENSITIES];
    double sum = 0;
    for (int density = 0; density < DENSITIES; density++) {
      int level = levels[(stream * DENSITIES + density) * columns + senone] & 0xff;
      weights[density] = Math.exp(LOG_STEP * level);
      sum += weights[density];
    }
    for (int density = 0; density < DENSITIES; density++) {
      weights[density] /= sum;
    }
    return weights;
  }
}
