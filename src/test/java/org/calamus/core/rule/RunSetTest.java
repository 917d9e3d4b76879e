package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.TreeSet;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class RunSetTest {

  @Test
  void agreesWithASetOfSingleNumbers() {
    Random random = new Random(55601);
    RunSet runs = RunSet.EMPTY;
    TreeSet<Long> numbers = new TreeSet<>();
    for (int i = 0; i < 300; i++) {
      long number = random.nextInt(200) + 1;
      runs = runs.with(number);
      numbers.add(number);
      long from = random.nextInt(200) + 1;
      long to = from + random.nextInt(50);
      assertThat(runs.contains(from)).isEqualTo(numbers.contains(from));
      assertThat(runs.count(from, to)).isEqualTo(numbers.subSet(from, true, to, true).size());
      assertThat(runs.firstAbsent(from, to))
          .isEqualTo(
              LongStream.rangeClosed(from, to).filter(n -> !numbers.contains(n)).findFirst());
      assertThat(
              runs.absent(from, to).stream()
                  .flatMapToLong(r -> LongStream.rangeClosed(r.first(), r.last())))
          .containsExactlyElementsOf(
              LongStream.rangeClosed(from, to).filter(n -> !numbers.contains(n)).boxed().toList());
    }
  }

  @Test
  void isTheSameInWhateverOrderItGrew() {
    RunSet up = RunSet.EMPTY.with(1).with(2).with(3).with(7);
    RunSet down = RunSet.EMPTY.with(7).with(3).with(1).with(2);
    assertThat(up).isEqualTo(down).hasSameHashCodeAs(down).isNotEqualTo(RunSet.EMPTY.with(1));
    assertThat(up.with(2)).isSameAs(up);
  }
}
