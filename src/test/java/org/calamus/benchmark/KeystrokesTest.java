package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class KeystrokesTest {

  @Test
  void aWholeBirdTakesFewerKeysThanItHasCharacters() {
    Keystrokes.Cost whole =
        Keystrokes.costs().stream()
            .filter(cost -> cost.name().equals("new, all sixteen fields asked"))
            .findFirst()
            .orElseThrow();
    assertThat(whole.fields()).isEqualTo(16);
    assertThat(whole.keys()).isLessThanOrEqualTo(whole.stored());
  }

  @Test
  void noKindOfCaptureTakesMoreThanTenKeysAField() {
    assertThat(Keystrokes.costs())
        .allSatisfy(c -> assertThat(c.keys()).as(c.name()).isLessThanOrEqualTo(10 * c.fields()));
  }
}
