package org.calamus.adapter.vosk;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.vosk.Model;
import org.vosk.Recognizer;

/** Recordings among the test resources, and what the recogniser hears in them. */
final class TestAudio {

  private static final int HEADER = 44;
  private static final int BLOCK = 3200;
  private static final Pattern TEXT = Pattern.compile("\"text\" : \"([^\"]*)\"");

  private TestAudio() {}

  static byte[] wav(String name) throws IOException {
    try (InputStream in = TestAudio.class.getResourceAsStream("/acoustic/" + name)) {
      return in.readAllBytes();
    }
  }

  static byte[] samples(String name) throws IOException {
    byte[] wav = wav(name);
    return Arrays.copyOfRange(wav, HEADER, wav.length);
  }

  /** A grammar in the recogniser's form. */
  static String grammar(List<String> phrases) {
    return "[\"" + String.join("\", \"", phrases) + "\"]";
  }

  /** Recognises in blocks of a tenth of a second, as from a microphone; joins what ends early. */
  static String hear(Model model, String grammar, byte[] samples) throws IOException {
    StringBuilder heard = new StringBuilder();
    try (Recognizer recogniser = new Recognizer(model, 16000, grammar)) {
      for (int at = 0; at < samples.length; at += BLOCK) {
        byte[] block = Arrays.copyOfRange(samples, at, Math.min(samples.length, at + BLOCK));
        if (recogniser.acceptWaveForm(block, block.length)) {
          heard.append(text(recogniser.getResult())).append(' ');
        }
      }
      heard.append(text(recogniser.getFinalResult()));
    }
    return heard.toString().strip();
  }

  static String text(String result) {
    Matcher matcher = TEXT.matcher(result);
    if (!matcher.find()) {
      throw new AssertionError("no text in " + result);
    }
    return matcher.group(1);
  }
}
