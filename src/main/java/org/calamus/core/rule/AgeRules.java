package org.calamus.core.rule;

import java.time.Month;
import java.time.MonthDay;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.Release;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;

/** The rules of the age class: against the date, the plumage, the skull, and how it was judged. */
final class AgeRules {

  private static final String SEASON =
      "Bird Banding Laboratory, Age (Year Class) and Sex Codes (published); months from Pyle 1997"
          + " (from memory)";
  private static final String SKULLS =
      "Pyle 1997, introduction, skull completion (from memory); kinglets: a public ringers' guide"
          + " to the goldcrest (published)";
  private static final String MEANING = "follows from what the codes mean (derived)";
  private static final String PLUMAGE =
      "juvenal plumage is worn by local and hatching-year birds alone (from memory)";

  /** The classes of birds that hatched in the year of the statement. */
  static final Set<String> OF_THE_YEAR = Set.of("HY", "L");

  /** Nothing in a history tells that a bird cannot fly, or that its age is not known. */
  private static final Set<String> NOT_PROVED_BY_HISTORY = Set.of("L", "U");

  /** When the first skulls of the year are complete; from memory, Pyle 1997, introduction. */
  private static final MonthDay FIRST_COMPLETE = MonthDay.of(Month.OCTOBER, 1);

  /**
   * Kinglets are earlier: goldcrests of the year may be complete from mid September (published).
   */
  private static final MonthDay FIRST_COMPLETE_KINGLETS = MonthDay.of(Month.SEPTEMBER, 15);

  private static final Set<String> KINGLETS = Set.of("GCKI", "RCKI");

  private static final int COMPLETE_SKULL = 6;
  private static final int MOST_OF_SKULL = 4;

  /**
   * Criteria that can show a bird's year, beyond telling it from one of this year. From memory:
   * Pyle 1997; brood patch, protuberance and the like show that it breeds, which any adult may.
   */
  private static final Set<String> SHOWS_THE_YEAR =
      Set.of(
          "SK", "PL", "LP", "NL", "FF", "PC", "MR", "EY", "MB", "TS", "FB", "RC", "CA", "CC", "AM",
          "OT");

  private AgeRules() {}

  static List<Rule> all() {
    return List.of(
        new Rule("age.date", Set.of(FieldId.AGE, FieldId.SPECIES), bands(), SEASON, AgeRules::date)
            .byDay(),
        Findings.pair(
            "age.juvenal",
            FieldId.JUVENAL_PLUMAGE,
            FieldId.AGE,
            Set.of(),
            PLUMAGE,
            c -> Scores.isBetween(c, FieldId.JUVENAL_PLUMAGE, 3, 3) && !isOfTheYear(c),
            "only birds of age L or HY wear full juvenal plumage; a lower score would fit"),
        new Rule(
                "age.skull-young",
                Set.of(FieldId.AGE, FieldId.SKULL),
                Set.of(FieldId.SPECIES),
                SKULLS,
                AgeRules::completeTooEarly)
            .byDay(),
        Findings.pair(
                "age.skull-adult",
                FieldId.SKULL,
                FieldId.AGE,
                Set.of(),
                SKULLS,
                c ->
                    isOlder(c)
                        && Scores.isBetween(c, FieldId.SKULL, 0, MOST_OF_SKULL)
                        && c.date().getMonthValue() < Month.SEPTEMBER.getValue(),
                "until the end of August a skull of 5 or 6 would fit")
            .byDay(),
        Findings.pair(
            "age.protuberance",
            FieldId.CLOACAL_PROTUBERANCE,
            FieldId.AGE,
            Set.of(),
            SexRules.BREEDING,
            c -> isOfTheYear(c) && Scores.isBetween(c, FieldId.CLOACAL_PROTUBERANCE, 1, 9),
            "in a bird hatched this year a score of 0 would fit"),
        Findings.pair(
            "age.patch",
            FieldId.BROOD_PATCH,
            FieldId.AGE,
            Set.of(),
            SexRules.BREEDING,
            c -> isOfTheYear(c) && Scores.isBetween(c, FieldId.BROOD_PATCH, 1, 9),
            "in a bird hatched this year a score of 0 would fit"),
        new Rule(
            "age.how",
            Set.of(FieldId.AGE, FieldId.HOW_AGED),
            "Pyle 1997 (from memory)",
            AgeRules::yearNotShown),
        new Rule(
            "age.how-empty",
            Set.of(FieldId.AGE, FieldId.RELEASE),
            Set.of(FieldId.HOW_AGED),
            MEANING,
            AgeRules::howEmpty));
  }

  /** The fields by which the bird's history is found. */
  private static Set<FieldId> bands() {
    return Set.of(FieldId.BAND, FieldId.OLD_BAND, FieldId.KIND);
  }

  private static Optional<Finding> date(RuleCase c) {
    String code = c.age().orElse("");
    AgeSeason.Verdict verdict = verdict(c, code);
    if (verdict == AgeSeason.Verdict.OK
        || verdict == AgeSeason.Verdict.ASKS && isProvedByHistory(c, code)) {
      return Optional.empty();
    }
    String month = c.date().getMonth().name().toLowerCase(Locale.ROOT);
    String shownMonth = month.substring(0, 1).toUpperCase(Locale.ROOT) + month.substring(1);
    boolean isRefused = verdict == AgeSeason.Verdict.REFUSED;
    String shown =
        String.join(
            " ",
            Findings.shown(c, FieldId.AGE),
            isRefused ? "is refused" : "is unusual",
            "on",
            Integer.toString(c.date().getDayOfMonth()),
            shownMonth + ":",
            ordinary(c),
            "would fit.");
    String spoken =
        Findings.spoken(c, FieldId.AGE)
            + (isRefused ? " cannot be in " : " is unusual in ")
            + month;
    return Optional.of(
        isRefused
            ? Findings.refuses("age.date", FieldId.AGE, shown, spoken)
            : Findings.asks("age.date", FieldId.AGE, shown, spoken));
  }

