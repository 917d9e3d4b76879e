package org.calamus.adapter.vosk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.dialogue.Event;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Hypothesis;
import org.calamus.core.speech.Utterance;
import org.calamus.port.AudioSource;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.Recogniser;
import org.calamus.port.TimbreMemory;
import org.calamus.port.UtteranceKeeper;
import org.vosk.Model;

/**
 * Recognises recorded sound with the ears' own parts: their decoder for utterances that they have
 * cut out, and all they do to the sound for recordings.
 */
public final class VoskRecogniser implements Recogniser {

  /** The utterances of a recording have no time of day. */
  private static final Clock NO_TIME = () -> Instant.EPOCH;

  private final VoskEars.Settings settings;
  private final Model model;
  private final Decoder decoder;

  /**
   * Loads a model.
   *
   * @param model the folder of a model that takes grammars at run time
   * @param settings how to listen
   * @throws ModelException where it cannot be loaded
   */
  public VoskRecogniser(Path model, VoskEars.Settings settings) {
    this.settings = settings;
    NativeEnvironment.prepare(settings.nativeLog());
    this.model = VoskLibrary.load(model);
    try {
      this.decoder = new Decoder(this.model, ModelFolder.phrasesOf(model), settings.frameMillis());
    } catch (IOException e) {
      this.model.close();
      throw new ModelException(
          "The speech model in " + model + " cannot be used; make it anew.", e);
    }
  }

  @Override
  public List<Hypothesis> recognise(Grammar grammar, short[] sound) {
    decoder.listenFor(grammar);
    decoder.feed(sound);
    return decoder.finish(0);
  }

  @Override
  public List<Utterance> hear(Grammar grammar, AudioSource source) {
    List<Utterance> heard = new ArrayList<>();
    Listening listening = listening(event -> add(heard, event));
    try (source) {
      source.open();
      AudioSource.Read read = source.read();
      while (read instanceof AudioSource.Block block) {
        listening.hear(block.samples(), Optional.of(grammar));
        read = source.read();
      }
      listening.end();
      if (read instanceof AudioSource.Lost lost) {
        throw new AudioSource.AudioException(lost.sentence(), new IOException(source.name()));
      }
    }
    return heard;
  }

  private Listening listening(EventSink sink) {
    MemoTaker noMemo = new MemoTaker(NO_TIME, sink, settings.afterRelease());
    VoiceLearning noLearning = new VoiceLearning(Optional.empty(), TimbreMemory.none());
    return new Listening(
        decoder, new Door(), noMemo, NO_TIME, sink, settings, UtteranceKeeper.none(), noLearning);
  }

  private static void add(List<Utterance> heard, Event event) {
    if (event instanceof Event.Heard one) {
      heard.add(one.utterance());
    }
  }

  @Override
  public void close() {
    decoder.close();
    model.close();
  }
}
