package org.calamus.acoustic;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/**
 * How the tables' features are computed, from the text table "feat.params".
 *
 * @param lowFrequency lower edge of the filter bank in Hz
 * @param highFrequency upper edge of the filter bank in Hz
 * @param filters number of filters
 * @param lifter cepstral lifter
 */
record FeatureParameters(int lowFrequency, int highFrequency, int filters, int lifter) {

  /** Cepstral coefficients in a frame. */
  static final int COEFFICIENTS = 13;

  /** Streams: the coefficients, their first and their second differences. */
  static final int STREAMS = 3;

  private static final String TABLE = "feat.params";

  /** Reads the table and refuses features that the network writer does not compute. */
  static FeatureParameters read(byte[] bytes) {
    TableReader reader = new TableReader(TABLE, bytes);
    Map<String, String> values = new HashMap<>();
    for (String line : new String(bytes, StandardCharsets.UTF_8).split("\\R")) {
      String[] parts = line.strip().split("\\s+", 2);
      if (parts.length == 2) {
        values.put(parts[0], parts[1]);
      }
    }
    expect(reader, values, "-feat", "1s_c_d_dd");
    expect(reader, values, "-svspec", "0-12/13-25/26-38");
    expect(reader, values, "-model", "ptm");
    expect(reader, values, "-varnorm", "no");
    return new FeatureParameters(
        number(reader, values, "-lowerf"),
        number(reader, values, "-upperf"),
        number(reader, values, "-nfilt"),
        number(reader, values, "-lifter"));
  }

  private static void expect(
      TableReader reader, Map<String, String> values, String name, String value) {
    reader.require(
        value.equals(values.get(name)),
        "has \"" + name + " " + values.get(name) + "\" instead of \"" + name + " " + value + "\"");
  }

  private static int number(TableReader reader, Map<String, String> values, String name) {
    String text = values.getOrDefault(name, "");
    reader.require(text.matches("[0-9]{1,5}"), "has no whole number for \"" + name + "\"");
    return Integer.parseInt(text);
  }
}
