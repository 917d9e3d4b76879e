package org.calamus.adapter.speaker;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Tone;

/** Says the lines of its input on the default speaker and prints what the voice reports. */
final class VoiceOnDefaultSpeaker {

  private static volatile long saidNanos;

  private VoiceOnDefaultSpeaker() {}

  /** A line "hush" falls silent, the name of a tone sounds it, another line is said. */
  public static void main(String[] args) throws Exception {
    FreeTtsVoice voice = new FreeTtsVoice(Instant::now, FreeTtsVoice.Settings.usual());
    voice.start(VoiceOnDefaultSpeaker::print);
    try (BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        saidNanos = System.nanoTime();
        if (line.equals("hush")) {
          voice.hush();
        } else if (line.equals("TAKEN")) {
          voice.sound(Tone.TAKEN);
        } else {
          voice.say(line);
        }
      }
    }
    voice.close();
    print("BYE");
  }

  private static void print(Event event) {
    long millis = Duration.ofNanos(System.nanoTime() - saidNanos).toMillis();
    if (event instanceof Event.VoiceBegan) {
      print("BEGAN " + millis);
    } else if (event instanceof Event.VoiceEnded) {
      print("ENDED " + millis);
    } else if (event instanceof Event.PartUp up) {
      print("UP " + up.name());
    } else if (event instanceof Event.PartDown down) {
      print("DOWN " + down.sentence());
    }
  }

  private static synchronized void print(String line) {
    System.out.println(line);
    System.out.flush();
  }
}
