package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Who speaks when in a room. */
class TurnTest {

  @Test
  void byTwoLetsEachSaySoMuchAndThenTheOther() {
    Map<Speaker, List<Said>> said = said(Map.entry("a", 5), Map.entry("b", 3));

    assertThat(words(Turn.byTwo(said, 2)))
        .containsExactly(List.of("a0", "a1", "b0", "b1", "a2", "a3", "b2", "a4"));
  }

  @Test
  void byTwoPairsTheFirstHalfWithTheSecondAndLeavesTheOddOneAlone() {
    Map<Speaker, List<Said>> said =
        said(
            Map.entry("a", 1),
            Map.entry("b", 1),
            Map.entry("c", 1),
            Map.entry("d", 1),
            Map.entry("e", 1));

    assertThat(words(Turn.byTwo(said, 10)))
        .containsExactly(List.of("a0", "c0"), List.of("b0", "d0"), List.of("e0"));
  }

  @Test
  void aloneGivesEachARoom() {
    Map<Speaker, List<Said>> said = said(Map.entry("a", 2), Map.entry("b", 1));

    assertThat(words(Turn.alone(said))).containsExactly(List.of("a0", "a1"), List.of("b0"));
  }

  @SafeVarargs
  private static Map<Speaker, List<Said>> said(Map.Entry<String, Integer>... counts) {
    Map<Speaker, List<Said>> said = new LinkedHashMap<>();
    for (Map.Entry<String, Integer> count : counts) {
      Speaker speaker = new Speaker(count.getKey(), Half.TUNING, "", (words, file) -> {});
      said.put(
          speaker,
          IntStream.range(0, count.getValue())
              .mapToObj(i -> new Said("set", List.of(), count.getKey() + i, ""))
              .toList());
    }
    return said;
  }

  private static List<List<String>> words(List<List<Turn>> rooms) {
    return rooms.stream().map(r -> r.stream().map(t -> t.said().words()).toList()).toList();
  }
}
