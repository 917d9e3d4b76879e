package org.calamus.port;

import java.util.Optional;
import org.calamus.core.hearing.Timbre;

/**
 * Remembers the timbre of one bander's voice through each microphone, so that the ears need not
 * learn it anew. Used on the ears' thread alone; no method throws, since a session goes on without
 * it.
 */
public interface TimbreMemory {

  /**
   * What is remembered.
   *
   * @param microphone its name, as {@link AudioSource#name} gives it
   * @return empty where nothing is, or what there is cannot be read
   */
  Optional<Timbre> recall(String microphone);

  /**
   * Remembers a timbre in the place of the earlier one.
   *
   * @param microphone as above
   * @param timbre what was learnt
   */
  void keep(String microphone, Timbre timbre);

  /** One that remembers nothing. */
  static TimbreMemory none() {
    return new TimbreMemory() {
      @Override
      public Optional<Timbre> recall(String microphone) {
        return Optional.empty();
      }

      @Override
      public void keep(String microphone, Timbre timbre) {
        // nothing is remembered
      }
    };
  }
}
