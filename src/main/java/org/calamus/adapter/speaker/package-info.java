/** The voice: readback spoken aloud, and short tones. May depend on port and core. */
package org.calamus.adapter.speaker;
