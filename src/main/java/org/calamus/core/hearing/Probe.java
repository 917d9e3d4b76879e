package org.calamus.core.hearing;

import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Utterance;

/**
 * One thing that the self-test asks the bander to say.
 *
 * @param spoken as shown and spoken, with commas for short pauses
 * @param field the field that the console would be asking; empty while only commands are awaited
 */
public record Probe(String spoken, Optional<FieldId> field) {

  /** Checks the text. */
  public Probe {
    Objects.requireNonNull(field);
    if (spoken.isBlank()) {
      throw new IllegalArgumentException("nothing to say");
    }
  }

  /** The words alone, as the vocabulary spells them. */
  public String words() {
    return spoken.replace(",", "");
  }

  /** The words as if they had been heard rightly. */
  Utterance meant() {
    return Utterance.of(words());
  }
}
