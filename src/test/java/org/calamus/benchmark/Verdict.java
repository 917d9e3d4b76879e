package org.calamus.benchmark;

/** What came of an utterance in the dialogue. */
enum Verdict {
  /** What was meant came of it. */
  RIGHT,
  /** Nothing came of it, or the bander is asked: no harm, it is said again. */
  AGAIN,
  /** Something that was not meant was taken or done. */
  WRONG
}
