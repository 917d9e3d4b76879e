package org.calamus.core.rule;

import java.time.LocalDate;
import java.time.Month;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.form.BySex;
import org.calamus.core.form.Range;
import org.calamus.core.form.Species;
import org.calamus.core.record.FieldId;

/** The rules of the sex: against the breeding characters, the plumage and the wing. */
final class SexRules {

  static final String BREEDING =
      "Pyle 1997, species accounts, breeding characters (from memory); scores of the MAPS Manual"
          + " (second-hand)";
  private static final String PATCHES = "the species table's column brood patch (from memory)";
  private static final String PLUMAGE = "the species table's column plumage (from memory)";
  private static final String WINGS = "the species table's wings by sex (derived)";
  private static final String MEANING = "follows from what the codes mean (derived)";

  private static final String MALE = "M";
  private static final String FEMALE = "F";
  private static final String UNKNOWN = "U";
  private static final int FULL_PATCH = 2;
  private static final int WRINKLED_PATCH = 4;
  private static final int MOST = 9;

  /** Why a sex may stand without a criterion, or a criterion without a sex. */
  private static final Set<String> UNDECIDED = Set.of("IC", "NA");

  private SexRules() {}

  static List<Rule> all() {
    return List.of(
        Findings.pair(
            "sex.protuberance",
            FieldId.CLOACAL_PROTUBERANCE,
            FieldId.SEX,
            Set.of(),
            BREEDING,
            c -> is(c, FEMALE) && Scores.isBetween(c, FieldId.CLOACAL_PROTUBERANCE, 2, MOST),
            "in a female 0, or at most 1, would fit"),
        Findings.pair(
            "sex.both",
            FieldId.CLOACAL_PROTUBERANCE,
            FieldId.BROOD_PATCH,
            Set.of(),
            BREEDING,
            c ->
                Scores.isBetween(c, FieldId.CLOACAL_PROTUBERANCE, 2, MOST)
                    && Scores.isBetween(c, FieldId.BROOD_PATCH, FULL_PATCH, MOST),
            "one of the two at 0 or 1 would fit"),
        Findings.pair(
            "sex.patch",
            FieldId.BROOD_PATCH,
            FieldId.SEX,
            Set.of(FieldId.SPECIES),
            PATCHES,
            c ->
                is(c, MALE)
                    && patch(c) == Species.BroodPatch.FEMALE
                    && Scores.isBetween(c, FieldId.BROOD_PATCH, FULL_PATCH, WRINKLED_PATCH),
            "males of the species do not incubate; 0 or 1 would fit"),
        Findings.pair(
            "species.patch",
            FieldId.BROOD_PATCH,
            FieldId.SPECIES,
            Set.of(),
            PATCHES,
            c ->
                patch(c) == Species.BroodPatch.NEITHER
                    && Scores.isBetween(c, FieldId.BROOD_PATCH, 1, MOST),
            "the species does not incubate; 0 would fit"),
        new Rule(
                "brood-patch.season",
                Set.of(FieldId.BROOD_PATCH),
                Set.of(FieldId.SPECIES),
                "April to September in North America (from memory); early nesters by the ages' table",
                SexRules::patchOutOfSeason)
            .byDay(),
        Findings.pair(
            "sex.plumage",
            FieldId.HOW_SEXED,
            FieldId.SPECIES,
            Set.of(),
            PLUMAGE,
            c -> isSexedBy(c, "PL") && plumage(c) == Species.Plumage.NO,
            "the sexes look alike; another code or Sex U would fit"),
        Findings.pair(
            "sex.plumage-young",
            FieldId.HOW_SEXED,
            FieldId.AGE,
            Set.of(FieldId.SPECIES),
            PLUMAGE,
            c ->
                isSexedBy(c, "PL")
                    && plumage(c) == Species.Plumage.ADULTS
                    && c.age().filter(AgeRules.OF_THE_YEAR::contains).isPresent(),
            "plumage tells the sex of adults only in this species; Sex U would fit"),
        Findings.pair(
            "sex.by-protuberance",
            FieldId.HOW_SEXED,
            FieldId.SEX,
            Set.of(),
            BREEDING,
            c -> isSexedBy(c, "CP") && is(c, FEMALE),
            "a protuberance shows a male; Sex M or another code would fit"),
        Findings.pair(
            "sex.by-patch",
            FieldId.HOW_SEXED,
            FieldId.SEX,
            Set.of(FieldId.SPECIES),
            PATCHES,
            c -> isSexedBy(c, "BP") && is(c, MALE) && !malesMayIncubate(c),
            "a brood patch shows a female; Sex F or another code would fit"),
        new Rule(
            "sex.how", Set.of(FieldId.HOW_SEXED, FieldId.SEX), MEANING, SexRules::howOfUnknown),
        new Rule(
            "sex.how-empty",
            Set.of(FieldId.SEX, FieldId.RELEASE),
            Set.of(FieldId.HOW_SEXED),
            MEANING,
            SexRules::howEmpty),
        new Rule(
            "sex.by-wing",
            Set.of(FieldId.HOW_SEXED, FieldId.WING, FieldId.SPECIES),
            Set.of(FieldId.SEX),
            WINGS,
            SexRules::wingInOverlap));
  }

