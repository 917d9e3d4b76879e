/**
 * The ears: where the recogniser's model comes from, and speech to words with Vosk.
 *
 * <p>The only package that knows the Vosk and JNA classes. May depend on the acoustic model's
 * builder, the ports and the core.
 */
package org.calamus.adapter.vosk;
