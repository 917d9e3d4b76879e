package org.calamus.acoustic;

import static org.calamus.acoustic.FeatureParameters.COEFFICIENTS;
import static org.calamus.acoustic.FeatureParameters.STREAMS;

/** Means or variances: a vector for each codebook, stream and density. */
final class Gaussians {

  /** Densities in a codebook. */
  static final int DENSITIES = 128;

  /** Least variance, as in the training of the tables. */
  static final double LEAST_VARIANCE = 1e-4;

  private final float[] values;

  /** Reads the table. */
  Gaussians(String table, byte[] bytes, int codebooks) {
    TableReader in = TableReader.ofS3(table, bytes);
    int start = in.position();
    in.require(in.int32() == codebooks, "has not one codebook for each phone");
    in.require(in.int32() == STREAMS, "has another number of streams");
    in.require(in.int32() == DENSITIES, "has another number of densities");
    for (int stream = 0; stream < STREAMS; stream++) {
      in.require(in.int32() == COEFFICIENTS, "has streams of another width");
    }
    int expected = codebooks * STREAMS * DENSITIES * COEFFICIENTS;
    in.require(in.int32() == expected, "has another number of values than its sizes give");
    values = in.floats(expected);
    in.endS3(start);
  }

  double value(int codebook, int stream, int density, int coefficient) {
    return values[
        ((codebook * STREAMS + stream) * DENSITIES + density) * COEFFICIENTS + coefficient];
  }
}
