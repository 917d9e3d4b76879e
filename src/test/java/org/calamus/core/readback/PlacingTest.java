package org.calamus.core.readback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.calamus.core.form.Range;
import org.calamus.core.readback.Strip.Place;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Captures;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Unit;
import org.calamus.core.rule.BandLedger;
import org.calamus.core.rule.Known;
import org.calamus.core.rule.StationSample;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.junit.jupiter.api.Test;

class PlacingTest {

  private static final Placing PLACING =
      new Placing(Fenwick.form(), Fenwick.species(), ZoneId.of("UTC"));

  @Test
  void drawnSpansTheLineAndKeepsItsEndsForBirdsOutside() {
    assertThat(strip("10", List.of()).drawn(12)).isEqualTo(" #--------] ");
    assertThat(strip("19", List.of()).drawn(12)).isEqualTo(" [--------# ");
    assertThat(strip("14", List.of()).drawn(12)).isEqualTo(" [---#----] ");
    assertThat(strip("9.9", List.of()).drawn(12)).isEqualTo("<[--------] ");
    assertThat(strip("19.1", List.of()).drawn(12)).isEqualTo(" [--------]>");
    assertThat(strip("9.9", List.of()).words()).isEqualTo("low");
    assertThat(strip("10", List.of()).words()).isEqualTo("inside");
    assertThat(strip("19", List.of()).words()).isEqualTo("inside");
    assertThat(strip("19.1", List.of()).words()).isEqualTo("high");
  }

  @Test
  void drawnShowsOwnBirdsByTheLettersOfTheirSexes() {
    Strip strip =
        strip(
            "18",
            List.of(
                new Strip.Own("M", 9, 8, range("14", "17")),
                new Strip.Own("F", 7, 7, range("12", "15"))));
    assertThat(strip.drawn(12)).isEqualTo(" [-ffbbmm#] ");
    assertThat(strip.words()).isEqualTo("inside, above 8 of 9 M, 7 of 7 F");
    assertThat(strip.sentence()).endsWith(": " + strip.words()).contains(" 18, published ");
  }

  @Test
  void drawnNeedsThreeCellsAndASpanOfNothingStandsInTheMiddle() {
    Strip point =
        new Strip(
            FieldId.WING,
            "wing",
            new BigDecimal("90"),
            Optional.empty(),
            List.of(),
            range("90", "90"));
    assertThat(point.drawn(3)).isEqualTo(" # ");
    assertThat(point.place()).isEqualTo(Place.UNKNOWN);
    assertThat(point.words()).isEqualTo("no published range");
    assertThat(point.sentence()).endsWith(": no published range").doesNotContain("published 1");
  }

  @Test
  void stripTakesThePublishedRangeOfTheSpecies() {
    CaptureRecord nuthatch = nuthatch().record().orElseThrow();
    Strip strip = strip(nuthatch, "92", Known.nothing()).orElseThrow();
    assertThat(strip.name()).isEqualTo("wing");
    assertThat(strip.published())
        .isEqualTo(
            Fenwick.species().byCode("WBNU").orElseThrow().range(FieldId.WING, Optional.of("M")));
    assertThat(strip.published()).isPresent();
    assertThat(strip.own()).isEmpty();
    assertThat(strip.place()).isEqualTo(Place.INSIDE);
    assertThat(strip(nuthatch, "29", Known.nothing()).orElseThrow().place()).isEqualTo(Place.LOW);
    assertThat(strip(nuthatch, "290", Known.nothing()).orElseThrow().place()).isEqualTo(Place.HIGH);
  }

  @Test
  void stripIsEmptyWhereNothingIsKnownOfTheSpecies() {
    Talk talk = Talk.atFenwick();
    talk.say("male");
    assertThat(strip(talk.record().orElseThrow(), "92", Known.nothing())).isEmpty();
  }

  @Test
  void stripCountsOwnBirdsOfEachSexOnceThereAreFive() {
    CaptureRecord nuthatch = nuthatch().record().orElseThrow();
    StationSample sample = sample("F", 4, sample("M", 20, StationSample.empty()));
    Strip strip = strip(nuthatch, "92", known(sample)).orElseThrow();
    // males of 81 to 100: two are left out at each end of the drawing, none of the count
    assertThat(strip.own()).containsExactly(new Strip.Own("M", 20, 11, range("83", "98")));
    assertThat(strip(nuthatch, "92", known(sample("F", 1, sample))).orElseThrow().own())
        .extracting(Strip.Own::sex)
        .containsExactly("M", "F");
  }

