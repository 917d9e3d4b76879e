package org.calamus.benchmark;

import java.util.List;

/**
 * Something that a bander says at one moment of a session.
 *
 * @param set the set it is counted in
 * @param before what was said before, all of it heard rightly
 * @param words the words, as the vocabulary spells them; empty for speech that is not meant for the
 *     console
 * @param spoken the same as written for a synthetic voice, with commas for short pauses
 */
record Said(String set, List<String> before, String words, String spoken) {

  Said {
    before = List.copyOf(before);
  }

  /** Whether it is not meant for the console. */
  boolean isChatter() {
    return words.isEmpty();
  }
}
