package org.calamus.acoustic;

/** Says in one sentence why no model could be made: a damaged table, or words that cannot be. */
public class AcousticException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /**
   * Creates the failure.
   *
   * @param message one sentence that can be shown as it is
   */
  public AcousticException(String message) {
    super(message);
  }
}
