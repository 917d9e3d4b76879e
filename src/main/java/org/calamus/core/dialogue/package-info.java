/** The dialogue as a pure state machine: events in, effects out. May use all of core. */
package org.calamus.core.dialogue;
