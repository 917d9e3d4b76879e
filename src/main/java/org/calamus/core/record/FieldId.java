package org.calamus.core.record;

/** The fields of a capture record that a person or an instrument fills. */
public enum FieldId {
  /** The number stamped on the band. */
  BAND,
  /** The species, as a code of the species table. */
  SPECIES,
  /** The age class, as a code of the age table. */
  AGE,
  /** The sex, as a code of the sex table. */
  SEX,
  /** The unflattened wing chord, in millimetres. */
  WING,
  /** The body mass, in grams. */
  MASS
}
