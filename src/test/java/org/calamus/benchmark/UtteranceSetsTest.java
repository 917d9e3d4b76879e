package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;
import org.junit.jupiter.api.Test;

/** What is said in the measurement. */
class UtteranceSetsTest {

  @Test
  void everyFieldThatIsSpokenIsAskedAndAnsweredInEachHalf() {
    for (Half half : Half.values()) {
      Set<List<String>> moments =
          UtteranceSets.of(half).stream().map(Said::before).collect(Collectors.toSet());
      Set<FieldId> asked = new HashSet<>();
      moments.forEach(m -> Moments.after(m).state().open().ifPresent(asked::add));
      for (FieldSpec field : Moments.form().fields()) {
        if (!(field.kind() instanceof FieldKind.Note)) {
          assertThat(asked).as(half.name()).contains(field.id());
        }
      }
    }
  }

  @Test
  void whatIsSaidMeansSomethingAtItsMoment() {
    // the session ends without a word, and behind "something else" the bander speaks a memo
    List<Said> all =
        UtteranceSets.of(Half.TUNING).stream()
            .filter(s -> !Set.of("end session", "something else").contains(s.words()))
            .toList();
    for (int i = 0; i < all.size(); i += 7) {
      Said said = all.get(i);
      Moment before = Moments.after(said.before());

      assertThat(before.says(said.words()).replySince(before)).as(said.words()).isNotEmpty();
    }
  }

  @Test
  void halvesShareNoDrawnNumberOfABand() {
    Set<String> tuning = bands(Half.TUNING);

    assertThat(tuning).hasSizeGreaterThan(4).doesNotContainAnyElementsOf(bands(Half.REPORTING));
  }

  private static Set<String> bands(Half half) {
    return UtteranceSets.of(half).stream()
        .filter(s -> s.set().equals("band, whole"))
        .map(Said::words)
        .collect(Collectors.toSet());
  }

  @Test
  void reasonsOfACorrectionAreSaidWhenTheyAreAsked() {
    Judge judge = new Judge();
    List<Said> reasons =
        UtteranceSets.of(Half.TUNING).stream()
            .filter(s -> s.before().equals(Moments.askingTheReason()))
            .toList();
    assertThat(reasons).hasSize(6).allMatch(judge::isListenedFor);
    Set<String> results = new HashSet<>();
    for (Said reason : reasons) {
      Moment before = Moments.after(reason.before());
      Moment after = before.says(reason.words());
      results.add(after.kept() + after.replySince(before));
    }
    assertThat(results).as("another thing came of each").hasSize(6);
  }
}
