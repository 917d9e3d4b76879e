package org.calamus.acoustic;

/** How likely each state of a phone is to go on for another frame. */
final class TransitionMatrices {

  private static final String TABLE = "transition_matrices";
  private static final double LEAST = 1e-3;
  private static final double MOST = 0.999;

  private final double[][] stay;

  /** Reads the table. */
  TransitionMatrices(byte[] bytes) {
    TableReader in = TableReader.ofS3(TABLE, bytes);
    int start = in.position();
    int count = in.count("matrices", 1, 65535);
    int columns = PhoneTable.STATES + 1;
    in.require(
        in.int32() == PhoneTable.STATES && in.int32() == columns, "has matrices of another size");
    int expected = count * PhoneTable.STATES * columns;
    in.require(in.int32() == expected, "has another number of values than its sizes give");
    float[] values = in.floats(expected);
    in.endS3(start);
    stay = new double[count][PhoneTable.STATES];
    for (int i = 0; i < count * PhoneTable.STATES; i++) {
      double sum = 0;
      for (int k = 0; k < columns; k++) {
        sum += values[i * columns + k];
      }
      int state = i % PhoneTable.STATES;
      stay[i / PhoneTable.STATES][state] = values[i * columns + state] / Math.max(sum, 1e-9);
    }
  }

  int count() {
    return stay.length;
  }

  /** Cost of one more frame in a state: minus the log of the probability. */
  double stayCost(int matrix, int state) {
    return -Math.log(probability(matrix, state));
  }

  /** Cost of leaving a state. */
  double leaveCost(int matrix, int state) {
    return -Math.log(Math.max(1 - probability(matrix, state), LEAST));
  }

  // kept from 0 and 1, so that no path is impossible and none is free
  private double probability(int matrix, int state) {
    return Math.min(Math.max(stay[matrix][state], LEAST), MOST);
  }
}