  @Test
  void stripShowsBirdsOfUnknownSexOnlyWhereNeitherSexHasEnough() {
    CaptureRecord nuthatch = nuthatch().record().orElseThrow();
    StationSample unknown = sample("U", 8, sample("M", 4, StationSample.empty()));
    assertThat(strip(nuthatch, "92", known(unknown)).orElseThrow().own())
        .extracting(Strip.Own::sex)
        .containsExactly("U");
    assertThat(strip(nuthatch, "92", known(sample("M", 1, unknown))).orElseThrow().own())
        .extracting(Strip.Own::sex)
        .containsExactly("M");
  }

  @Test
  void courseIsOfRecapturesOnlyAndTellsTheChangeSinceTheLast() {
    Known known =
        Known.of(
            List.of(),
            List.of(capture(901, "2026-05-02", "21.0"), capture(902, "2026-06-01", "22.4")),
            Fenwick.ZONE);
    CaptureRecord fresh = nuthatch().record().orElseThrow();
    assertThat(PLACING.course(fresh, Optional.empty(), known)).isEmpty();

    Talk talk = new Talk(Fenwick.setup(), known);
    talk.say("two eight four one five five six zero nine");
    CaptureRecord again = talk.record().orElseThrow();
    Course course = PLACING.course(again, Optional.of(new BigDecimal("21.9")), known).orElseThrow();
    assertThat(course.earlier())
        .containsExactly(
            new Course.Point(LocalDate.of(2026, 5, 2), new BigDecimal("21.0")),
            new Course.Point(LocalDate.of(2026, 6, 1), new BigDecimal("22.4")));
    assertThat(course.words()).isEqualTo("last 22.4 g on 2026-06-01, now -0.5");
    assertThat(course.drawn(6)).isEqualTo("_#=   ");
    assertThat(course.drawn(2)).isEqualTo("#=");
    assertThat(PLACING.course(again, Optional.empty(), known).orElseThrow().words())
        .isEqualTo("last 22.4 g on 2026-06-01");
  }

  @Test
  void courseOfOneMassStandsInTheMiddleAndOneOfNoneIsRefused() {
    Course.Point only = new Course.Point(LocalDate.of(2026, 5, 2), new BigDecimal("21.0"));
    assertThat(new Course(List.of(only), Optional.empty(), "g", range("20", "25")).drawn(3))
        .isEqualTo("=  ");
    assertThatThrownBy(() -> new Course(List.of(), Optional.empty(), "g", range("1", "2")))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static Strip strip(String amount, List<Strip.Own> own) {
    Range published = range("10", "19");
    return new Strip(
        FieldId.WING, "wing", new BigDecimal(amount), Optional.of(published), own, published);
  }

  private static Optional<Strip> strip(CaptureRecord record, String amount, Known known) {
    return PLACING.strip(record, FieldId.WING, new BigDecimal(amount), known);
  }

  private static Talk nuthatch() {
    return Talk.atFenwick()
        .say("two eight four one five five six zero one")
        .say("white breasted nuthatch second year male");
  }

  private static Known known(StationSample sample) {
    return new Known(BandLedger.empty(), Captures.none(), sample);
  }

  private static StationSample sample(String sex, int count, StationSample before) {
    return IntStream.rangeClosed(1, count)
        .mapToObj(i -> new BigDecimal(101 - i))
        .reduce(
            before, (sample, wing) -> sample.with("WBNU", sex, FieldId.WING, wing), (a, b) -> b);
  }

  private static PastCapture capture(long id, String day, String grams) {
    return new PastCapture(
        id,
        Instant.parse(day + "T12:00:00Z"),
        "Fenwick Marsh",
        "QX",
        Map.of(
            FieldId.BAND, BandNumber.parse("2841-55609").orElseThrow(),
            FieldId.SPECIES, new FieldValue.Code("WBNU"),
            FieldId.SEX, new FieldValue.Code("M"),
            FieldId.MASS, new FieldValue.Measure(new BigDecimal(grams), Unit.GRAM)),
        Set.of());
  }

  private static Range range(String least, String most) {
    return new Range(new BigDecimal(least), new BigDecimal(most));
  }
}
