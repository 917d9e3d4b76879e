package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Test;

class RedrawsTest {

  /** A line of 9600 bits a second carries 960 bytes in one. */
  @Test
  void theLevelAndAMessageCostALittleOnASlowLineAndNothingMoreThanFour() throws IOException {
    assertThat(new Redraws(0, 1).costs())
        .hasSize(12)
        .allSatisfy(
            cost ->
                assertThat(cost.bytes())
                    .as(cost.toString())
                    .isBetween(1, isSmall(cost) ? 120 : 4 * 960));
  }

  private static boolean isSmall(Redraws.Cost cost) {
    return cost.name().equals("the level alone") || cost.name().equals("a message");
  }
}
