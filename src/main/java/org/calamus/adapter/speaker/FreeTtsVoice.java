package org.calamus.adapter.speaker;

import java.util.Optional;
import java.util.function.Function;
import org.calamus.core.dialogue.Tone;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.Voice;

/**
 * Speaks with the voice that comes with the program and needs nothing installed.
 *
 * <p>Loads in the background; what is said meanwhile waits, and the newest of it is spoken. Without
 * a speaker one {@code PartDown} is posted and each phrase is answered at once.
 */
public final class FreeTtsVoice implements Voice {

  private static final String NAME = "built-in voice";

  private final Settings settings;
  private final Clock clock;
  private volatile EventSink sink = event -> {};
  private volatile Optional<Loudspeaker> loudspeaker = Optional.empty();

  /**
   * How to speak.
   *
   * @param volume 0 (mute) to 1
   * @param wordsPerMinute 50 to 300; 150 is the voice's own
   * @param hasTones whether the short tones sound
   * @param toneVolume of the tones beside the voice, 0 to 1
   */
  public record Settings(double volume, int wordsPerMinute, boolean hasTones, double toneVolume) {

    /** Checks the ranges. */
    public Settings {
      if (!(volume >= 0 && volume <= 1)) {
        throw new IllegalArgumentException("a volume is 0 to 1: " + volume);
      }
      if (!(toneVolume >= 0 && toneVolume <= 1)) {
        throw new IllegalArgumentException("a volume is 0 to 1: " + toneVolume);
      }
      if (wordsPerMinute < 50 || wordsPerMinute > 300) {
        throw new IllegalArgumentException("50 to 300 words a minute: " + wordsPerMinute);
      }
    }

    /** Full volume at the voice's own speed, with tones. */
    public static Settings usual() {
      return new Settings(1, 150, true, 1);
    }

    /**
     * The same with other tones.
     *
     * @param sound whether they sound
     * @param loudness 0 to 1
     */
    public Settings withTones(boolean sound, double loudness) {
      return new Settings(volume, wordsPerMinute, sound, loudness);
    }
  }

  /** A voice with settings. */
  public FreeTtsVoice(Clock clock, Settings settings) {
    this.clock = clock;
    this.settings = settings;
  }

  @Override
  public void start(EventSink sink) {
    this.sink = sink;
    Loudspeaker started = new Loudspeaker(NAME, settings, this::load, clock, sink);
    loudspeaker = Optional.of(started);
    started.start();
  }

  private Function<String, short[]> load() {
    KevinSynthesizer synthesizer = new KevinSynthesizer(settings.wordsPerMinute());
    // the first phrase takes ten times as long as the others
    synthesizer.speak("wing nine two. mass");
    return synthesizer::speak;
  }

  @Override
  public void say(String phrase) {
    Phrase said = new Phrase(phrase, clock, sink);
    loudspeaker.ifPresentOrElse(it -> it.say(said), said::end);
  }

  @Override
  public void hush() {
    loudspeaker.ifPresent(Loudspeaker::hush);
  }

  @Override
  public void sound(Tone tone) {
    if (settings.hasTones()) {
      loudspeaker.ifPresent(it -> it.sound(tone));
    }
  }

  @Override
  public void close() {
    loudspeaker.ifPresent(Loudspeaker::close);
  }
}
