package org.calamus.acoustic;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * The tables' mixture model, read and computed the plain way in double precision: what the network
 * is compared with. Shares no code with the builder.
 */
final class MixtureModel {

  private static final int BOOKS = 42;
  private static final int STREAMS = 3;
  private static final int DENSITIES = 128;
  private static final int SIZE = 13;

  private final float[] means;
  private final float[] variances;
  private final byte[] sendump;
  private final int weightsAt;
  private final int columns;

  MixtureModel(AcousticTables tables) {
    means = values(tables.means());
    variances = values(tables.variances());
    sendump = tables.sendump();
    ByteBuffer in = ByteBuffer.wrap(sendump).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < 2; i++) {
      int skipped = in.getInt();
      in.position(in.position() + skipped);
    }
    for (int n = in.getInt(); n != 0; n = in.getInt()) {
      in.position(in.position() + n);
    }
    in.getInt();
    columns = in.getInt();
    weightsAt = in.position();
  }

  /** The last values of a table are its numbers, however long its header is. */
  private static float[] values(byte[] table) {
    int count = BOOKS * STREAMS * DENSITIES * SIZE;
    int header = new String(table, 0, 200, StandardCharsets.ISO_8859_1).indexOf("endhdr\n") + 7;
    int start = header + 4 * (1 + 3 + STREAMS + 1);
    float[] values = new float[count];
    ByteBuffer.wrap(table)
        .order(ByteOrder.LITTLE_ENDIAN)
        .position(start)
        .slice()
        .order(ByteOrder.LITTLE_ENDIAN)
        .asFloatBuffer()
        .get(values);
    return values;
  }

  /** Coefficients, their differences, and the differences of those, around a frame. */
  static double[][] streams(double[][] frames, int t) {
    double[][] streams = new double[STREAMS][SIZE];
    for (int i = 0; i < SIZE; i++) {
      streams[0][i] = at(frames, t, i);
      streams[1][i] = at(frames, t + 2, i) - at(frames, t - 2, i);
      streams[2][i] =
          (at(frames, t + 3, i) - at(frames, t - 1, i))
              - (at(frames, t + 1, i) - at(frames, t - 3, i));
    }
    return streams;
  }

  private static double at(double[][] frames, int t, int i) {
    return frames[Math.min(Math.max(t, 0), frames.length - 1)][i];
  }

  /** Log densities of a codebook's Gaussians in a stream. */
  double[] logDensities(int book, int stream, double[] x) {
    double[] logs = new double[DENSITIES];
    for (int k = 0; k < DENSITIES; k++) {
      int from = ((book * STREAMS + stream) * DENSITIES + k) * SIZE;
      double sum = 0;
      for (int i = 0; i < SIZE; i++) {
        double variance = Math.max(variances[from + i], 1e-4);
        double off = x[i] - means[from + i];
        sum += Math.log(2 * Math.PI * variance) + off * off / variance;
      }
      logs[k] = -0.5 * sum;
    }
    return logs;
  }

  /** Mixture weights of a senone in a stream. */
  double[] weights(int senone, int stream) {
    double[] weights = new double[DENSITIES];
    double sum = 0;
    for (int k = 0; k < DENSITIES; k++) {
      int level = sendump[weightsAt + (stream * DENSITIES + k) * columns + senone] & 0xff;
      weights[k] = Math.pow(1.0001, -1024.0 * level);
      sum += weights[k];
    }
    for (int k = 0; k < DENSITIES; k++) {
      weights[k] /= sum;
    }
    return weights;
  }

  /** Log of a weighted sum of densities that are given as logs. */
  static double logMixture(double[] weights, double[] logs) {
    double peak = Double.NEGATIVE_INFINITY;
    for (double log : logs) {
      peak = Math.max(peak, log);
    }
    double sum = 0;
    for (int k = 0; k < logs.length; k++) {
      sum += weights[k] * Math.exp(logs[k] - peak);
    }
    return Math.log(sum) + peak;
  }
}
