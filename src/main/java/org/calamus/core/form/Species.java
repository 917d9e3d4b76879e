package org.calamus.core.form;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.FieldId;

/**
 * What the species table knows of a species. Whatever it does not know is empty and disables the
 * rule that would need it; nothing here is a law.
 *
 * @param code the alpha code, such as {@code WBNU}
 * @param number the species number as struck on a keypad, such as {@code 7270}; may be empty
 * @param name the English name
 * @param scientific the scientific name; may be empty
 * @param bandSizes the recommended band sizes, the most used first
 * @param isOnlySize whether no other band size may be used, as for the kinglets
 * @param ranges plausible measures by field: lengths in millimetres, the mass in grams
 * @param plumage at what age the plumage tells the sex
 * @param broodPatch which sex gets a brood patch
 * @param sources the tags of the sources of the row, as the table's header explains them
 * @param notes remarks for the bander; may be empty
 */
public record Species(
    String code,
    String number,
    String name,
    String scientific,
    BySex<List<String>> bandSizes,
    boolean isOnlySize,
    Map<FieldId, BySex<Range>> ranges,
    Plumage plumage,
    BroodPatch broodPatch,
    String sources,
    String notes) {

  /** Checks that the parts are there, and copies the map. */
  public Species {
    Objects.requireNonNull(code);
    Objects.requireNonNull(number);
    Objects.requireNonNull(name);
    Objects.requireNonNull(scientific);
    Objects.requireNonNull(bandSizes);
    ranges = Map.copyOf(ranges);
    Objects.requireNonNull(plumage);
    Objects.requireNonNull(broodPatch);
    Objects.requireNonNull(sources);
    Objects.requireNonNull(notes);
  }

  /** At what age the plumage tells the sex. */
  public enum Plumage {
    /** Adults can be sexed by their plumage, at least in the breeding season. */
    ADULTS,
    /** Birds of the year can be sexed too once they have left the juvenal plumage. */
    ALL_AGES,
    /** The sexes look alike. */
    NO,
    /** The table does not say. */
    UNKNOWN
  }

  /** Which sex gets a brood patch in the breeding season. */
  public enum BroodPatch {
    /** The female alone. */
    FEMALE,
    /** The female and the male. */
    BOTH,
    /** The female, and the male in part or now and then. */
    MALE_PARTIAL,
    /** Neither sex: a brood parasite. */
    NEITHER,
    /** The table does not say. */
    UNKNOWN
  }

  /**
   * The recommended band sizes of a bird.
   *
   * @param sex the code of its sex, {@code M}, {@code F} or {@code U}; empty where none was given
   * @return the most used first; empty where the table has none
   */
  public List<String> bandSizes(Optional<String> sex) {
    return bandSizes.of(sex).orElse(List.of());
  }

  /**
   * The plausible measures of a bird.
   *
   * @param field a measured field
   * @param sex the code of its sex, {@code M}, {@code F} or {@code U}; empty where none was given
   * @return the range of its sex where the table has one, or else of the species; empty where the
   *     table has neither
   */
  public Optional<Range> range(FieldId field, Optional<String> sex) {
    return Optional.ofNullable(ranges.get(field)).flatMap(r -> r.of(sex));
  }
}
