package org.calamus.adapter.vosk;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import org.calamus.acoustic.AcousticTables;

/**
 * The acoustic tables and the pronouncing dictionary that are part of the program.
 *
 * <p>Their checksums are compiled in: a program file damaged on its way is noticed before it makes
 * a model that hears nonsense, and a cached model can be trusted without reading ten megabytes.
 */
final class ShippedTables {

  private static final String ROOT = "/acoustic/";
  private static final String DICTIONARY = "cmudict-en-us.dict";

  /** SHA-256 of each file below the root. */
  static final Map<String, String> CHECKSUMS =
      new TreeMap<>(
          Map.of(
              "en-us/feat.params",
              "9f8058c107ebbc42abef6d39c67c6aedbcf60ac371332e550994e12a0392cb02",
              "en-us/mdef",
              "2360f9a86889c1cfee8bd618a0269387911e5fb2920a594f506b18b8c79683b0",
              "en-us/means",
              "832019e32cac12eb318964f96f469034acb12d0348eeddc3831831a100cb4dd4",
              "en-us/sendump",
              "8c9564c0d5bef69ca9d9bf1014abe162f071644cf02cf1fa8a483c3dc165a7a8",
              "en-us/transition_matrices",
              "c1f7f28ea43177be734be1f88bd7f1b9a853d0e660f8599c67c6eaeca8bb539a",
              "en-us/variances",
              "b00d696f85e96834fc10f8e5f06428d8c4db6bffdbe5845b6f69bf6efbc48fa5",
              "cmudict-en-us.dict",
              "9de99dd2a24b63c653c1c30ab39388d05185cae36d0875f15c319b4ad6dc43af"));

  /** Opens resources; gives null for one that is not there. */
  @FunctionalInterface
  interface Resources {
    InputStream open(String name);
  }

  private final Resources resources;

  ShippedTables(Resources resources) {
    this.resources = resources;
  }

  /** The tables on the class path. */
  static ShippedTables ofProgram() {
    return new ShippedTables(ShippedTables.class::getResourceAsStream);
  }

  /** Text that differs whenever a shipped file differs. */
  static String fingerprint() {
    return CHECKSUMS.toString();
  }

  AcousticTables tables() {
    return new AcousticTables(
        read("en-us/mdef"),
        read("en-us/means"),
        read("en-us/variances"),
        read("en-us/transition_matrices"),
        read("en-us/sendump"),
        read("en-us/feat.params"));
  }

  String dictionary() {
    return new String(read(DICTIONARY), StandardCharsets.UTF_8);
  }

  private byte[] read(String name) {
    try (InputStream in = resources.open(ROOT + name)) {
      if (in == null) {
        throw broken(name, "is missing", null);
      }
      byte[] bytes = in.readAllBytes();
      if (!Checksums.of(bytes).equals(CHECKSUMS.get(name))) {
        throw broken(name, "is damaged", null);
      }
      return bytes;
    } catch (IOException e) {
      throw broken(name, "cannot be read", e);
    }
  }

  private static ModelException broken(String name, String how, IOException cause) {
    return new ModelException(
        "The program's acoustic table "
            + ROOT
            + name
            + " "
            + how
            + ": install Calamus again, or give a speech model folder of your own with --model.",
        cause);
  }
}
