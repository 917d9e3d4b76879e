package org.calamus.adapter.vosk;

import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.calamus.adapter.microphone.MicrophoneSource;
import org.calamus.core.dialogue.Event;

/** Prints what ears on the default microphone hear, until its input ends. */
final class EarsOnDefaultMicrophone {

  private EarsOnDefaultMicrophone() {}

  /** The argument is the folder of the model. */
  public static void main(String[] args) throws Exception {
    VoskEars ears =
        new VoskEars(
            Path.of(args[0]), new MicrophoneSource(), Instant::now, VoskEars.Settings.usual());
    ears.listenFor(EarsRig.NUMBERS);
    ears.start(EarsOnDefaultMicrophone::print);
    new String(System.in.readAllBytes(), StandardCharsets.UTF_8);
    ears.close();
    var threads = ManagementFactory.getThreadMXBean();
    long nanos = 0;
    for (long id : threads.getAllThreadIds()) {
      nanos += Math.max(0, threads.getThreadCpuTime(id));
    }
    print("CPU " + Duration.ofNanos(nanos).toMillis());
  }

  private static void print(Event event) {
    if (event instanceof Event.Heard heard) {
      Duration latency = Duration.between(heard.speechEndedAt(), heard.at());
      print("HEARD " + heard.utterance().text() + " AFTER " + latency.toMillis());
    } else if (event instanceof Event.PartUp up) {
      print("UP " + up.name());
    } else if (event instanceof Event.PartDown down) {
      print("DOWN " + down.sentence());
    } else if (event instanceof Event.LevelMeasured level) {
      print("LEVEL " + level.decibels());
    }
  }

  private static synchronized void print(String line) {
    System.out.println(line);
    System.out.flush();
  }
}
