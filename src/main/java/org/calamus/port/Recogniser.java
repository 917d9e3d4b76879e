package org.calamus.port;

import java.util.List;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Word;

/**
 * Recognises recorded sound without a session, the way the ears do. Used from one thread.
 *
 * <pre>{@code
 * recogniser.recognise(grammar, sound);     // one utterance, cut out and prepared by the ears
 * recogniser.hear(grammar, recording);      // a recording, as a microphone would give it
 * }</pre>
 */
public interface Recogniser extends AutoCloseable {

  /**
   * The words of one utterance.
   *
   * @param grammar what is listened for
   * @param sound what the ears gave their recogniser, at {@link AudioSource#RATE}
   */
  List<Word> recognise(Grammar grammar, short[] sound);

  /**
   * Hears a recording to its end: takes its noise out and cuts it into utterances.
   *
   * @param grammar what is listened for
   * @param source opened and closed here
   * @throws AudioSource.AudioException where it cannot be heard to its end
   */
  List<Utterance> hear(Grammar grammar, AudioSource source);

  @Override
  void close();
}
