package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What the peer writes, and how its settings are compared. */
class PeerTest {

  @Test
  void readGivesWordsBySoundWithOurWordForAllElse() {
    List<String> lines =
        List.of(
            "six(2) five (flite-slt-clean-0 -2110)",
            "garbage garbage nine (person-clean-1 -35)",
            " (sounds-clean-2 -1)");

    assertThat(Peer.read(lines))
        .isEqualTo(
            Map.of(
                "flite-slt-clean-0", "six five",
                "person-clean-1", "[unk] nine",
                "sounds-clean-2", ""));
  }

  @Test
  void scoreThatTakesTooMuchIsWorseHoweverMuchItHears() {
    Sweep.Score strict = new Sweep.Score(PeerSettings.DEFAULTS, 50, 1, 9);
    Sweep.Score loose = new Sweep.Score(PeerSettings.DEFAULTS, 90, 3, 9);

    assertThat(strict.isBetterThan(loose, 1)).isTrue();
    assertThat(loose.isBetterThan(strict, 1)).isFalse();
    assertThat(loose.isBetterThan(strict, 3)).isTrue();
  }
}
