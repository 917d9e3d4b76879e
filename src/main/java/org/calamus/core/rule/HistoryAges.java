package org.calamus.core.rule;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.AgeClasses.Statement;
import org.calamus.core.rule.Finding.Severity;

/** The rules that hold an age against the years of birth which earlier ages allow. */
final class HistoryAges {

  private static final String SOURCE =
      "Bird Banding Laboratory, Age (Year Class) and Sex Codes: derived from its calendar years";

  private static final String NO_PUSH =
      SOURCE + "; that AHY is not incorrect where a finer age is known: Laboratory, About ages";

  private HistoryAges() {}

  static List<Rule> all() {
    Set<FieldId> age = Set.of(FieldId.AGE);
    return List.of(
        new Rule("recapture.age", age, HistoryRules.WHICH_BIRD, SOURCE, HistoryAges::contradicts)
            .byDay(),
        new Rule("recapture.age-finer", age, HistoryRules.WHICH_BIRD, NO_PUSH, HistoryAges::finer)
            .byDay());
  }

  private static Optional<Statement> today(RuleCase c) {
    return c.age().map(c::stated);
  }

  private static Optional<BirthYears> birthYears(RuleCase c, Statement statement) {
    return c.reference().ages().birthYears(statement);
  }

  private static Optional<Statement> statement(RuleCase c, PastCapture capture) {
    return capture.code(FieldId.AGE).map(code -> c.stated(code, capture));
  }

  /**
   * The earlier statements, oldest first. Where they contradict each other, that was asked and kept
   * before; then the last of them alone is held against the new one, so that it is not asked for
   * ever.
   */
  private static List<PastCapture> statements(RuleCase c) {
    List<PastCapture> aged =
        c.history().stream()
            .filter(p -> statement(c, p).flatMap(s -> birthYears(c, s)).isPresent())
            .toList();
    boolean isTorn = birthYears(c, aged).filter(BirthYears::isEmpty).isPresent();
    return isTorn ? aged.subList(aged.size() - 1, aged.size()) : aged;
  }

  private static Optional<BirthYears> birthYears(RuleCase c, List<PastCapture> captures) {
    return c.reference()
        .ages()
        .birthYears(captures.stream().flatMap(p -> statement(c, p).stream()).toList());
  }

  private static Optional<Finding> contradicts(RuleCase c) {
    Optional<Statement> today = today(c);
    Optional<BirthYears> now = today.flatMap(t -> birthYears(c, t));
    if (now.isEmpty()) {
      return Optional.empty();
    }
    List<PastCapture> earlier = statements(c);
    return earlier.stream()
        .filter(
            p ->
                birthYears(c, List.of(p)).filter(b -> b.intersect(now.get()).isEmpty()).isPresent())
        .findFirst()
        .map(p -> contradicts(c, today.get(), now.get(), p, earlier));
  }

  private static Finding contradicts(
      RuleCase c, Statement today, BirthYears now, PastCapture then, List<PastCapture> earlier) {
    String code = statement(c, then).orElseThrow().code();
    Optional<String> fits = birthYears(c, earlier).flatMap(b -> finest(c, b, today.year()));
    return new Finding(
        "recapture.age",
        Severity.ASKS,
        FieldId.AGE,
        "Age "
            + today.code()
            + " (hatched "
            + now.text()
            + ") does not meet "
            + code
            + " on "
            + HistoryRules.day(c, then)
            + " (hatched "
            + birthYears(c, List.of(then)).orElseThrow().text()
            + ")"
            + fits.map(f -> "; " + f + " would fit").orElse("")
            + ".",
        "age "
            + HistoryRules.words(c, FieldId.AGE, today.code())
            + ". in "
            + Spoken.digits(Integer.toString(statement(c, then).orElseThrow().year()))
            + " it was "
            + HistoryRules.words(c, FieldId.AGE, code));
  }

  private static Optional<String> finest(RuleCase c, BirthYears birth, int year) {
    if (!(c.form().spec(FieldId.AGE).kind() instanceof FieldKind.Coded coded)) {
      return Optional.empty();
    }
    Set<String> listed =
        coded.table().rows().stream().map(CodeTable.Row::code).collect(Collectors.toSet());
    return c.reference().ages().finest(birth, year, listed);
  }

  private static Optional<Finding> finer(RuleCase c) {
    Optional<Statement> today = today(c);
    Optional<BirthYears> now = today.flatMap(t -> birthYears(c, t));
    Optional<BirthYears> proven = birthYears(c, statements(c));
    if (now.isEmpty() || proven.isEmpty() || proven.get().intersect(now.get()).isEmpty()) {
      return Optional.empty();
    }
    BirthYears both = proven.get().intersect(now.get());
    int year = today.get().year();
    return finest(c, both, year)
        .filter(code -> !birthYears(c, new Statement(code, year)).equals(now))
        .map(code -> finer(today.get().code(), code, both));
  }

  private static Finding finer(String said, String proven, BirthYears birth) {
    return new Finding(
        "recapture.age-finer",
        Severity.NOTES,
        FieldId.AGE,
        "Age "
            + said
            + " is right; with the earlier captures "
            + proven
            + " would fit, too (hatched "
            + birth.text()
            + ").",
        "age taken");
  }
}
