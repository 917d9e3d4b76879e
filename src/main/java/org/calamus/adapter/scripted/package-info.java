/**
 * Ears, voice and instruments that are played from text files, for the demonstration and for tests.
 * Depends on port and core.
 */
package org.calamus.adapter.scripted;
