package org.calamus.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * One utterance of one speaker, in a room where others may speak as well.
 *
 * @param speaker who says it
 * @param said what is said
 */
record Turn(Speaker speaker, Said said) {

  /** Each speaker in a room of their own. */
  static List<List<Turn>> alone(Map<Speaker, List<Said>> said) {
    List<List<Turn>> rooms = new ArrayList<>();
    said.forEach((speaker, all) -> rooms.add(all.stream().map(s -> new Turn(speaker, s)).toList()));
    return rooms;
  }

  /**
   * Two speakers in each room, as different ones as there are: the first of the list with the first
   * of its second half, and so on; of an odd number the last is alone.
   *
   * @param said what each of them says, in their order
   * @param length so many utterances one says, then the other
   */
  static List<List<Turn>> byTwo(Map<Speaker, List<Said>> said, int length) {
    List<List<Turn>> alone = alone(said);
    int half = alone.size() / 2;
    List<List<Turn>> rooms = new ArrayList<>();
    for (int i = 0; i < half; i++) {
      rooms.add(inTurn(alone.get(i), alone.get(half + i), length));
    }
    rooms.addAll(alone.subList(2 * half, alone.size()));
    return rooms;
  }

  private static List<Turn> inTurn(List<Turn> one, List<Turn> other, int length) {
    List<Turn> both = new ArrayList<>();
    for (int from = 0; from < Math.max(one.size(), other.size()); from += length) {
      for (List<Turn> mine : List.of(one, other)) {
        both.addAll(
            mine.subList(Math.min(from, mine.size()), Math.min(from + length, mine.size())));
      }
    }
    return both;
  }
}
