package org.calamus.acoustic;

/**
 * A word that cannot go into the model, and why.
 *
 * @param word the word as it was given
 * @param where file and line it came from
 * @param why what is wrong with it, as the end of a sentence
 */
public record WordProblem(String word, String where, String why) {

  @Override
  public String toString() {
    return where + ": \"" + word + "\" " + why;
  }
}
