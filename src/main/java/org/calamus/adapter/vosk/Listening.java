package org.calamus.adapter.vosk;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.dialogue.Event;
import org.calamus.core.hearing.Pitch;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Hypothesis;
import org.calamus.core.speech.Utterance;
import org.calamus.port.AudioSource;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.UtteranceKeeper;

/**
 * Takes the noise out of the sound, cuts it into utterances, has each recognised and posts what was
 * heard. Belongs to the ears' thread.
 *
 * <p>While it is quiet nothing is fed to the recogniser; the last half second is kept. When the
 * gate finds speech, that half second goes first. The utterance ends when the gate has found the
 * trailing silence, when the recogniser finds its end, when the talk key is released, or when it
 * becomes too long to be one.
 */
final class Listening {

  private static final int RECENT_SAMPLES = AudioSource.RATE / 2;

  /** Kept of the last utterance's end when the next one begins: the gate may have cut its onset. */
  private static final int MARGIN_SAMPLES = AudioSource.RATE / 20;

  /** A band number said slowly takes 8 s. */
  private static final long LONGEST_SAMPLES = 15L * AudioSource.RATE;

  /**
   * A pause so long may be the end: then it is looked whether words are missing. The blocks after
   * it still come before the usual trailing silence.
   */
  private static final int PAUSE_SAMPLES = AudioSource.RATE * 3 / 10;

  /** How long a pause may be in a number that is not yet whole, in milliseconds. */
  private static final int PATIENT_MILLIS = 800;

  /** What is shorter and gave no word was a knock or a click. */
  private static final int SHORTEST_SPEECH_MILLIS = 200;

  private final Decoder decoder;
  private final Door door;
  private final MemoTaker memo;
  private final Clock clock;
  private final EventSink sink;
  private final int releaseSamples;
  private final SpeechGate gate;
  private final LevelControl level = new LevelControl();
  private final Suppression suppression = new Suppression();

  /** Knows how loud the noise is, while the gate itself hears what is left of it. */
  private final SpeechGate room;

  private final Hiss hiss = new Hiss();
  private final RecentSound recent = new RecentSound(RECENT_SAMPLES);
  private final UtteranceKeeper keeper;
  private final VoiceLearning learning;

  /** What the recogniser was fed of this utterance. */
  private final List<short[]> fed = new ArrayList<>();

  private long heardSamples;
  private boolean isHearing;
  private int loudestPeak;
  private double noiseBefore;
  private long shutCount;
  private int samplesToRelease;
  private boolean isReleased;
  private Instant speechEndedAt = Instant.EPOCH;

  Listening(
      Decoder decoder,
      Door door,
      MemoTaker memo,
      Clock clock,
      EventSink sink,
      VoskEars.Settings settings,
      UtteranceKeeper keeper,
      VoiceLearning learning) {
    this.keeper = keeper;
    this.learning = learning;
    this.decoder = decoder;
    this.door = door;
    this.memo = memo;
    this.clock = clock;
    this.sink = sink;
    this.releaseSamples = (int) (settings.afterRelease().toMillis() * AudioSource.RATE / 1000);
    this.gate = new SpeechGate((int) settings.trailingSilence().toMillis());
    this.room = new SpeechGate((int) settings.trailingSilence().toMillis());
    this.shutCount = door.shutCount();
  }

  /** The sound comes through this microphone from now on. */
  void through(String microphone) {
    learning.begin(microphone, suppression);
  }

  /** Whether somebody is speaking. */
  boolean isHearing() {
    return isHearing || memo.isHearing();
  }

  /**
   * Hears the next block.
   *
   * @param block sound that has just arrived
   * @param wanted what to listen for from the next utterance on
   */
  void hear(short[] block, Optional<Grammar> wanted) {
    heardSamples += block.length;
    if (door.shutCount() != shutCount) {
      shutCount = door.shutCount();
      forget();
    }
    if (memo.isOn()) {
      takeDown(block);
      return;
    }
    if (!isHearing) {
      wanted.ifPresent(decoder::listenFor);
    }
    if (!door.admits(block.length)) {
      return;
    }
    memo.learn(block);
    room.hear(block);
    recognise(suppression.clean(block));
  }

