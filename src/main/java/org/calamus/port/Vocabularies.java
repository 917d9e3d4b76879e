package org.calamus.port;

import org.calamus.core.speech.Vocabulary;

/** Reads the vocabulary files. */
public interface Vocabularies {
  /**
   * All vocabularies together.
   *
   * @throws SettingsException naming every file and line that cannot be used
   */
  Vocabulary read();
}
