package org.calamus.acoustic;

import java.util.Map;

/** What a network's node reads: Append, Sum, Offset, or another node. */
final class KaldiDescriptor {

  private final String text;
  private final double[][] frames;
  private final int t;
  private final Map<String, float[]> done;
  private int at;

  KaldiDescriptor(String text, double[][] frames, int t, Map<String, float[]> done) {
    this.text = text;
    this.frames = frames;
    this.t = t;
    this.done = done;
  }

  float[] value() {
    int start = at;
    while (at < text.length() && "(,) ".indexOf(text.charAt(at)) < 0) {
      at++;
    }
    String name = text.substring(start, at);
    if (at == text.length() || text.charAt(at) != '(') {
      return name.equals("input") ? frame(0) : done.get(name);
    }
    at++;
    return name.equals("Offset") ? offset() : joined(name);
  }

  private float[] offset() {
    int comma = text.indexOf(',', at);
    int close = text.indexOf(')', at);
    if (!text.substring(at, comma).equals("input")) {
      throw new AssertionError("offset of " + text.substring(at, comma));
    }
    at = close + 1;
    return frame(Integer.parseInt(text.substring(comma + 1, close).strip()));
  }

  private float[] joined(String name) {
    float[] all = value();
    while (text.charAt(at) == ',') {
      at += 2;
      float[] next = value();
      all = name.equals("Sum") ? sum(all, next) : append(all, next);
    }
    at++;
    return all;
  }

  private float[] frame(int offset) {
    double[] frame = frames[Math.min(Math.max(t + offset, 0), frames.length - 1)];
    float[] values = new float[frame.length];
    for (int i = 0; i < frame.length; i++) {
      values[i] = (float) frame[i];
    }
    return values;
  }

  private static float[] sum(float[] a, float[] b) {
    float[] sum = a.clone();
    for (int i = 0; i < a.length; i++) {
      sum[i] += b[i];
    }
    return sum;
  }

  private static float[] append(float[] a, float[] b) {
    float[] both = new float[a.length + b.length];
    System.arraycopy(a, 0, both, 0, a.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }
}
