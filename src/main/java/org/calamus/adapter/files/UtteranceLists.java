package org.calamus.adapter.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.calamus.port.KeptUtterances;

/** Reads the lists that {@link UtteranceFiles} writes. */
public final class UtteranceLists implements KeptUtterances {

  /** The name of the list in a session's folder. */
  public static final String NAME = "utterances.jsonl";

  @Override
  public List<Line> read(Path list) {
    List<Line> lines = new ArrayList<>();
    int number = 0;
    for (String text : texts(list)) {
      number++;
      if (!text.isBlank()) {
        lines.add(line(list, number, text));
      }
    }
    return lines;
  }

  private static List<String> texts(Path list) {
    try {
      return Files.readAllLines(list);
    } catch (IOException e) {
      throw new KeptException(
          "The list " + list + " cannot be read; check that it is there and is one of ours.", e);
    }
  }

  private static Line line(Path list, int number, String text) {
    try {
      return UtteranceLine.read(list.toAbsolutePath().getParent(), text);
    } catch (IllegalArgumentException e) {
      return new Damaged(
          list + ":" + number + ": this line is damaged and left out; remove it from the list.");
    }
  }
}
