package org.calamus.core.form;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Something that is known of a species as a whole, of one of its sexes, or of both.
 *
 * @param whole what holds where the sex does not matter or is not known; empty where nothing does
 * @param own what holds for one sex only, by its code {@code F} or {@code M}
 * @param <T> what is known
 */
public record BySex<T>(Optional<T> whole, Map<String, T> own) {

  /** Copies the map. */
  public BySex {
    Objects.requireNonNull(whole);
    own = Map.copyOf(own);
  }

  /** Nothing is known. */
  public static <T> BySex<T> unknown() {
    return new BySex<>(Optional.empty(), Map.of());
  }

  /** The same for both sexes. */
  public static <T> BySex<T> same(T whole) {
    return new BySex<>(Optional.of(whole), Map.of());
  }

  /**
   * What holds for a bird.
   *
   * @param sex the code of its sex, {@code M}, {@code F} or {@code U}; empty where none was given
   * @return its own sex's where there is one, or else the whole species'
   */
  public Optional<T> of(Optional<String> sex) {
    return sex.map(own::get).or(() -> whole);
  }
}
