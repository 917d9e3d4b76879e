package org.calamus.core.record;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * What kind of capture a record is. The letters are those of the capture codes that constant-effort
 * stations use (DeSante and others, MAPS Manual: N, R and U confirmed in analysts' notes, C, A, L
 * and D from memory); F is our own.
 */
public enum CaptureKind {
  /** A band of the station's is put on a bird that wears none. */
  NEW("N"),
  /** The bird wears a band of the station's. */
  RECAPTURE("R"),
  /** The bird wears a band from elsewhere. */
  FOREIGN("F"),
  /** The bird's band is taken off and another is put on. */
  REPLACED("C"),
  /** The bird keeps its band and gets another beside it. */
  ADDED("A"),
  /** The bird is released without a band. */
  UNBANDED("U"),
  /** A band was lost; there is no bird. */
  LOST("L"),
  /** A band was destroyed or is defective; there is no bird. */
  DESTROYED("D");

  private final String code;

  CaptureKind(String code) {
    this.code = code;
  }

  /** The code as stored in {@link FieldId#KIND}. */
  public String code() {
    return code;
  }

  /** The name as it stands in files that people write: {@code new}. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The kind of a code. */
  public static Optional<CaptureKind> ofCode(String code) {
    return Arrays.stream(values()).filter(k -> k.code.equals(code)).findFirst();
  }

  /** Whether there is a bird in the hand. */
  public boolean hasBird() {
    return this != LOST && this != DESTROYED;
  }

  /** Whether a band of the station's own strings is used up. */
  public boolean usesBand() {
    return putsBand() || !hasBird();
  }

  /** Whether a band is put on the bird. */
  public boolean putsBand() {
    return this == NEW || this == REPLACED || this == ADDED;
  }

  /** The field that holds the number read from the bird's own band; empty where it wears none. */
  public Optional<FieldId> bandRead() {
    return switch (this) {
      case RECAPTURE, FOREIGN -> Optional.of(FieldId.BAND);
      case REPLACED, ADDED -> Optional.of(FieldId.OLD_BAND);
      default -> Optional.empty();
    };
  }
}
