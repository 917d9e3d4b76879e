package org.calamus.acoustic;

/**
 * A step in the graph of sounds.
 *
 * @param from state it leaves
 * @param to state it enters
 * @param phone the recogniser's number of the phone, 0 when nothing is heard in this step
 * @param state which of the phone's states is heard
 * @param senone how that sounds
 * @param loop whether it is one more frame of the same state
 * @param word number of the word that begins here, 0 for none
 * @param cost minus the log of its probability, weighed
 */
record Arc(
    int from, int to, int phone, int state, int senone, boolean loop, int word, double cost) {

  /** A step in which nothing is heard. */
  static Arc silent(int from, int to, double cost) {
    return new Arc(from, to, 0, 0, -1, false, 0, cost);
  }

  boolean isHeard() {
    return phone != 0;
  }

  Arc between(int newFrom, int newTo) {
    return new Arc(newFrom, newTo, phone, state, senone, loop, word, cost);
  }
}
