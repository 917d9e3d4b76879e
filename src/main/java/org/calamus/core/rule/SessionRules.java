package org.calamus.core.rule;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Release;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.Finding.Severity;

/** The rules of the day's course: times, release, status, and what a kind of capture takes. */
final class SessionRules {

  private static final String RUNS = "time runs forward; common practice, no published source";

  private static final String WELFARE =
      "from memory of the North American Banding Council's Study Guide: an hour at most from the"
          + " net";

  private static final String STATUS =
      "Bird Banding Laboratory, Status and Additional Information Codes";

  private static final String LATE =
      "what was written on paper is entered within days; common practice, no published source";

  /** How many days later a bird is entered without a question; more may be a wrong month. */
  private static final int LATE_DAYS = 7;

  /** How long a bird may wait in its bag before it is asked about. */
  private static final Duration BAG = Duration.ofMinutes(60);

  /** A time that is so much ahead is of the evening before: nets for owls stand through a night. */
  private static final Duration HALF_DAY = Duration.ofHours(12);

  /** Which additional information may not stand behind which first digit. */
  private static final Map<Character, Set<String>> ILLEGAL =
      Map.of(
          '2', Set.of("40"),
          '3', Set.of("40"),
          '4', Set.of("70", "71", "87", "88"),
          '5', Set.of("03", "04", "09", "10"));

  private static final String NOT_BANDED = "000";

  private SessionRules() {}

  static List<Rule> all() {
    Set<FieldId> time = Set.of(FieldId.TIME);
    Set<FieldId> date = Set.of(FieldId.DATE);
    Set<FieldId> note = Set.of(FieldId.NOTE);
    Set<FieldId> status = Set.of(FieldId.STATUS);
    return List.of(
        new Rule("time.future", time, RUNS, SessionRules::inFuture).byDay(),
        new Rule("time.opening", time, "the station's opening time", SessionRules::beforeOpening)
            .byDay(),
        new Rule("time.bag", time, WELFARE, SessionRules::longInBag).byDay(),
        new Rule("date.future", date, RUNS, SessionRules::dayInFuture),
        new Rule("date.long-ago", date, LATE, SessionRules::longAgo),
        new Rule(
            "release.held", Set.of(FieldId.RELEASE), "the station's limit", SessionRules::heldLong),
        new Rule("release.remark", Set.of(FieldId.RELEASE), note, STATUS, SessionRules::died),
        Findings.pair(
            "release.dead",
            FieldId.RELEASE,
            FieldId.DISPOSITION,
            Set.of(),
            "follows from what the codes mean (derived)",
            SessionRules::isDeadAndGone,
            "a bird found dead did not leave by itself"),
        new Rule(
            "disposition.remark", Set.of(FieldId.DISPOSITION), note, STATUS, SessionRules::harmed),
        new Rule("status.remark", status, note, STATUS, SessionRules::unwell),
        new Rule("status.pair", status, STATUS, SessionRules::illegalPair),
        new Rule(
            "status.banded",
            status,
            Set.of(FieldId.KIND),
            "MAPS Manual: 000 is a bird released without a band; second-hand",
            SessionRules::notBanded),
        new Rule("kind.fields", Set.of(FieldId.KIND), "the station's form", SessionRules::noPlace));
  }

  private static Optional<Finding> dayInFuture(RuleCase c) {
    LocalDate begun = c.record().caught().begunOn(c.policy().zone());
    return c.date().isAfter(begun)
        ? Optional.of(
            of(
                "date.future",
                Severity.REFUSED,
                FieldId.DATE,
                c,
                "is after the day of its record, " + begun + ". A day up to then would fit.",
                Spoken.date(c.date())
                    + (begun.equals(LocalDate.ofInstant(c.now(), c.policy().zone()))
                        ? " has not come yet. again"
                        : " is after its record. again")))
        : Optional.empty();
  }

  private static Optional<Finding> longAgo(RuleCase c) {
    LocalDate begun = c.record().caught().begunOn(c.policy().zone());
    long days = ChronoUnit.DAYS.between(c.date(), begun);
    return days > LATE_DAYS
        ? Optional.of(
            of(
                "date.long-ago",
                Severity.ASKS,
                FieldId.DATE,
                c,
                "is "
                    + days
                    + " days before the bird was entered; from "
                    + begun.minusDays(LATE_DAYS)
                    + " on would fit.",
                Spoken.date(c.date()) + " is " + Spoken.digits(days + "") + " days ago"))
        : Optional.empty();
  }

