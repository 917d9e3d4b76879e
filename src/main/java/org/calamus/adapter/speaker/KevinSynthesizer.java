package org.calamus.adapter.speaker;

import com.sun.speech.freetts.Voice;
import com.sun.speech.freetts.en.us.cmu_us_kal.KevinVoiceDirectory;
import com.sun.speech.freetts.lexicon.Lexicon;
import java.util.Arrays;
import java.util.Map;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Text to sound with the voice that is part of FreeTTS. Slow to make (0.5 to 2 s), then a few
 * milliseconds a phrase. Used from one thread.
 */
final class KevinSynthesizer {

  /** Samples a second of all sound given. */
  static final int RATE = 16_000;

  /** Kept, since loggers that nobody holds are forgotten with their level. */
  private static final Logger CHATTER = Logger.getLogger("com.sun.speech");

  /**
   * Words of the trade that come out wrong by the voice's own rules, in its phones; found by
   * reading what it made of them ("nuthatch" as nu-thatch, "vireo" as vye-reo, "millimetres"
   * without a vowel).
   */
  private static final Map<String, String> SAID =
      Map.ofEntries(
          Map.entry("nuthatch", "n ah1 t hh ae ch"),
          Map.entry("vireo", "v ih1 r iy ow"),
          Map.entry("towhee", "t ow1 hh iy"),
          Map.entry("pewee", "p iy1 w iy"),
          Map.entry("titmouse", "t ih1 t m aw s"),
          Map.entry("kinglet", "k ih1 ng l ax t"),
          Map.entry("primaries", "p r ay1 m eh r iy z"),
          Map.entry("cloacal", "k l ow ey1 k ax l"),
          Map.entry("millimetre", "m ih1 l ax m iy t er"),
          Map.entry("millimetres", "m ih1 l ax m iy t er z"),
          Map.entry("recapture", "r iy k ae1 p ch er"));

  private final Voice voice;
  private final CollectingPlayer player = new CollectingPlayer();

  /**
   * Loads the voice.
   *
   * @param wordsPerMinute how fast it speaks, 50 to 300
   */
  KevinSynthesizer(int wordsPerMinute) {
    CHATTER.setLevel(Level.OFF);
    voice =
        Arrays.stream(new KevinVoiceDirectory().getVoices())
            .filter(candidate -> candidate.getName().equals("kevin16"))
            .findFirst()
            .orElseThrow();
    voice.allocate();
    voice.setRate(wordsPerMinute);
    voice.setAudioPlayer(player);
    Lexicon lexicon = voice.getLexicon();
    SAID.forEach((word, phones) -> lexicon.addAddendum(word, null, phones.split(" ")));
  }

  /** The sound of a phrase, one channel at {@link #RATE}. */
  short[] speak(String phrase) {
    player.clear();
    voice.speak(phrase);
    return player.samples();
  }

  /** What the voice would say for a word, in its phones. */
  String phonesOf(String word) {
    return String.join(" ", voice.getLexicon().getPhones(word, null));
  }
}
