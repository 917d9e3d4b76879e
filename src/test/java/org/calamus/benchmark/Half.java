package org.calamus.benchmark;

/** The two halves of all utterances and speakers. */
enum Half {
  /** Every setting was chosen on these. */
  TUNING,
  /** The figures that are published come from these; no setting was chosen on them. */
  REPORTING
}
