package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.junit.jupiter.api.Test;

/** Birds that were written on paper and are entered on a later day, here on 13 June 2026. */
class EnteredLaterTest {

  private static final String DATE =
      String.format(
          Locale.ROOT,
          "+%02d",
          Fenwick.form().fields().stream().map(FieldSpec::id).toList().indexOf(FieldId.DATE) + 1);

  private static Talk dated() {
    return Talk.atFenwick().say("capture date").say("one two june");
  }

  private static List<String> rows(Talk talk) {
    return talk.view().page().orElseThrow().rows().stream().map(Page.Row::text).toList();
  }

  @Test
  void theDateIsNamedThenSaidAndReadBackWithItsYear() {
    Talk talk = Talk.atFenwick().say("capture date");
    assertThat(talk.lastSpoken()).isEqualTo("capture date");
    assertThat(talk.view().asked()).isEqualTo("Capture date");
    talk.say("one two june");
    assertThat(talk.field(FieldId.DATE)).isEqualTo("2026-06-12");
    assertThat(talk.lastSpoken()).isEqualTo("capture date one two june two zero two six. band");
  }

  @Test
  void theDateIsStruckAsItIsShown() {
    assertThat(Talk.atFenwick().keys(DATE + "0612\n").field(FieldId.DATE)).isEqualTo("2026-06-12");
    assertThat(Talk.atFenwick().keys(DATE + "20260612\n").field(FieldId.DATE))
        .isEqualTo("2026-06-12");
    Talk wrong = Talk.atFenwick().keys(DATE + "1306\n");
    assertThat(wrong.field(FieldId.DATE)).isEqualTo("-");
    assertThat(wrong.view().message())
        .isEqualTo("Not taken: a date is month and day, such as 0616, or with its year, 20260616.");
  }

  @Test
  void theDateIsCorrectedLikeAnyValue() {
    Talk talk = dated().say("correction one one june");
    assertThat(talk.field(FieldId.DATE)).isEqualTo("2026-06-11");
    assertThat(talk.say("no november five").view().question())
        .contains(
            "Capture date 2025-11-05 is 220 days before the bird was entered; from 2026-06-06"
                + " on would fit. Keep 2025-11-05?");
    assertThat(talk.lastSpoken())
        .isEqualTo(
            "capture date five november two zero two five is two two zero days ago."
                + " keep capture date five november two zero two five");
    assertThat(talk.say("negative").field(FieldId.DATE)).isEqualTo("2026-06-11");
  }

  /** The band is asked then, and no month is listened for: the recogniser makes it unknown. */
  @Test
  void aDateThatIsCorrectedWhileMonthsAreNotHeardGetsAHint() {
    assertThat(dated().say("correction one one [unk]").lastSpoken())
        .isEqualTo("say correction alone, then the date");
    Talk talk = dated().say("correction");
    assertThat(talk.view().asked()).isEqualTo("Capture date");
    assertThat(talk.say("one one june").field(FieldId.DATE)).isEqualTo("2026-06-11");
  }

  @Test
  void thirteenAndThirtyAreAskedAboutAndEitherIsSaidInDigits() {
    Talk talk = Talk.atFenwick().say("capture date").say("thirty may");
    assertThat(talk.field(FieldId.DATE)).isEqualTo("-");
    assertThat(talk.lastSpoken())
        .isEqualTo(
            "capture date, one three may two zero two six, or three zero may two zero two six. say"
                + " the day in digits");
    assertThat(talk.view().question().orElseThrow())
        .contains("Capture date 2026-05-13 or 2026-05-30? They sound alike");
    // 14 days ago and more: either may be meant, and the one that is meant is asked about
    talk.say("three zero may");
    assertThat(talk.lastSpoken()).contains("is one four days ago");
    assertThat(talk.say("affirm").field(FieldId.DATE)).isEqualTo("2026-05-30");
  }

  @Test
  void aBirdOfThisMorningIsNotInTheHandInTheEvening() {
    Talk talk = Talk.atFenwick().say("capture date").say("one three june");
    assertThat(talk.field(FieldId.DATE)).isEqualTo("2026-06-13");
    talk.keys("284155601\n").say("capture time zero five three zero");
    assertThat(talk.field(FieldId.TIME)).isEqualTo("05:30");
    assertThat(talk.view().inHand()).isEmpty();
    talk.say("capture time zero six two zero");
    assertThat(talk.view().inHand()).as("caught within the hour").isPresent();
  }

