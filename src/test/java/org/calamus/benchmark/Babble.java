package org.calamus.benchmark;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * People who talk all at once: each voice of a half reads sentences that occur nowhere else in the
 * measurement, all equally loud, each beginning with another one.
 */
final class Babble {

  private static final List<String> SENTENCES =
      List.of(
          "The ferry leaves at a quarter past seven unless there is fog over the river.",
          "My brother planted three apple trees behind the house and none of them took.",
          "Nobody told us that the road would be closed until the end of the month.",
          "Take the second turning after the mill and then follow the wall up the hill.",
          "She used to bake bread on Saturdays, and the whole street could smell it.",
          "If you see the postman, ask him whether the parcel has come yet.",
          "There were more people at the market than I have seen there for years.",
          "We sat by the stove and told stories until the lamp went out.",
          "The roof leaks again, so please put a bucket under it before you leave.",
          "He bought an old boat and has been mending it ever since.",
          "They say the winter will be mild, but they said that last year too.",
          "Let me know as soon as you hear anything from the harbour office.");

  private static final int VOICES = 6;

  private Babble() {}

  /** A track of babble, made of the voices of a half other than recorded people. */
  static double[] of(Half half, Path folder) throws IOException, InterruptedException {
    List<Speaker> voices =
        Speakers.there().stream().filter(s -> s.half() == half && s.isVoice()).toList();
    List<double[]> talks = new ArrayList<>();
    for (int i = 0; i < VOICES; i++) {
      talks.add(talk(voices.get(i % voices.size()), 2 * i, folder));
    }
    int length = talks.stream().mapToInt(t -> t.length).min().orElseThrow();
    double[] track = new double[length];
    for (double[] talk : talks) {
      for (int i = 0; i < length; i++) {
        track[i] += talk[i];
      }
    }
    return track;
  }

  private static double[] talk(Speaker voice, int first, Path folder)
      throws IOException, InterruptedException {
    double[] all = new double[0];
    for (int i = 0; i < SENTENCES.size(); i++) {
      String sentence = SENTENCES.get((first + i) % SENTENCES.size());
      Said said = new Said("babble", List.of(), "", sentence);
      double[] sound = Recordings.read(voice.recording(said, folder));
      double factor = 1 / Math.sqrt(SpeechLevel.power(sound));
      int before = all.length;
      all = Arrays.copyOf(all, before + sound.length);
      for (int k = 0; k < sound.length; k++) {
        all[before + k] = sound[k] * factor;
      }
    }
    return all;
  }
}
