package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Word;
import org.junit.jupiter.api.Test;

/** What the peer writes, and how its settings are compared. */
class PeerTest {

  @Test
  void readGivesWordsBySoundWithOurWordForAllElse() {
    List<String> lines =
        List.of(
            "flite-slt-clean-0 1 0.50 0.30 six(2) 0.875",
            "flite-slt-clean-0 1 0.80 0.25 five 1.000",
            "person-clean-1 1 0.40 0.10 garbage 0.500",
            "person-clean-1 1 0.50 0.10 garbage 0.500",
            "person-clean-1 1 0.60 0.40 nine 0.250");

    assertThat(Peer.read(lines))
        .isEqualTo(
            Map.of(
                "flite-slt-clean-0",
                List.of(new Word("six", 0.875, 500, 800), new Word("five", 1, 800, 1050)),
                "person-clean-1",
                List.of(new Word(Word.UNKNOWN, 0.5, 400, 500), new Word("nine", 0.25, 600, 1000))));
  }

  @Test
  void unsureWordIsAskedForAgainAndCountsAsTakenOnlyWhereItIsBelieved() {
    Said wing = new Said("wing", Moments.asking(FieldId.WING), "seven three", "seven three");
    List<Word> words = List.of(new Word("seven", 0.9, 0, 300), new Word("two", 0.4, 300, 600));

    PeerOutcome heard = PeerOutcome.of(wing, words, new Judge());

    assertThat(heard.sure().verdict()).isEqualTo(Verdict.WRONG);
    assertThat(heard.with(new PeerLimits(40, 0.3, 0.9)).verdict()).isEqualTo(Verdict.WRONG);
    assertThat(heard.with(new PeerLimits(40, 0.5, 0.3)).verdict()).isEqualTo(Verdict.AGAIN);
  }

  @Test
  void limitsThatTakeMoreThanWeDoAreWorseHoweverManyValuesTheyBring() {
    LimitSweep.Score ours = new LimitSweep.Score(50, 2, 1);
    LimitSweep.Score strict = new LimitSweep.Score(40, 2, 0);
    LimitSweep.Score loose = new LimitSweep.Score(60, 3, 1);

    assertThat(strict.isBetterThan(loose, ours)).isTrue();
    assertThat(loose.isBetterThan(strict, ours)).isFalse();
    assertThat(loose.isBetterThan(strict, new LimitSweep.Score(50, 3, 1))).isTrue();
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
