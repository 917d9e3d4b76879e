package org.calamus.acoustic;

import java.util.ArrayList;
import java.util.List;

/**
 * The recogniser's phone numbers: silence, two sorts of noise, the pause in a phrase, then each
 * speech phone in each position of a word.
 */
final class KaldiPhones {

  /** The pause between words. */
  static final int SILENCE = 1;

  /** The pause between the words of a phrase: for the recogniser it is within a word. */
  static final int PAUSE_WITHIN = 4;

  /** Phones that are no speech; they come first. */
  static final List<String> NOT_SPEECH = List.of("SIL", "SPN", "NSN");

  private final int[] firstOfBase;
  private final int count;

  KaldiPhones(PhoneTable phones) {
    firstOfBase = new int[phones.basePhoneCount()];
    int next = PAUSE_WITHIN + 1;
    for (int base : phones.speech()) {
      firstOfBase[base] = next;
      next += Position.values().length;
    }
    count = next - 1;
  }

  /** How many there are; they are numbered from 1. */
  int count() {
    return count;
  }

  int number(int basePhone, Position position) {
    return firstOfBase[basePhone] + position.ordinal();
  }

  /** For each phone in order, what it says about word boundaries. */
  List<String> boundaries() {
    List<String> boundaries = new ArrayList<>();
    NOT_SPEECH.forEach(noise -> boundaries.add("nonword"));
    boundaries.add(Position.INTERNAL.boundary);
    while (boundaries.size() < count) {
      for (Position position : Position.values()) {
        boundaries.add(position.boundary);
      }
    }
    return boundaries;
  }
}
