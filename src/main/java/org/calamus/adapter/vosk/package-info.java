/**
 * The ears: speech to words with Vosk. The only package that uses the recogniser and JNA. May
 * depend on port and core.
 */
package org.calamus.adapter.vosk;
