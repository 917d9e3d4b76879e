package org.calamus.core.record;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * The fields of a capture record that a person or an instrument fills. Which of them a station uses
 * is said by its form.
 */
public enum FieldId {
  /** What kind of capture it is, as a code of the kind table: new, recapture, foreign and so on. */
  KIND,
  /** The number stamped on the band that the bird wears when it goes; or that became of a fate. */
  BAND,
  /** The number that the bird wore when it was caught, where its band is replaced or added to. */
  OLD_BAND,
  /** The size of the band, as a code of the band size table. */
  BAND_SIZE,
  /** The size that the leg gauge says, as a code of the band size table. */
  LEG_GAUGE,
  /** The species, as a code of the species table. */
  SPECIES,
  /** The age class in calendar years, as a code of the age table. */
  AGE,
  /** What the age was judged by, one or more codes of the how-aged table. */
  HOW_AGED,
  /** The sex, as a code of the sex table. */
  SEX,
  /** What the sex was judged by, one or more codes of the how-sexed table. */
  HOW_SEXED,
  /** How far the skull is pneumatized, 0 to 6, or 8 where it could not be told. */
  SKULL,
  /** The size of the cloacal protuberance, 0 to 3. */
  CLOACAL_PROTUBERANCE,
  /** The state of the brood patch, 0 to 5. */
  BROOD_PATCH,
  /** The fat in the furculum and on the belly, on the scale that the fat table names. */
  FAT,
  /** The extent of moult of the body feathers, 0 to 4. */
  BODY_MOULT,
  /** The kind of moult of the flight feathers. */
  FLIGHT_MOULT,
  /** The wear of the outer primaries, 0 to 5. */
  FEATHER_WEAR,
  /** The extent of juvenal body plumage, 0 to 3. */
  JUVENAL_PLUMAGE,
  /** The unflattened wing chord, in millimetres. */
  WING,
  /** The tail from the base of the central rectrices to the longest tip, in millimetres. */
  TAIL,
  /** The tarsus, in millimetres. */
  TARSUS,
  /** The exposed culmen, from the edge of the feathering to the tip, in millimetres. */
  CULMEN,
  /** The body mass, in grams. */
  MASS,
  /** The net that caught the bird, as a code of the station's net table. */
  NET,
  /** When the bird was taken from the net, as the clock at the station showed it. */
  TIME,
  /** The day on which the bird was caught, where the record was begun on a later one. */
  DATE,
  /** Who banded, as initials. */
  BANDER,
  /** Who wrote, as initials. */
  SCRIBE,
  /** The status of the bird and of its marks, as a code of the status table. */
  STATUS,
  /** How the bird left the hand, as a code of the release table. */
  RELEASE,
  /** What is wrong with the bird, one or more codes of the disposition table. */
  DISPOSITION,
  /** Free remarks, written or spoken. */
  NOTE;

  /** The name as it stands in files that people write: {@code how-aged}. */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The field of a name as {@link #key} gives it. */
  public static Optional<FieldId> ofKey(String key) {
    return Arrays.stream(values()).filter(f -> f.key().equals(key)).findFirst();
  }
}
