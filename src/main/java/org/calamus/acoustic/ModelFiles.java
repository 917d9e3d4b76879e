package org.calamus.acoustic;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A finished model: what to write under which path of its folder.
 *
 * @param files bytes by path, "/" between folder and file; not to be changed
 */
public record ModelFiles(SortedMap<String, byte[]> files) {

  /** Copies the map. */
  public ModelFiles {
    files = Collections.unmodifiableSortedMap(new TreeMap<>(files));
  }
}
