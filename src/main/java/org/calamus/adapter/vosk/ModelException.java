package org.calamus.adapter.vosk;

/** Says why no speech model could be had, where, and what to do; fit to be shown as it is. */
public final class ModelException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  ModelException(String message) {
    super(message);
  }

  ModelException(String message, Throwable cause) {
    super(message, cause);
  }
}
