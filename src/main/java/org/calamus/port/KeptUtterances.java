package org.calamus.port;

import java.nio.file.Path;
import java.util.List;
import org.calamus.core.dialogue.Account;
import org.calamus.core.dialogue.Event;

/** Reads the utterances that an {@link UtteranceKeeper} has kept. */
public interface KeptUtterances {

  /**
   * Reads a list, in the order in which it was written.
   *
   * @param list the list of a session
   * @throws KeptException where it cannot be read at all
   */
  List<Line> read(Path list);

  /** A line of a list. */
  sealed interface Line {}

  /**
   * An utterance.
   *
   * @param wav its sound, which may be gone
   * @param samples how many samples that has, at {@link AudioSource#RATE}
   * @param event what was heard, with the time
   * @param grammar the name of what was listened for
   * @param account what happened to it
   */
  record Kept(Path wav, int samples, Event.Heard event, String grammar, Account account)
      implements Line {}

  /**
   * A line that cannot be read; the others can.
   *
   * @param sentence one sentence, with file and line
   */
  record Damaged(String sentence) implements Line {}

  /** A list cannot be read; the message is one sentence for the user. */
  final class KeptException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Made with one sentence: what is wrong and what to do next. */
    public KeptException(String sentence, Throwable cause) {
      super(sentence, cause);
    }
  }
}
