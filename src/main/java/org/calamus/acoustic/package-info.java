/**
 * Turns the open acoustic tables that ship with Calamus into a model the recogniser loads.
 *
 * <p>Bytes in, bytes out: nothing here opens a file, reads a clock or starts a thread, and equal
 * input gives equal bytes. May depend on the JDK alone.
 *
 * <p>The tables describe each sound as a mixture of Gaussians; the recogniser wants a neural
 * network and a graph of sounds. {@link org.calamus.acoustic.ModelBuilder} is the way in. It reads
 * the tables, finds out how each word is said, lays the words out as a graph, and writes the
 * mixtures as a network whose fixed components compute them.
 */
package org.calamus.acoustic;
