package org.calamus.port;

import java.util.List;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Hypothesis;
import org.calamus.core.speech.Utterance;

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
   * The ways in which one utterance may be heard, the likeliest first; none where no word was.
   *
   * @param grammar what is listened for
   * @param sound what the ears gave their recogniser, at {@link AudioSource#RATE}
   */
  List<Hypothesis> recognise(Grammar grammar, short[] sound);

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
