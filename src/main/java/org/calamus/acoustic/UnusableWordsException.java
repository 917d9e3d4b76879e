package org.calamus.acoustic;

import java.util.List;
import java.util.stream.Collectors;

/** Names every word that cannot go into the model, so that none is dropped unseen. */
public final class UnusableWordsException extends AcousticException {

  private static final long serialVersionUID = 1L;

  private final transient List<WordProblem> problems;

  /**
   * Creates the failure.
   *
   * @param problems all of them, at least one
   */
  public UnusableWordsException(List<WordProblem> problems) {
    super(
        "These words cannot be recognised:\n"
            + problems.stream().map(WordProblem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  /** Returns the words, in the order they were given. */
  public List<WordProblem> problems() {
    return problems;
  }
}
