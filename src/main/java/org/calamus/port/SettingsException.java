package org.calamus.port;

import java.util.List;

/** Something that a person wrote for Calamus cannot be used as it is. */
public final class SettingsException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<String> problems;

  /**
   * Made with everything that is wrong.
   *
   * @param problems one sentence each, beginning with file and line where there is one
   */
  public SettingsException(List<String> problems) {
    super(String.join(System.lineSeparator(), problems));
    this.problems = List.copyOf(problems);
  }

  /** Made with one sentence. */
  public SettingsException(String problem) {
    this(List.of(problem));
  }

  /** Everything that is wrong, one sentence each. */
  public List<String> problems() {
    return problems;
  }
}
