package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Captures;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whole findings, as a bander reads and hears them. */
class RuleWordsTest {

  private static final Rules RULES =
      new Rules(Fenwick.form(), Fenwick.reference(), Fenwick.policy());

  /** A rule, the day, the bird; then what is shown, and what is said. */
  private static final String FINDINGS =
      """
      wing.precision|2026-06-01|WING=91.25
      Wing chord 91.25 mm has more than one decimal place. Give it with one at most.
      wing nine one point two five has more than one decimal place. again
      how-aged.listed|2026-06-01|HOW_AGED=PL+LP+FF+PC+MR
      How aged PL LP FF PC MR has too many codes: at most 4 codes would fit.
      how aged has too many codes. at most four
      age.skull-adult|2026-06-01|AGE=AHY SKULL=4
      Skull 4 with Age AHY: until the end of August a skull of 5 or 6 would fit.
      skull four does not fit after hatching year
      age.skull-young|2026-09-01|SPECIES=WBNU AGE=HY SKULL=6
      Skull 6 with Age HY: a skull of 0 to 5 would fit before 1 October.
      skull six does not fit hatching year
      age.patch|2026-07-01|AGE=HY BROOD_PATCH=1
      Brood patch 1 with Age HY: in a bird hatched this year a score of 0 would fit.
      brood patch one does not fit hatching year
      age.how|2026-06-01|AGE=SY HOW_AGED=BP+CP
      Age SY judged by brood patch and cloacal protuberance: that does not show the year; AHY would fit, or name what showed it.
      age second year is not shown by brood patch and cloacal protuberance
      sex.both|2026-06-01|BROOD_PATCH=3 CLOACAL_PROTUBERANCE=2
      Cloacal protuberance 2 with Brood patch 3: one of the two at 0 or 1 would fit.
      protuberance two does not fit brood patch three
      sex.how|2026-06-01|SEX=U HOW_SEXED=PL
      How sexed PL: Sex is unknown, so how sexed should be empty; IC or NA would fit, too.
      how sexed plumage, but sex is unknown
      sex.by-wing|2026-06-01|SPECIES=RWBL WING=110 HOW_SEXED=WL
      How sexed WL, but Wing chord 110 mm fits both sexes (105 to 117 mm); another code would fit.
      wing one one zero fits both sexes
      sex.plumage-young|2026-07-01|SPECIES=AMRE HOW_SEXED=PL AGE=HY
      How sexed PL with Age HY: plumage tells the sex of adults only in this species; Sex U would fit.
      how sexed plumage does not fit hatching year
      how-aged.note|2026-06-01|HOW_AGED=PL+OT MASS=22.3
      How aged PL OT: "other reason" wants a remark; one that says what it was would fit.
      how aged other reason wants a remark
      how-sexed.wing|2026-06-01|HOW_SEXED=WL MASS=22.3
      How sexed WL, but Wing chord is empty: a wing would fit.
      how sexed wing length, but wing is empty
      how-aged.recapture|2026-06-01|HOW_AGED=RC
      How aged RC: recaptured bird is named, but this is a new band; a recapture or another code would fit.
      how aged recaptured bird, but this is a new band
      how-aged.skull-unused|2026-07-01|HOW_AGED=PL SKULL=4
      Skull 4 was scored, but SK is not among the codes of How aged PL; it would fit.
      skull four was scored, but skull is not among the codes of how aged
      wing.impossible|2026-06-01|SPECIES=WBNU WING=201
      Wing chord 201 mm is far outside 77 to 100 mm for White-breasted Nuthatch.
      wing two zero one is far too large
      tail.impossible|2026-06-01|SPECIES=WBNU TAIL=20
      Tail 20 mm is far outside 41 to 57 mm for White-breasted Nuthatch and looks like another field; as Tarsus or Exposed culmen or Mass it would fit.
      tail two zero looks like another field
      wing.station|2026-06-01|SPECIES=WBNU SEX=M WING=99
      Wing chord 99 mm is outside the station's own 89.0 to 95.0 mm (30 birds).
      wing nine nine is large for this station
      mass.wing|2026-06-01|SPECIES=WBNU WING=78 MASS=29.2
      Mass 29.2 g is much for a wing of 78 mm: measure one of them again.
      mass two nine point two is much for a wing of seven eight
      tail.wing|2026-06-01|SPECIES=WBNU WING=100 TAIL=43
      Tail 43 mm is short for a wing of 100 mm: measure one of them again.
      tail four three is short for a wing of one zero zero
      """;

  /** A finding and the bird that it is found of. */
  private record Words(String bird, String shown, String spoken) {}

  private static List<Words> words() {
    List<String> lines = FINDINGS.lines().toList();
    return IntStream.range(0, lines.size() / 3)
        .mapToObj(i -> new Words(lines.get(3 * i), lines.get(3 * i + 1), lines.get(3 * i + 2)))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("words")
  void saysWhatIsWrongInPlainWords(Words words) {
    List<String> cells = Arrays.asList(words.bird().split("\\|"));
    RuleEdges.Bird bird = RuleEdges.bird(cells.get(1), cells.get(2));
    List<Finding> findings =
        RULES.check(bird.record(), bird.filled(), RuleEdges.known(), bird.record().capturedAt());
    assertThat(findings)
        .filteredOn(f -> f.rule().equals(cells.get(0)))
        .singleElement()
        .satisfies(f -> assertThat(f.shown()).isEqualTo(words.shown()))
        .satisfies(f -> assertThat(f.spoken()).isEqualTo(words.spoken()));
  }

  @Test
  void saysWhichBandBeginsAStringThatIsBegunInside() {
    assertThat(spoken("band.string", "band 1760-10102"))
        .isEqualTo(
            "band one seven six zero one zero one zero two is not the first of its string."
                + " the first is one zero one");
  }

  @Test
  void saysThatTheBandOfAnUnknownStringIsInNoString() {
    assertThat(spoken("band.fate-known", "kind D, band 1760-10101"))
        .isEqualTo(
            "band one seven six zero one zero one zero one is of no string in these records");
  }

  @Test
  void saysWhichPartOfAStatusDoesNotGoWithTheOther() {
    assertThat(spoken("status.pair", "status 340"))
        .isEqualTo("status three four zero. four zero does not go with three");
  }

  private static String spoken(String rule, String fields) {
    CaptureRecord record = Edge.record(Edge.NOW, fields);
    Known known = new Known(BandLedger.empty(), Captures.none());
    return RULES.review(record, known, Edge.NOW).stream()
        .filter(f -> f.rule().equals(rule))
        .findFirst()
        .orElseThrow()
        .spoken();
  }
}
