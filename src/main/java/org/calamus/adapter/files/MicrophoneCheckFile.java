package org.calamus.adapter.files;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.hearing.MicrophoneCheck;
import org.calamus.core.hearing.MicrophoneVerdict;
import org.calamus.core.hearing.PastChecks;
import org.calamus.port.MicrophoneChecks;

/**
 * The file {@code microphone-checks.jsonl} in the data folder: the last check of each microphone, a
 * JSON object (RFC 8259) a line. Nobody needs it: where it is deleted, no microphone has been
 * checked.
 */
public final class MicrophoneCheckFile implements MicrophoneChecks {

  private static final String NAME = "microphone-checks.jsonl";
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Path file;

  /**
   * Over a file that need not exist.
   *
   * @param data the data folder
   */
  public MicrophoneCheckFile(Path data) {
    this.file = data.resolve(NAME);
  }

  @Override
  public PastChecks past() {
    // as long as it cannot be read no check is known of; the next one says what is wrong with it
    return new PastChecks(LineFile.read(file, MicrophoneCheckFile::read));
  }

  @Override
  public void keep(MicrophoneCheck check) {
    List<MicrophoneCheck> kept = new ArrayList<>(past().checks());
    kept.removeIf(c -> c.microphone().equals(check.microphone()));
    kept.add(check);
    try {
      LineFile.write(file, kept, MicrophoneCheckFile::written);
    } catch (IOException e) {
      throw new KeepException(
          "The verdict is not remembered: "
              + file
              + " cannot be written; look after the folder and its free space.",
          e);
    }
  }

  private static String written(MicrophoneCheck check) {
    return JSON.createObjectNode()
        .put("microphone", check.microphone())
        .put("at", check.at().toString())
        .put("grade", check.grade().name())
        .put("sentence", check.sentence())
        .toString();
  }

  private static Optional<MicrophoneCheck> read(String text) {
    try {
      JsonNode line = JSON.readTree(text);
      return Optional.of(
          new MicrophoneCheck(
              line.path("microphone").asText(),
              Instant.parse(line.path("at").asText()),
              MicrophoneVerdict.Grade.valueOf(line.path("grade").asText()),
              line.path("sentence").asText()));
    } catch (JsonProcessingException | DateTimeException | IllegalArgumentException e) {
      // not a line that was written here: that check was never made
      return Optional.empty();
    }
  }
}
