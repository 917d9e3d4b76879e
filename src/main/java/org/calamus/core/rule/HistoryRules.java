package org.calamus.core.rule;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.Release;
import org.calamus.core.record.Caught;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.Finding.Severity;

/**
 * The rules that hold a recaptured bird against its earlier captures: what it is, and whether it
 * can be here at all. Each is a question whether the band was misread, now or then.
 */
final class HistoryRules {

  private static final String SAME_BIRD =
      "a bird keeps its species and sex; common practice of the recapture check";

  private static final String CLOCK = "time runs forward; common practice, no published source";

  /** The fields that tell which bird is in the hand. */
  static final Set<FieldId> WHICH_BIRD = Set.of(FieldId.KIND, FieldId.BAND, FieldId.OLD_BAND);

  private static final Set<String> KNOWN_SEXES = Set.of("M", "F");

  private HistoryRules() {}

  static List<Rule> all() {
    List<Rule> rules =
        new ArrayList<>(
            List.of(
                new Rule(
                    "recapture.species",
                    Set.of(FieldId.SPECIES),
                    WHICH_BIRD,
                    SAME_BIRD,
                    HistoryRules::otherSpecies),
                new Rule(
                    "recapture.sex",
                    Set.of(FieldId.SEX),
                    WHICH_BIRD,
                    SAME_BIRD,
                    HistoryRules::otherSex),
                ofBird("recapture.today", CLOCK, HistoryRules::caughtToday).byDay(),
                ofBird("recapture.dead", CLOCK, HistoryRules::diedBefore).byDay(),
                ofBird("recapture.clock", CLOCK, HistoryRules::caughtLater).byDay()));
    rules.addAll(HistoryAges.all());
    rules.addAll(HistoryMeasures.all());
    return List.copyOf(rules);
  }

  private static Rule ofBird(
      String id, String source, Function<RuleCase, Optional<Finding>> check) {
    return new Rule(id, Set.of(), WHICH_BIRD, source, check);
  }

  /** The latest earlier capture that has something. */
  static Optional<PastCapture> latest(
      RuleCase c, java.util.function.Predicate<PastCapture> isWanted) {
    return c.history().stream().filter(isWanted).reduce((a, b) -> b);
  }

  /** The day of an earlier capture, as shown. */
  static String day(RuleCase c, PastCapture capture) {
    return capture.day(c.policy().zone()).toString();
  }

  /** What must be asked where a bird and its history do not fit. */
  private static Optional<Finding> otherSpecies(RuleCase c) {
    String now = c.record().code(FieldId.SPECIES).orElse("");
    return latest(c, p -> p.code(FieldId.SPECIES).isPresent())
        .flatMap(
            p ->
                p.code(FieldId.SPECIES)
                    .filter(then -> !then.equals(now))
                    .map(then -> otherSpecies(c, now, then, day(c, p))));
  }

  private static Finding otherSpecies(RuleCase c, String now, String then, String day) {
    return new Finding(
        "recapture.species",
        Severity.ASKS,
        FieldId.SPECIES,
        "Species "
            + named(c, now)
            + " differs from "
            + named(c, then)
            + " at the last capture, "
            + day
            + ": that would fit, or the band is another.",
        "species " + Spoken.name(name(c, now)) + ". last time " + Spoken.name(name(c, then)));
  }

  private static String named(RuleCase c, String code) {
    String name = name(c, code);
    return name.equals(code) ? code : name + " (" + code + ")";
  }

  private static String name(RuleCase c, String code) {
    return c.reference().species().byCode(code).map(s -> s.name()).orElse(code);
  }

  private static Optional<Finding> otherSex(RuleCase c) {
    return c.sex()
        .filter(KNOWN_SEXES::contains)
        .flatMap(
            now ->
                latest(c, p -> p.code(FieldId.SEX).filter(KNOWN_SEXES::contains).isPresent())
                    .filter(p -> p.code(FieldId.SEX).filter(now::equals).isEmpty())
                    .map(p -> otherSex(c, now, p.code(FieldId.SEX).orElse(""), day(c, p))));
  }