  /**
   * When the bird was taken from the net: the time nearest to that of the record, or that of the
   * day that was given.
   */
  private static Optional<LocalDateTime> caughtAt(RuleCase c) {
    if (c.isEnteredLater()) {
      return time(c).map(t -> c.date().atTime(t));
    }
    LocalDateTime begun = local(c, c.record().capturedAt());
    return time(c)
        .map(t -> begun.toLocalDate().atTime(t))
        .map(at -> Duration.between(begun, at).compareTo(HALF_DAY) > 0 ? at.minusDays(1) : at);
  }

  private static Optional<LocalTime> time(RuleCase c) {
    return c.record().caught().time();
  }

  private static LocalDateTime local(RuleCase c, Instant at) {
    return LocalDateTime.ofInstant(at, c.policy().zone());
  }

  private static Optional<Finding> inFuture(RuleCase c) {
    LocalDateTime now = local(c, c.now());
    LocalTime clock = new FieldValue.TimeOfDay(now.toLocalTime()).time();
    return caughtAt(c)
        .filter(at -> at.isAfter(now))
        .map(
            at ->
                of(
                    "time.future",
                    Severity.REFUSED,
                    FieldId.TIME,
                    c,
                    "has not come yet: it is "
                        + clock
                        + ". A time before that would fit"
                        + (c.form().has(FieldId.DATE) ? ", or a date first." : "."),
                    said(at.toLocalTime()) + " has not come yet. again"));
  }

  private static Optional<Finding> beforeOpening(RuleCase c) {
    return c.policy()
        .netsOpenedAt()
        .filter(opened -> c.date().equals(c.record().caught().begunOn(c.policy().zone())))
        .flatMap(
            opened ->
                time(c)
                    .filter(t -> isShortlyBefore(t, opened))
                    .map(
                        t ->
                            of(
                                "time.opening",
                                Severity.ASKS,
                                FieldId.TIME,
                                c,
                                "is before the nets were opened; from " + opened + " on would fit.",
                                said(t) + " is before the nets opened")));
  }

  /** Before it by no more than half a day: behind it, otherwise, as in a night. */
  private static boolean isShortlyBefore(LocalTime time, LocalTime opened) {
    Duration before = Duration.between(time, opened);
    return before.compareTo(Duration.ZERO) > 0 && before.compareTo(HALF_DAY) <= 0;
  }

  private static Optional<Finding> longInBag(RuleCase c) {
    LocalDateTime begun = local(c, c.record().capturedAt());
    return caughtAt(c)
        .filter(at -> !c.isEnteredLater() && Duration.between(at, begun).compareTo(BAG) > 0)
        .map(
            at ->
                of(
                    "time.bag",
                    Severity.ASKS,
                    FieldId.TIME,
                    c,
                    "is "
                        + Duration.between(at, begun).toMinutes()
                        + " minutes before the bird was in the hand; up to "
                        + BAG.toMinutes()
                        + " minutes would fit.",
                    said(at.toLocalTime()) + " is more than an hour ago"));
  }

  private static Optional<Finding> heldLong(RuleCase c) {
    Entry release = c.record().entry(FieldId.RELEASE).orElseThrow();
    Duration held = Duration.between(c.record().capturedAt(), release.at());
    return c.isEnteredLater() || held.compareTo(c.policy().limit()) <= 0
        ? Optional.empty()
        : Optional.of(
            of(
                "release.held",
                Severity.NOTES,
                FieldId.RELEASE,
                c,
                "came "
                    + held.toMinutes()
                    + " minutes after the bird was taken; the limit is "
                    + c.policy().limit().toMinutes()
                    + " minutes.",
                "held beyond the limit"));
  }

  private static Optional<Finding> died(RuleCase c) {
    return hasDied(c) ? wantsRemark("release.remark", FieldId.RELEASE, c) : Optional.empty();
  }

  private static boolean isDeadAndGone(RuleCase c) {
    return c.record().codes(FieldId.DISPOSITION).contains(Release.FOUND_DEAD) && !hasDied(c);
  }

