package org.calamus.acoustic;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Reads a finished acoustic model file and computes its network, in the components' published
 * meaning and single precision. Shares no code with the writer.
 */
public final class KaldiNetwork {

  private static final double NORM_FLOOR = Math.pow(2, -66);

  /** A component: its kind and what the file gives for it. */
  record Component(String kind, Map<String, Object> fields) {

    float[] floats(String name) {
      return (float[]) fields.get(name);
    }

    int number(String name) {
      return (Integer) fields.get(name);
    }
  }

  private final ByteBuffer in;
  private final Map<String, Component> components = new HashMap<>();
  private final Map<String, Map<String, String>> nodes = new LinkedHashMap<>();
  private final int[][] tuples;

  /** Reads the file am/final.mdl. */
  public KaldiNetwork(byte[] model) {
    in = ByteBuffer.wrap(model).order(ByteOrder.LITTLE_ENDIAN);
    if (in.get() != 0 || in.get() != 'B') {
      throw new AssertionError("not binary");
    }
    expect("<TransitionModel>");
    expect("<Topology>");
    skipTopology();
    expect("<Triples>");
    tuples = new int[number()][];
    for (int i = 0; i < tuples.length; i++) {
      tuples[i] = new int[] {number(), number(), number()};
    }
    expect("</Triples>");
    expect("<LogProbs>");
    if (vector().length != 2 * tuples.length + 1) {
      throw new AssertionError("not one log probability for each transition");
    }
    expect("</LogProbs>");
    expect("</TransitionModel>");
    expect("<Nnet3>");
    readNodes();
    expect("<NumComponents>");
    int count = number();
    for (int i = 0; i < count; i++) {
      readComponent();
    }
    expect("</Nnet3>");
    expect("<LeftContext>");
    number();
    expect("<RightContext>");
    number();
    expect("<Priors>");
    if (vector().length != 0 || in.hasRemaining()) {
      throw new AssertionError("something follows the network");
    }
  }

  /** Output of the network that a transition number stands for. */
  public int pdf(int transition) {
    return tuples[(transition - 1) / 2][2];
  }

  /** Computes all outputs for a frame. */
  public float[] outputs(double[][] frames, int t) {
    Map<String, float[]> done = new HashMap<>();
    float[] result = null;
    for (Map.Entry<String, Map<String, String>> node : nodes.entrySet()) {
      Map<String, String> line = node.getValue();
      if (line.containsKey("component")) {
        float[] input = new KaldiDescriptor(line.get("input"), frames, t, done).value();
        done.put(node.getKey(), apply(components.get(line.get("component")), input));
      } else if (line.containsKey("input-node")) {
        float[] whole = done.get(line.get("input-node"));
        float[] part = new float[Integer.parseInt(line.get("dim"))];
        System.arraycopy(whole, Integer.parseInt(line.get("dim-offset")), part, 0, part.length);
        done.put(node.getKey(), part);
      } else if (line.containsKey("objective")) {
        result = new KaldiDescriptor(line.get("input"), frames, t, done).value();
      }
    }
    return result;
  }

  private static float[] apply(Component component, float[] x) {
    return switch (component.kind) {
      case "FixedAffineComponent" -> affine(component, x, 1);
      case "BlockAffineComponent" -> affine(component, x, component.number("<NumBlocks>"));
      case "ElementwiseProductComponent" -> product(x, component.number("<OutputDim>"));
      case "MaxpoolingComponent" -> maximum(x, component.number("<PoolZSize>"));
      case "SoftmaxComponent" -> softmax(x);
      case "NormalizeComponent" -> normalise(x);
      case "SumGroupComponent" -> pairSums(x);
      default -> throw new AssertionError(component.kind);
    };
  }

  private static float[] affine(Component component, float[] x, int blocks) {
    float[] matrix = component.floats("<LinearParams>");
    float[] y = component.floats("<BiasParams>").clone();
    int columns = matrix.length / y.length;
    for (int row = 0; row < y.length; row++) {
      int from = row / (y.length / blocks) * columns;
      float sum = 0;
      for (int i = 0; i < columns; i++) {
        sum += matrix[row * columns + i] * x[from + i];
      }
      y[row] += sum;
    }
    return y;
  }

  private static float[] product(float[] x, int size) {
    float[] y = new float[size];
    for (int i = 0; i < size; i++) {
      y[i] = x[i];
      for (int k = i + size; k < x.length; k += size) {
        y[i] *= x[k];
      }
    }
    return y;
  }