  /** On the next day the bird was caught again, before its first capture was entered from paper. */
  @Test
  void aBandThatWasOnlyReadLaterCanBePutOnBefore() {
    PastCapture read =
        new PastCapture(
            100,
            Instant.parse("2026-06-13T05:00:00Z"),
            "Fenwick Marsh",
            "QX",
            Map.of(
                FieldId.KIND, new FieldValue.Code("R"),
                FieldId.BAND, new BandNumber("2841", "55601")),
            Set.of());
    Known known = Known.of(List.of(), List.of(read), Fenwick.ZONE);
    Talk live = new Talk(Fenwick.setup(), known).keys("284155601\n");
    assertThat(live.field(FieldId.KIND)).isEqualTo("R");
    Talk talk = new Talk(Fenwick.setup(), known).keys(DATE + "0612\n").keys("284155601\n");
    assertThat(talk.field(FieldId.KIND)).isEqualTo("-");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("2841-55601");
    talk.keys(DATE + "0613\n");
    assertThat(talk.field(FieldId.DATE)).as("then it would be used").isEqualTo("2026-06-12");
    Talk late = new Talk(Fenwick.setup(), known).keys(DATE + "0613\n").keys("284155601\n");
    assertThat(late.field(FieldId.KIND)).as("a capture of the same day").isEqualTo("R");
  }

  @Test
  void aMonthWithoutADayAndADateInFiguresGetAHint() {
    Talk talk = Talk.atFenwick().say("capture date").say("one two six");
    assertThat(talk.lastSpoken()).isEqualTo("say the day, then the month by its name");
    assertThat(talk.say("two four").lastSpoken())
        .isEqualTo("capture date, the day, then the month by its name, or correction");
  }

  @Test
  void aDayThatHasNotComeIsRefused() {
    Talk talk = Talk.atFenwick().keys(DATE + "20260614\n");
    assertThat(talk.field(FieldId.DATE)).isEqualTo("-");
    assertThat(talk.lastSpoken())
        .isEqualTo("capture date one four june two zero two six has not come yet. again");
  }

  @Test
  void nobodyHoldsABirdThatWasEnteredLater() {
    Talk held = Talk.atFenwick().keys("284155601\n");
    held.event(new Event.Ticked(held.now().plus(Duration.ofMinutes(20))));
    assertThat(held.view().hold()).isEqualTo(View.Hold.OVER);
    Talk talk = dated().keys("284155601\n");
    talk.spoken();
    talk.event(new Event.Ticked(talk.now().plus(Duration.ofMinutes(20))));
    assertThat(talk.view().hold()).isEqualTo(View.Hold.WITHIN);
    assertThat(talk.view().inHand()).isEmpty();
    assertThat(talk.spoken()).isEmpty();
  }

  @Test
  void theRecordStandsOnItsDayAndIsProofReadWithThoseEnteredToday() {
    Talk talk = dated().keys("284155601\n").say("song sparrow").say("second year").say("male");
    talk.say("wing six two").say("mass two zero point one").say("save record");
    assertThat(talk.saved()).isEqualTo(1);
    assertThat(PastCapture.of(talk.asSaved(1)).day(Fenwick.ZONE))
        .isEqualTo(LocalDate.of(2026, 6, 12));
    assertThat(rows(talk.keys("+71"))).anyMatch(r -> r.matches("06-12 +2841-55601 +SOSP.*"));
    talk.keys("1\n");
    assertThat(talk.view().page().orElseThrow().title())
        .startsWith("Record 1, 2026-06-12, entered 2026-06-13 ");
    assertThat(rows(talk)).anyMatch(r -> r.matches(".*Capture date +2026-06-12.*"));
  }

  @Test
  void anAgeIsHeldAgainstTheDayOfTheCapture() {
    Talk talk = Talk.atFenwick().keys("284155601\n").say("song sparrow").say("hatching year");
    talk.spoken();
    talk.keys(DATE + "20260301\n");
    assertThat(talk.field(FieldId.DATE)).isEqualTo("-");
    assertThat(talk.lastSpoken()).contains("cannot be in march");
  }
}
