package org.calamus.core.speech;

import java.util.List;
import java.util.Objects;

/**
 * A line of a vocabulary: words and what they mean.
 *
 * @param words the words, lower case, at least one
 * @param meaning what they mean
 * @param section the section they stand in
 * @param where file and line, for messages
 */
public record SpokenForm(List<String> words, Token meaning, Section section, String where) {

  /** Copies the list. */
  public SpokenForm {
    words = List.copyOf(words);
    Objects.requireNonNull(meaning);
    Objects.requireNonNull(section);
    if (words.isEmpty()) {
      throw new IllegalArgumentException("a spoken form without a word");
    }
  }

  /** The same words with another meaning. */
  SpokenForm meaning(Token other) {
    return new SpokenForm(words, other, section, where);
  }

  /** The words, parted by one blank. */
  public String text() {
    return String.join(" ", words);
  }

  /**
   * A section of a vocabulary file.
   *
   * @param name its name, such as {@code numbers}
   * @param isJoined whether its words are often said without a pause between them
   * @param isShort whether its words sound like numbers and are left out while a number is asked
   * @param isWritten whether its forms are understood where they are written, in a script or by
   *     another recogniser, but not listened for, since each sounds like another form
   */
  public record Section(String name, boolean isJoined, boolean isShort, boolean isWritten) {

    /** The section of lines that stand in none. */
    static final Section NONE = new Section("", false, false, false);
  }
}