  private static float[] maximum(float[] x, int pool) {
    float[] y = new float[x.length / pool];
    for (int i = 0; i < x.length; i++) {
      y[i / pool] = i % pool == 0 ? x[i] : Math.max(y[i / pool], x[i]);
    }
    return y;
  }

  private static float[] softmax(float[] x) {
    float peak = Float.NEGATIVE_INFINITY;
    for (float value : x) {
      peak = Math.max(peak, value);
    }
    double sum = 0;
    float[] y = new float[x.length];
    for (int i = 0; i < x.length; i++) {
      y[i] = (float) Math.exp(x[i] - peak);
      sum += y[i];
    }
    for (int i = 0; i < x.length; i++) {
      y[i] = (float) Math.max(y[i] / sum, 1e-20);
    }
    return y;
  }

  private static float[] normalise(float[] x) {
    float[] y = new float[2 * x.length];
    for (int i = 0; i < x.length; i++) {
      double square = Math.max((double) x[i] * x[i], NORM_FLOOR);
      y[2 * i] = (float) (x[i] / Math.sqrt(square));
      y[2 * i + 1] = (float) (0.5 * Math.log(square));
    }
    return y;
  }

  private static float[] pairSums(float[] x) {
    float[] y = new float[x.length / 2];
    for (int i = 0; i < y.length; i++) {
      y[i] = x[2 * i] + x[2 * i + 1];
    }
    return y;
  }

  private void readNodes() {
    if (in.get() != '\n') {
      throw new AssertionError("no configuration");
    }
    for (String line = line(); !line.isEmpty(); line = line()) {
      nodes.put(keys(line).get("name"), keys(line));
    }
  }

  private static Map<String, String> keys(String line) {
    Map<String, String> keys = new HashMap<>();
    String[] parts = line.split(" (?=[a-z-]+=)");
    for (String part : parts) {
      int equals = part.indexOf('=');
      if (equals > 0) {
        keys.put(part.substring(0, equals), part.substring(equals + 1));
      }
    }
    return keys;
  }

  private void readComponent() {
    expect("<ComponentName>");
    String name = token();
    String kind = token().replaceAll("[<>]", "");
    Map<String, Object> fields = new HashMap<>();
    for (String field = token(); !field.equals("</" + kind + ">"); field = token()) {
      fields.put(field, value(field));
    }
    components.put(name, new Component(kind, fields));
  }

  private Object value(String field) {
    return switch (field) {
      case "<LinearParams>" -> matrix();
      case "<BiasParams>", "<ValueAvg>", "<DerivAvg>" -> vector();
      case "<LearningRate>", "<TargetRms>", "<Count>" -> real();
      case "<AddLogStddev>" -> token();
      case "<Sizes>" -> numbers();
      default -> number();
    };
  }

  private void skipTopology() {
    numbers();
    numbers();
    int entries = number();
    for (int e = 0; e < entries; e++) {
      int states = number();
      for (int s = 0; s < states; s++) {
        number();
        int transitions = number();
        for (int i = 0; i < transitions; i++) {
          number();
          real();
        }
      }
    }
    expect("</Topology>");
  }

  private void expect(String token) {
    String found = token();
    if (!found.equals(token)) {
      throw new AssertionError("expected " + token + ", found " + found);
    }
  }

  private String token() {
    StringBuilder token = new StringBuilder();
    for (char c = (char) in.get(); c != ' '; c = (char) in.get()) {
      token.append(c);
    }
    return token.toString();
  }

  private String line() {
    StringBuilder line = new StringBuilder();
    for (char c = (char) in.get(); c != '\n'; c = (char) in.get()) {
      line.append(c);
    }
    return line.toString();
  }

  private int number() {
    if (in.get() != 4) {
      throw new AssertionError("not a number of four bytes");
    }
    return in.getInt();
  }

  private float real() {
    return Float.intBitsToFloat(number());
  }

  private int[] numbers() {
    int[] numbers = new int[number()];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = in.getInt();
    }
    return numbers;
  }

  private float[] vector() {
    expect("FV");
    return floats(number());
  }

  private float[] matrix() {
    expect("FM");
    return floats(number() * number());
  }

  private float[] floats(int count) {
    float[] floats = new float[count];
    for (int i = 0; i < count; i++) {
      floats[i] = in.getFloat();
    }
    return floats;
  }
}
