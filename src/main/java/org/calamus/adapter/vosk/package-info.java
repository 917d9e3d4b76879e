/**
 * The speech recogniser: where its model comes from, and the native library itself.
 *
 * <p>The only package that knows the Vosk and JNA classes. May depend on the acoustic model's
 * builder, the ports and the core.
 */
package org.calamus.adapter.vosk;
