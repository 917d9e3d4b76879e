package org.calamus.adapter.scripted;

import java.io.ByteArrayOutputStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.calamus.adapter.scripted.PlayedInstruments.Recording;
import org.calamus.port.Devices.DeviceException;

/** Reads the text of a recording. Used once. */
final class RecordingParser {

  private static final Pattern LINE = Pattern.compile("\\s*([0-9]{1,9})\\s+\"(.*)\"\\s*");
  private static final Pattern PIECE =
      Pattern.compile("\\\\(?:x([0-9A-Fa-f]{2})|([rn\\\\\"]))|([^\\\\\"\\P{ASCII}])");

  private final String file;
  private final List<String> mistakes = new ArrayList<>();
  private final List<Recording.Portion> portions = new ArrayList<>();
  private long lastMillis;

  RecordingParser(String file) {
    this.file = file;
  }

  Recording parse(List<String> lines) {
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (!line.isBlank() && !line.strip().startsWith("#")) {
        portion(i + 1, line);
      }
    }
    if (!mistakes.isEmpty()) {
      throw new DeviceException(String.join("\n", mistakes));
    }
    return new Recording(portions);
  }

  private void portion(int number, String line) {
    Matcher matcher = LINE.matcher(line);
    if (!matcher.matches()) {
      mistake(number, 1, "A line is a number of milliseconds and a text in quotation marks.");
      return;
    }
    long millis = Long.parseLong(matcher.group(1));
    if (millis < lastMillis) {
      mistake(number, matcher.start(1) + 1, "The times must not go back.");
    }
    lastMillis = millis;
    byte[] bytes = bytes(number, matcher.start(2) + 1, matcher.group(2));
    portions.add(new Recording.Portion(Duration.ofMillis(millis), bytes));
  }

  private byte[] bytes(int number, int column, String text) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Matcher piece = PIECE.matcher(text);
    int at = 0;
    while (at < text.length() && piece.find(at) && piece.start() == at) {
      bytes.write(value(piece));
      at = piece.end();
    }
    if (at < text.length()) {
      mistake(number, column + at, "Here only ASCII and \\r, \\n, \\\\, \\\" and \\xNN may stand.");
    }
    return bytes.toByteArray();
  }

  private static int value(Matcher piece) {
    if (piece.group(1) != null) {
      return Integer.parseInt(piece.group(1), 16);
    }
    if (piece.group(3) != null) {
      return piece.group(3).charAt(0);
    }
    return switch (piece.group(2)) {
      case "r" -> '\r';
      case "n" -> '\n';
      default -> piece.group(2).charAt(0);
    };
  }

  private void mistake(int line, int column, String sentence) {
    mistakes.add(file + ":" + line + ":" + column + ": " + sentence);
  }
}
