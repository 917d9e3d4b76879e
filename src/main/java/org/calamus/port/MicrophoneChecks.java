package org.calamus.port;

import org.calamus.core.hearing.MicrophoneCheck;
import org.calamus.core.hearing.PastChecks;

/**
 * Remembers what the checks of a station's microphones concluded.
 *
 * <pre>{@code
 * checks.keep(new MicrophoneCheck("headset", now, verdict.grade(), verdict.sentence()));
 * Optional<MicrophoneCheck> last = checks.past().last("headset");
 * }</pre>
 */
public interface MicrophoneChecks {

  /** What is remembered; a check that cannot be read counts as never made. */
  PastChecks past();

  /**
   * Remembers a check, durably, in place of an earlier one of the same microphone.
   *
   * @throws KeepException where it cannot be written; what was remembered stays
   */
  void keep(MicrophoneCheck check);

  /** A check could not be remembered; the message is one sentence for the user. */
  final class KeepException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Made with one sentence: what is wrong and what to do next. */
    public KeepException(String sentence, Throwable cause) {
      super(sentence, cause);
    }
  }
}
