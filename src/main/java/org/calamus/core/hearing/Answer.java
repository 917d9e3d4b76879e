package org.calamus.core.hearing;

/** What was heard of one thing that the self-test asked for. */
public sealed interface Answer {

  /** It means what was asked for. */
  record Right() implements Answer {}

  /**
   * It means something else, or too little of it is sure.
   *
   * @param words what was heard
   */
  record HeardAs(String words) implements Answer {}

  /** No word of it was heard. */
  record NotHeard() implements Answer {}
}
