package org.calamus.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Somebody who can read utterances aloud: a synthetic voice, or recordings of one person's words
 * put in a row.
 *
 * @param name as shown in the tables
 * @param half the half of the measurement it belongs to
 * @param group the kind of voice; results are added up by it
 * @param mouth how it speaks
 */
record Speaker(String name, Half half, String group, Mouth mouth) {

  /** Makes a WAV recording of an utterance. */
  interface Mouth {
    /** Whether it has all the words. */
    default boolean canSay(Said said) {
      return true;
    }

    /** Whether what it needs is on this machine. */
    default boolean isThere() {
      return true;
    }

    /** Writes the recording. */
    void say(Said said, Path wav) throws IOException, InterruptedException;
  }

  /** Whether it can be heard on this machine. */
  boolean isThere() {
    return switch (group) {
      case "flite" -> Speakers.hasProgram("flite");
      case "festival" -> Speakers.hasProgram("text2wave");
      case "espeak" -> Speakers.hasProgram("espeak-ng");
      default -> mouth.isThere();
    };
  }

  /** Whether it has all the words, or the sounds, of an utterance. */
  boolean canSay(Said said) {
    if (!isVoice()) {
      return mouth.canSay(said);
    }
    return !said.isChatter()
        || said.set().equals("sentences")
        || said.set().equals("own readback") && group.equals("flite");
  }

  /** Whether it is a synthetic voice, which can say anything. */
  boolean isVoice() {
    return List.of("flite", "festival", "espeak").contains(group);
  }

  /** The recording of an utterance, made where it is not there yet. */
  Path recording(Said said, Path folder) throws IOException, InterruptedException {
    Files.createDirectories(folder);
    String text = said.isChatter() ? said.spoken() : said.words() + "/" + said.spoken();
    Path wav = folder.resolve(name + "-" + Integer.toHexString(text.hashCode()) + ".wav");
    if (!Files.exists(wav)) {
      Path part = folder.resolve("part-" + name + ".wav");
      mouth.say(said, part);
      Files.move(part, wav);
    }
    return wav;
  }

  /**
   * Words that the dictionaries of all three kinds of voices lack and that they read wrongly
   * ("clo-ka", "vye-ro"), as their own lists of phones show, and how to write them so that they are
   * said as dictionaries of English give them.
   */
  private static final Map<String, String> RESPELLED =
      Map.of("cloacal", "cloh aykal", "cloaca", "cloh ayka", "vireo", "veery oh");

  private static final Map<String, String> RESPELLED_FOR_ESPEAK =
      Map.of("cloacal", "[[kl'oUeIk@L]]", "cloaca", "[[kl'oUeIk@]]", "vireo", "[[v'i@rIoU]]");

  private static String respelled(Said said, Map<String, String> words) {
    return Arrays.stream(said.spoken().split(" "))
        .map(w -> words.getOrDefault(w, w))
        .collect(Collectors.joining(" "));
  }

  static Speaker flite(String voice, Half half) {
    return new Speaker(
        "flite-" + voice,
        half,
        "flite",
        (said, wav) ->
            run(
                "",
                List.of(
                    "flite",
                    "-voice",
                    voice,
                    "-t",
                    respelled(said, RESPELLED),
                    "-o",
                    wav.toString())));
  }

  static Speaker festival(String voice, Half half) {
    return new Speaker(
        "festival-" + voice,
        half,
        "festival",
        (said, wav) ->
            run(
                respelled(said, RESPELLED),
                List.of(
                    "text2wave", "-F", "16000", "-eval", "(voice_" + voice + ")", "-o", "" + wav)));
  }

  static Speaker espeak(String voice, Half half) {
    return new Speaker(
        "espeak-" + voice,
        half,
        "espeak",
        (said, wav) ->
            run(
                "",
                List.of(
                    "espeak-ng",
                    "-s",
                    "150",
                    "-v",
                    voice,
                    "-w",
                    "" + wav,
                    respelled(said, RESPELLED_FOR_ESPEAK))));
  }

  static void run(String input, List<String> command) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    process.getOutputStream().write(input.getBytes(StandardCharsets.UTF_8));
    process.getOutputStream().close();
    if (process.waitFor() != 0) {
      throw new IOException(String.join(" ", command) + " failed");
    }
  }
}