  private static AgeSeason.Verdict verdict(RuleCase c, String code) {
    String species = c.record().code(FieldId.SPECIES).orElse("");
    return c.reference().seasons().verdict(code, species, c.date());
  }

  /** Every code that is ordinary on the day: none is urged upon the bander. */
  private static String ordinary(RuleCase c) {
    List<String> codes =
        Findings.codes(c, FieldId.AGE).stream()
            .filter(code -> verdict(c, code) == AgeSeason.Verdict.OK)
            .toList();
    return String.join(", ", codes);
  }

  /** Whether the bird's earlier captures leave no birth year that the age class does not hold. */
  private static boolean isProvedByHistory(RuleCase c, String code) {
    if (NOT_PROVED_BY_HISTORY.contains(code)) {
      return false;
    }
    AgeClasses ages = c.reference().ages();
    List<AgeClasses.Statement> history =
        c.history().stream()
            .flatMap(past -> past.code(FieldId.AGE).stream().map(age -> c.stated(age, past)))
            .toList();
    return ages.birthYears(history)
        .filter(birth -> !birth.isEmpty())
        .flatMap(birth -> ages.birthYears(c.stated(code)).map(stated -> stated.holds(birth)))
        .orElse(false);
  }

  private static boolean isOfTheYear(RuleCase c) {
    return c.age().filter(OF_THE_YEAR::contains).isPresent();
  }

  private static Optional<BirthYears> birthYears(RuleCase c) {
    return c.age().flatMap(code -> c.reference().ages().birthYears(c.stated(code)));
  }

  /** Whether the class is of an adult of any year, or of one older than the year before. */
  private static boolean isOlder(RuleCase c) {
    int lastYear = c.date().getYear() - 1;
    return birthYears(c)
        .filter(b -> b.latest() < lastYear || b.latest() == lastYear && b.earliest().isEmpty())
        .isPresent();
  }

  /** Whether the class says more than that the bird is of this year or before it. */
  private static boolean isFine(RuleCase c) {
    int lastYear = c.date().getYear() - 1;
    return birthYears(c)
        .filter(b -> b.latest() < lastYear || b.equals(BirthYears.between(lastYear, lastYear)))
        .isPresent();
  }

  private static Optional<Finding> completeTooEarly(RuleCase c) {
    MonthDay first =
        c.record().code(FieldId.SPECIES).filter(KINGLETS::contains).isPresent()
            ? FIRST_COMPLETE_KINGLETS
            : FIRST_COMPLETE;
    boolean isOdd =
        c.age().filter("HY"::equals).isPresent()
            && Scores.isBetween(c, FieldId.SKULL, COMPLETE_SKULL, COMPLETE_SKULL)
            && MonthDay.from(c.date()).isBefore(first);
    return isOdd
        ? Optional.of(
            Findings.asks(
                "age.skull-young",
                FieldId.SKULL,
                Findings.shown(c, FieldId.SKULL)
                    + " with "
                    + Findings.shown(c, FieldId.AGE)
                    + ": a skull of 0 to 5 would fit before "
                    + first.getDayOfMonth()
                    + (first.getMonth() == Month.OCTOBER ? " October." : " September."),
                Findings.doesNotFit(c, FieldId.SKULL, FieldId.AGE)))
        : Optional.empty();
  }

  private static Optional<Finding> yearNotShown(RuleCase c) {
    List<String> codes = c.record().codes(FieldId.HOW_AGED);
    if (!isFine(c) || codes.stream().anyMatch(SHOWS_THE_YEAR::contains)) {
      return Optional.empty();
    }
    String judgedBy =
        codes.stream()
            .map(code -> Findings.words(c, FieldId.HOW_AGED, code))
            .collect(Collectors.joining(" and "));
    return Optional.of(
        Findings.asks(
            "age.how",
            FieldId.AGE,
            Findings.shown(c, FieldId.AGE)
                + " judged by "
                + judgedBy
                + ": that does not show the year; AHY would fit, or name what showed it.",
            Findings.spoken(c, FieldId.AGE) + " is not shown by " + judgedBy));
  }

  private static Optional<Finding> howEmpty(RuleCase c) {
    boolean isEmpty =
        isReleased(c.record()) && isFine(c) && c.record().entry(FieldId.HOW_AGED).isEmpty();
    return isEmpty && c.form().has(FieldId.HOW_AGED)
        ? Optional.of(
            Findings.notes(
                "age.how-empty",
                FieldId.AGE,
                Findings.shown(c, FieldId.AGE)
                    + ": "
                    + Findings.label(c, FieldId.HOW_AGED)
                    + " is empty.",
                Findings.spoken(c, FieldId.AGE) + ". how aged is empty"))
        : Optional.empty();
  }

  /** Whether the bird went in its time: what is missing of one that was let go early is no slip. */
  static boolean isReleased(CaptureRecord record) {
    return record.code(FieldId.RELEASE).filter(Release.RELEASED.name()::equals).isPresent();
  }
}
