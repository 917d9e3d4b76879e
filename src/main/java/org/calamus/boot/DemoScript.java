package org.calamus.boot;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.calamus.port.SettingsException;

/**
 * The demonstration's script: what is said and weighed, in order.
 *
 * @param steps the steps
 */
record DemoScript(List<Step> steps) {

  private static final String FOLDER = "/demo-data/";

  /**
   * One step.
   *
   * @param kind what is done
   * @param file the recording, below {@code demo-data}
   */
  record Step(Kind kind, String file) {}

  /** What a step does. */
  enum Kind {
    /** Somebody says what is in the recording. */
    SAY,
    /** The scale sends what is in the recording. */
    WEIGH
  }

  /** Reads a script that the program carries. */
  static DemoScript read(String name) {
    List<Step> steps = new ArrayList<>();
    List<String> lines = new String(bytes(name), StandardCharsets.UTF_8).lines().toList();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).replaceFirst("#.*", "").strip();
      if (line.isEmpty()) {
        continue;
      }
      String[] parts = line.split("\\s+");
      boolean isStep = parts.length == 2 && (parts[0].equals("say") || parts[0].equals("weigh"));
      if (!isStep) {
        throw new SettingsException(name + ":" + (i + 1) + ": a step is say FILE or weigh FILE.");
      }
      steps.add(new Step(parts[0].equals("say") ? Kind.SAY : Kind.WEIGH, parts[1]));
    }
    return new DemoScript(steps);
  }

  /** A file below {@code demo-data}, as the program carries it. */
  static byte[] bytes(String file) {
    try (InputStream in = DemoScript.class.getResourceAsStream(FOLDER + file)) {
      if (in == null) {
        throw new SettingsException(
            "demo-data/" + file + " is missing from the program; get the program anew.");
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