  private static Finding otherSex(RuleCase c, String now, String then, String day) {
    return new Finding(
        "recapture.sex",
        Severity.ASKS,
        FieldId.SEX,
        "Sex "
            + now
            + " differs from "
            + then
            + " on "
            + day
            + ": "
            + then
            + " would fit, or the band is another.",
        "sex " + words(c, FieldId.SEX, now) + ". last time " + words(c, FieldId.SEX, then));
  }

  /** A code in words, to be said. */
  static String words(RuleCase c, FieldId field, String code) {
    return c.form().spec(field).kind() instanceof FieldKind.Coded coded
        ? Spoken.name(coded.table().words(code))
        : Spoken.characters(code);
  }

  private static Optional<Finding> caughtToday(RuleCase c) {
    return latest(
            c,
            p -> p.day(c.policy().zone()).equals(c.date()) && (!areTimed(c, p) || c.isNotLater(p)))
        .map(
            p ->
                ofBand(
                    c,
                    "recapture.today",
                    Severity.NOTES,
                    "was caught "
                        + thatDay(c)
                        + " already"
                        + timeOf(c, p)
                        + ": a recapture of the same day.",
                    "was caught " + thatDay(c) + " already"));
  }

  /** Whether it is known of both captures at what time of the day they were. */
  private static boolean areTimed(RuleCase c, PastCapture other) {
    ZoneId zone = c.policy().zone();
    return other.caught().isTimed(zone) && c.record().caught().isTimed(zone);
  }

  private static String thatDay(RuleCase c) {
    return c.isEnteredLater() ? "that day" : "today";
  }

  /** When it was caught, where that is known. */
  private static String timeOf(RuleCase c, PastCapture capture) {
    Caught caught = capture.caught();
    return caught.isTimed(c.policy().zone())
        ? ", at " + c.when(caught).atZone(c.policy().zone()).toLocalTime().withNano(0)
        : "";
  }

  private static Optional<Finding> diedBefore(RuleCase c) {
    return latest(c, c::isNotLater)
        .filter(HistoryRules::isDead)
        .map(
            p ->
                ofBand(
                    c,
                    "recapture.dead",
                    Severity.ASKS,
                    "was on a bird that died on " + day(c, p) + ". Read the band again.",
                    "was on a bird that died"));
  }

  private static boolean isDead(PastCapture capture) {
    Set<String> wrong =
        capture
            .value(FieldId.DISPOSITION)
            .map(v -> (Set<String>) new HashSet<>(Arrays.asList(v.text().split(" "))))
            .orElse(Set.of());
    return wrong.contains(Release.FOUND_DEAD)
        || capture.code(FieldId.RELEASE).filter(Release.DIED.name()::equals).isPresent();
  }

  private static Optional<Finding> caughtLater(RuleCase c) {
    return latest(
            c,
            p ->
                areTimed(c, p)
                    ? Duration.between(c.when(), c.when(p.caught()))
                            .compareTo(Duration.ofMinutes(1))
                        >= 0
                    : p.day(c.policy().zone()).isAfter(c.date()))
        .map(
            p ->
                ofBand(
                    c,
                    "recapture.clock",
                    Severity.ASKS,
                    "has a capture on "
                        + day(c, p)
                        + ", later than this one on "
                        + c.date()
                        + (c.isEnteredLater() ? ". Is the date right?" : ". Is the clock right?"),
                    "has a later capture. is the "
                        + (c.isEnteredLater() ? "date" : "clock")
                        + " right"));
  }

  private static Finding ofBand(
      RuleCase c, String rule, Severity severity, String shown, String spoken) {
    FieldId field = c.kind().bandRead().orElseThrow();
    String name = field == FieldId.BAND ? "Band" : "Old band";
    return new Finding(
        rule,
        severity,
        field,
        name + " " + c.record().band(field).orElseThrow().text() + " " + shown,
        Spoken.name(name)
            + " "
            + Spoken.digits(c.record().band(field).orElseThrow().lastDigits())
            + " "
            + spoken);
  }
}
