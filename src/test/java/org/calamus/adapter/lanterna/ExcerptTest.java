package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.calamus.core.dialogue.View;
import org.junit.jupiter.api.Test;

class ExcerptTest {

  private static List<String> labels(Excerpt excerpt) {
    return excerpt.shown().stream().map(View.Line::label).toList();
  }

  @Test
  void ofKeepsAllInTheFormsOrderWhenThereIsRoom() {
    List<View.Line> lines = LongRecord.lines();
    assertThat(Excerpt.of(lines, 20)).isEqualTo(new Excerpt(lines, ""));
  }

  @Test
  void ofKeepsWhatIsAskedAndTheLastTakenWhenRoomIsShort() {
    Excerpt excerpt = Excerpt.of(LongRecord.lines(), 5);
    assertThat(labels(excerpt))
        .containsExactly(
            "Flight-feather moult",
            "Flight-feather wear",
            "Juvenal plumage",
            "Wing chord",
            "Band size");
    assertThat(excerpt.more()).isEqualTo("11 more taken, 4 more empty");
  }

  @Test
  void ofKeepsWhatIsMissingBeforeWhatIsTaken() {
    Excerpt excerpt = Excerpt.of(LongRecord.recapture(), 2);
    assertThat(labels(excerpt)).containsExactly("Age", "Sex");
    assertThat(excerpt.more()).isEqualTo("3 more taken, 15 more empty");
  }

  @Test
  void ofSaysSoWhenEvenSomethingMissingIsLeftOut() {
    assertThat(Excerpt.of(LongRecord.begun(), 1).more()).isEqualTo("3 more missing, 16 more empty");
  }

  @Test
  void ofShowsTheEndOfTheRecordWhenNothingIsAsked() {
    List<View.Line> taken = LongRecord.lines().subList(0, 13);
    assertThat(labels(Excerpt.of(taken, 2)))
        .containsExactly("Flight-feather moult", "Flight-feather wear");
  }
}
