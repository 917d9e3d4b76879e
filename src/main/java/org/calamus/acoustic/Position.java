package org.calamus.acoustic;

/** Where in a word a phone stands. The order is that of the recogniser's phone names. */
enum Position {
  BEGIN("begin", "B", 1),
  INTERNAL("internal", "I", 0),
  END("end", "E", 2),
  SINGLE("singleton", "S", 3);

  /** Name in the recogniser's word boundary file. */
  final String boundary;

  /** Suffix of the phone's name. */
  final String suffix;

  /** Number in the model definition table. */
  final int inTable;

  Position(String boundary, String suffix, int inTable) {
    this.boundary = boundary;
    this.suffix = suffix;
    this.inTable = inTable;
  }
}