  private static boolean is(RuleCase c, String sex) {
    return c.sex().filter(sex::equals).isPresent();
  }

  private static boolean isSexedBy(RuleCase c, String code) {
    return c.record().codes(FieldId.HOW_SEXED).contains(code);
  }

  private static Species.BroodPatch patch(RuleCase c) {
    return c.species().map(Species::broodPatch).orElse(Species.BroodPatch.UNKNOWN);
  }

  private static Species.Plumage plumage(RuleCase c) {
    return c.species().map(Species::plumage).orElse(Species.Plumage.UNKNOWN);
  }

  /** What is not known of a species asks nothing. */
  private static boolean malesMayIncubate(RuleCase c) {
    Species.BroodPatch patch = patch(c);
    return patch != Species.BroodPatch.FEMALE && patch != Species.BroodPatch.NEITHER;
  }

  private static Optional<Finding> patchOutOfSeason(RuleCase c) {
    Month month = c.date().getMonth();
    boolean isSeason = month.compareTo(Month.APRIL) >= 0 && month.compareTo(Month.SEPTEMBER) <= 0;
    boolean isOdd =
        !isSeason
            && !nestsEarly(c)
            && Scores.isBetween(c, FieldId.BROOD_PATCH, FULL_PATCH, WRINKLED_PATCH);
    return isOdd
        ? Optional.of(
            Findings.asks(
                "brood-patch.season",
                FieldId.BROOD_PATCH,
                Findings.shown(c, FieldId.BROOD_PATCH)
                    + " is unusual from October to March: 0, 1 or 5 would fit.",
                Findings.spoken(c, FieldId.BROOD_PATCH) + " is out of season"))
        : Optional.empty();
  }

  /** Whether the ages' table lets birds of the year fly in winter: then their parents nest then. */
  private static boolean nestsEarly(RuleCase c) {
    String species = c.record().code(FieldId.SPECIES).orElse("");
    LocalDate winter = LocalDate.of(c.date().getYear(), Month.MARCH, 1);
    return c.reference().seasons().verdict("HY", species, winter) != AgeSeason.Verdict.REFUSED;
  }

  private static Optional<Finding> howOfUnknown(RuleCase c) {
    boolean isOdd = is(c, UNKNOWN) && !UNDECIDED.containsAll(c.record().codes(FieldId.HOW_SEXED));
    String name = Findings.name(c, FieldId.HOW_SEXED);
    return isOdd
        ? Optional.of(
            Findings.asks(
                "sex.how",
                FieldId.HOW_SEXED,
                Findings.shown(c, FieldId.HOW_SEXED)
                    + ": "
                    + Findings.label(c, FieldId.SEX)
                    + " is unknown, so "
                    + name
                    + " should be empty; IC or NA would fit, too.",
                Findings.spoken(c, FieldId.HOW_SEXED) + ", but sex is unknown"))
        : Optional.empty();
  }

  private static Optional<Finding> howEmpty(RuleCase c) {
    boolean isEmpty =
        AgeRules.isReleased(c.record())
            && !is(c, UNKNOWN)
            && c.record().entry(FieldId.HOW_SEXED).isEmpty();
    return isEmpty && c.form().has(FieldId.HOW_SEXED)
        ? Optional.of(
            Findings.notes(
                "sex.how-empty",
                FieldId.SEX,
                Findings.shown(c, FieldId.SEX)
                    + ": "
                    + Findings.label(c, FieldId.HOW_SEXED)
                    + " is empty.",
                Findings.spoken(c, FieldId.SEX) + ". how sexed is empty"))
        : Optional.empty();
  }

  private static Optional<Finding> wingInOverlap(RuleCase c) {
    return c.species()
        .filter(s -> isSexedBy(c, "WL"))
        .flatMap(s -> Optional.ofNullable(s.ranges().get(FieldId.WING)))
        .flatMap(SexRules::overlap)
        .filter(overlap -> c.record().amount(FieldId.WING).filter(overlap::holds).isPresent())
        .map(
            overlap ->
                Findings.asks(
                    "sex.by-wing",
                    FieldId.HOW_SEXED,
                    Findings.shown(c, FieldId.HOW_SEXED)
                        + ", but "
                        + Findings.shown(c, FieldId.WING)
                        + " fits both sexes ("
                        + overlap.text()
                        + " mm); another code would fit.",
                    Findings.spoken(c, FieldId.WING) + " fits both sexes"));
  }

  /** The wings that both sexes have; empty where they are not known apart, or do not meet. */
  private static Optional<Range> overlap(BySex<Range> wings) {
    Optional<Range> female = Optional.ofNullable(wings.own().get(FEMALE));
    Optional<Range> male = Optional.ofNullable(wings.own().get(MALE));
    return female.flatMap(
        f ->
            male.filter(m -> m.least().max(f.least()).compareTo(m.most().min(f.most())) <= 0)
                .map(m -> new Range(m.least().max(f.least()), m.most().min(f.most()))));
  }
}
