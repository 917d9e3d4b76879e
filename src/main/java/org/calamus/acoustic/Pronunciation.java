package org.calamus.acoustic;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * A way to say a word or a phrase.
 *
 * @param phones base phone numbers, at least one
 * @param seams the places of phones with which a further word of a phrase begins; there may be a
 *     pause before each
 */
record Pronunciation(List<Integer> phones, SortedSet<Integer> seams) {

  /** Copies the list. */
  Pronunciation {
    phones = List.copyOf(phones);
  }

  /** Of a word alone. */
  static Pronunciation of(List<Integer> phones) {
    return new Pronunciation(phones, new TreeSet<>());
  }

  /** With another word behind it. */
  Pronunciation then(Pronunciation next) {
    List<Integer> all = new ArrayList<>(phones);
    all.addAll(next.phones);
    SortedSet<Integer> places = new TreeSet<>(seams);
    places.add(phones.size());
    return new Pronunciation(all, places);
  }

  /** The same for the recogniser, to which a phrase is one word. */
  Pronunciation asOneWord() {
    return of(phones);
  }

  int first() {
    return phones.get(0);
  }

  int last() {
    return phones.get(phones.size() - 1);
  }

  /** How many words it has. */
  int words() {
    return seams.size() + 1;
  }

  /** Where in its own word a phone stands. */
  Position position(int place) {
    boolean begins = place == 0 || seams.contains(place);
    boolean ends = place == phones.size() - 1 || seams.contains(place + 1);
    if (begins && ends) {
      return Position.SINGLE;
    }
    return begins ? Position.BEGIN : ends ? Position.END : Position.INTERNAL;
  }
}
