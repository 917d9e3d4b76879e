/** Sound from a microphone or a recording, for the ears. May depend on port and core. */
package org.calamus.adapter.microphone;