  /** Takes sound whose noise is taken out; it is what arrived {@link Suppression#DELAY} before. */
  private void recognise(short[] block) {
    if (isHearing && gate.samplesSinceVoiced() >= PAUSE_SAMPLES) {
      gate.waitFor(decoder.lacksWords() ? PATIENT_MILLIS : 0);
    }
    SpeechGate.Decision decision = gate.hear(block);
    if (decision != SpeechGate.Decision.QUIET) {
      // what followed the last speech in this block, and the block itself, has just arrived
      speechEndedAt = clock.now().minus(lengthOf(gate.samplesSinceVoiced() + Suppression.DELAY));
    }
    if (isHearing) {
      goOn(block);
    } else if (decision == SpeechGate.Decision.BEGINS && decoder.hasGrammar()) {
      begin(block);
    }
    recent.add(block);
    if (isHearing && (decision == SpeechGate.Decision.ENDS || isTooLong())) {
      finish();
    }
    release(block.length);
  }

  /** A memo gets the sound instead of the recogniser, which forgets what it had begun to hear. */
  private void takeDown(short[] block) {
    forget();
    if (door.admits(block.length)) {
      memo.hear(block);
    } else {
      memo.pass();
    }
  }

  /** Ends the utterance soon: what was said before the key was released may still be on its way. */
  void releaseKey() {
    isReleased = true;
    samplesToRelease = releaseSamples;
  }

  /** Ends the utterance now, where there is one. */
  void end() {
    if (isHearing) {
      finish();
    }
  }

  private void begin(short[] block) {
    short[] before = recent.samples();
    noiseBefore = room.floor();
    level.learn(block);
    level.begin();
    hiss.restart();
    fed.clear();
    loudestPeak = 0;
    isHearing = true;
    feed(before);
    goOn(block);
  }

  private void goOn(short[] block) {
    loudestPeak = Math.max(loudestPeak, Decibels.peak(block));
    level.learn(block);
    feed(block);
  }

  private void feed(short[] samples) {
    if (!isHearing) {
      return;
    }
    short[] prepared = hiss.over(level.apply(samples));
    fed.add(prepared);
    if (decoder.feed(prepared)) {
      finish();
    }
  }

  private boolean isTooLong() {
    return decoder.samplesInUtterance() >= LONGEST_SAMPLES;
  }

  private void release(int samples) {
    if (!isReleased) {
      return;
    }
    samplesToRelease -= samples;
    boolean isQuiet = gate.samplesSinceVoiced() >= releaseSamples;
    if (samplesToRelease <= 0 || (isHearing && isQuiet)) {
      isReleased = false;
      end();
    }
  }

  private void finish() {
    isHearing = false;
    long startMillis =
        Math.max(0, heardSamples - Suppression.DELAY - decoder.samplesInUtterance())
            * 1000
            / AudioSource.RATE;
    List<Hypothesis> hypotheses = decoder.finish(startMillis);
    Duration voiced = Duration.ofMillis(gate.voicedMillis());
    int aboveNoise = (int) Math.round(gate.speechLevel() - noiseBefore);
    recent.keepNewest(gate.samplesSinceVoiced() - MARGIN_SAMPLES);
    gate.restart();
    if (hypotheses.isEmpty() && voiced.toMillis() < SHORTEST_SPEECH_MILLIS) {
      return;
    }
    int loudness = (int) Math.round(Decibels.ofAmplitude(loudestPeak));
    short[] sound = joined(fed);
    Duration pitched = Pitch.in(sound, AudioSource.RATE);
    Utterance utterance = Utterance.of(hypotheses, loudness, voiced, aboveNoise, pitched);
    Event.Heard heard = new Event.Heard(clock.now(), utterance, speechEndedAt);
    Grammar grammar = decoder.grammar();
    door.ifNotShutSince(
        shutCount,
        () -> {
          keeper.heard(heard, grammar, sound);
          sink.post(heard);
        });
    learning.learn(utterance, sound, suppression);
  }

  private void forget() {
    decoder.abandon();
    isHearing = false;
    isReleased = false;
    recent.clear();
    suppression.restart();
    gate.restart();
  }

  private static short[] joined(List<short[]> blocks) {
    short[] all = new short[blocks.stream().mapToInt(b -> b.length).sum()];
    int at = 0;
    for (short[] block : blocks) {
      System.arraycopy(block, 0, all, at, block.length);
      at += block.length;
    }
    return all;
  }

  private static Duration lengthOf(int samples) {
    return Duration.ofMillis(samples * 1000L / AudioSource.RATE);
  }
}
