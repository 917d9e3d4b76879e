package org.calamus.core.dialogue;

/** How the console is spoken to. */
public enum Talk {
  /** The ears are open all the time. */
  OPEN,
  /** The talk key opens the ears for one utterance. */
  KEY
}