  private static boolean hasDied(RuleCase c) {
    return c.record().code(FieldId.RELEASE).filter(Release.DIED.name()::equals).isPresent();
  }

  private static Optional<Finding> harmed(RuleCase c) {
    return wantsRemark("disposition.remark", FieldId.DISPOSITION, c);
  }

  private static Optional<Finding> unwell(RuleCase c) {
    return c.record()
        .code(FieldId.STATUS)
        .filter(s -> s.matches("[578].*|.*85"))
        .flatMap(s -> wantsRemark("status.remark", FieldId.STATUS, c));
  }

  private static Optional<Finding> wantsRemark(String rule, FieldId field, RuleCase c) {
    return c.record().entry(FieldId.NOTE).isPresent()
        ? Optional.empty()
        : Optional.of(
            of(
                rule,
                Severity.NOTES,
                field,
                c,
                "needs a remark that says what is wrong.",
                "needs a remark"));
  }

  private static Optional<Finding> illegalPair(RuleCase c) {
    return c.record()
        .code(FieldId.STATUS)
        .filter(s -> s.matches("\\d{3}"))
        .filter(s -> ILLEGAL.getOrDefault(s.charAt(0), Set.of()).contains(s.substring(1)))
        .map(
            s ->
                of(
                    "status.pair",
                    Severity.ASKS,
                    FieldId.STATUS,
                    c,
                    "pairs "
                        + s.charAt(0)
                        + " with "
                        + s.substring(1)
                        + ", which the office does not take; another would fit.",
                    Spoken.digits(s)
                        + ". "
                        + Spoken.digits(s.substring(1))
                        + " does not go with "
                        + Spoken.digits(s.substring(0, 1))));
  }

  private static Optional<Finding> notBanded(RuleCase c) {
    Set<CaptureKind> unbanded =
        Set.of(CaptureKind.UNBANDED, CaptureKind.LOST, CaptureKind.DESTROYED);
    return c.record()
        .code(FieldId.STATUS)
        .filter(s -> s.equals(NOT_BANDED) && !unbanded.contains(c.kind()))
        .map(
            s ->
                of(
                    "status.banded",
                    Severity.ASKS,
                    FieldId.STATUS,
                    c,
                    "is for a bird without a band, and this one has one; 300 would fit.",
                    Spoken.digits(s) + " is for a bird without a band"));
  }

  private static Optional<Finding> noPlace(RuleCase c) {
    List<FieldSpec> odd =
        c.form().fields().stream()
            .filter(f -> c.record().entry(f.id()).isPresent())
            .filter(f -> c.form().need(c.kind(), f.id()).isEmpty())
            .toList();
    return odd.isEmpty()
        ? Optional.empty()
        : Optional.of(
            of(
                "kind.fields",
                Severity.ASKS,
                FieldId.KIND,
                c,
                "has no place for "
                    + odd.stream()
                        .map(f -> f.label() + " " + c.record().value(f.id()).orElseThrow().text())
                        .collect(Collectors.joining(", "))
                    + "; "
                    + kindsThatFit(c)
                    + " would fit.",
                HistoryRules.words(c, FieldId.KIND, c.kind().code())
                    + " has no "
                    + odd.stream().map(FieldSpec::spoken).collect(Collectors.joining(", "))));
  }

  /** The kinds that have a place for everything that was taken. */
  private static String kindsThatFit(RuleCase c) {
    String fitting =
        Arrays.stream(CaptureKind.values())
            .filter(k -> c.form().has(k))
            .filter(
                k ->
                    c.record().entries().keySet().stream()
                        .allMatch(f -> c.form().need(k, f).isPresent()))
            .map(CaptureKind::code)
            .collect(Collectors.joining(", "));
    return fitting.isEmpty() ? "no kind" : fitting;
  }

  private static String said(LocalTime time) {
    return Spoken.digits(time.toString());
  }

  private static Finding of(
      String rule, Severity severity, FieldId field, RuleCase c, String shown, String spoken) {
    FieldSpec spec = c.form().spec(field);
    return new Finding(
        rule,
        severity,
        field,
        spec.label() + " " + c.record().value(field).orElseThrow().text() + " " + shown,
        spec.spoken() + " " + spoken);
  }
}
