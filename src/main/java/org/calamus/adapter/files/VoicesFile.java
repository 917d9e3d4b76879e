package org.calamus.adapter.files;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.calamus.core.hearing.Timbre;
import org.calamus.port.TimbreMemory;

/**
 * The file {@code voices.jsonl} in the data folder: the timbre of each bander's voice through each
 * microphone, a JSON object (RFC 8259) a line. Nobody needs it: where it is deleted, the voices are
 * learnt anew.
 */
public final class VoicesFile implements TimbreMemory {

  private static final String NAME = "voices.jsonl";
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Path file;
  private final String bander;
  private final Consumer<String> trouble;
  private boolean isTold;

  /**
   * Over a file that need not exist.
   *
   * @param data the data folder
   * @param bander whose voice it is, by initials
   * @param trouble is told once where the file cannot be written
   */
  public VoicesFile(Path data, String bander, Consumer<String> trouble) {
    this.file = data.resolve(NAME);
    this.bander = bander;
    this.trouble = trouble;
  }

  /** A line of the file. */
  private record Line(String bander, String microphone, Timbre timbre) {}

  @Override
  public Optional<Timbre> recall(String microphone) {
    return lines().stream().filter(l -> isOf(l, microphone)).map(Line::timbre).findFirst();
  }

  private boolean isOf(Line line, String microphone) {
    return line.bander().equals(bander) && line.microphone().equals(microphone);
  }

  @Override
  public void keep(String microphone, Timbre timbre) {
    List<Line> kept = new ArrayList<>(lines());
    kept.removeIf(l -> isOf(l, microphone));
    kept.add(new Line(bander, microphone, timbre));
    try {
      LineFile.write(file, kept, VoicesFile::written);
    } catch (IOException e) {
      if (!isTold) {
        isTold = true;
        trouble.accept(
            "The voice is learnt anew next time: "
                + file
                + " cannot be written; look after the folder and its free space.");
      }
    }
  }

  private List<Line> lines() {
    return LineFile.read(file, VoicesFile::read);
  }

  private static String written(Line line) {
    ObjectNode node =
        JSON.createObjectNode()
            .put("bander", line.bander())
            .put("microphone", line.microphone())
            .put("frames", line.timbre().frames());
    line.timbre().means().forEach(node.putArray("timbre")::add);
    return node.toString();
  }

  private static Optional<Line> read(String text) {
    try {
      JsonNode line = JSON.readTree(text);
      List<Double> means = new ArrayList<>();
      line.path("timbre").forEach(n -> means.add(n.asDouble(Double.NaN)));
      return Optional.of(
          new Line(
              line.path("bander").asText(),
              line.path("microphone").asText(),
              new Timbre(means, line.path("frames").asInt(-1))));
    } catch (JsonProcessingException | IllegalArgumentException e) {
      return Optional.empty(); // not a line that was written here: that voice is learnt anew
    }
  }
}
