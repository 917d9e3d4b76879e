package org.calamus.core.record;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * An immutable map for tens of thousands of keys of which a changed copy is cheap: the keys lie on
 * a thousand shelves by their hash, and a copy shares all shelves but one.
 */
final class Shelves<K, V> {

  /** With 50,000 keys a change copies this many references and about 50 keys. */
  private static final int COUNT = 1024;

  private final List<Map<K, V>> shelves;

  private Shelves(List<Map<K, V>> shelves) {
    this.shelves = Collections.unmodifiableList(shelves);
  }

  /** A copy of a map. */
  static <K, V> Shelves<K, V> of(Map<K, V> all) {
    List<Map<K, V>> filling = new ArrayList<>(COUNT);
    for (int i = 0; i < COUNT; i++) {
      filling.add(new HashMap<>());
    }
    all.forEach((key, value) -> filling.get(shelf(key)).put(key, value));
    filling.replaceAll(Map::copyOf);
    return new Shelves<>(filling);
  }

  Optional<V> get(K key) {
    return Optional.ofNullable(shelves.get(shelf(key)).get(key));
  }

  Stream<V> values() {
    return shelves.stream().flatMap(shelf -> shelf.values().stream());
  }

  Shelves<K, V> with(K key, V value) {
    Map<K, V> changed = new HashMap<>(shelves.get(shelf(key)));
    changed.put(key, value);
    return exchanged(shelf(key), changed);
  }

  Shelves<K, V> without(K key) {
    Map<K, V> changed = new HashMap<>(shelves.get(shelf(key)));
    changed.remove(key);
    return exchanged(shelf(key), changed);
  }

  private Shelves<K, V> exchanged(int shelf, Map<K, V> content) {
    List<Map<K, V>> changed = new ArrayList<>(shelves);
    changed.set(shelf, Map.copyOf(content));
    return new Shelves<>(changed);
  }

  private static int shelf(Object key) {
    int hash = key.hashCode();
    return Math.floorMod(hash ^ hash >>> 16, COUNT);
  }
}
