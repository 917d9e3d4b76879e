package org.calamus.core.rule;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.calamus.core.form.Form;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;

/**
 * The rules of how age and sex were judged: a code that names evidence wants the field that holds
 * the evidence. What contradicts the code is asked at once. What is missing is asked once the
 * bander has gone past its field, or past the last one where it is taken by name only.
 */
final class HowRules {

  private static final String SOURCE =
      "codes of the Bird Banding Laboratory (second-hand); that they want their field follows from"
          + " what they mean (derived)";

  private static final int WORST_SCORE = 9;

  private HowRules() {}

  /**
   * A code and its evidence.
   *
   * @param code the code
   * @param field the field that holds the evidence
   * @param shows whether the filled field bears the code out
   * @param fit what would fit, as shown
   */
  private record Evidence(String code, FieldId field, Predicate<RuleCase> shows, String fit) {}

  private static final List<Evidence> SCORED =
      List.of(
          new Evidence(
              "BP",
              FieldId.BROOD_PATCH,
              c -> Scores.isBetween(c, FieldId.BROOD_PATCH, 1, WORST_SCORE) || isPresent(c),
              "a brood patch above 0 would fit"),
          new Evidence(
              "CP",
              FieldId.CLOACAL_PROTUBERANCE,
              c -> Scores.isBetween(c, FieldId.CLOACAL_PROTUBERANCE, 1, WORST_SCORE),
              "a protuberance above 0 would fit"),
          new Evidence("WL", FieldId.WING, c -> true, "a wing would fit"),
          new Evidence("TL", FieldId.TAIL, c -> true, "a tail would fit"),
          new Evidence("OT", FieldId.NOTE, c -> true, "one that says what it was would fit"));

  private static final Evidence SKULL =
      new Evidence(
          "SK",
          FieldId.SKULL,
          c -> Scores.isBetween(c, FieldId.SKULL, 0, 6),
          "a skull score of 0 to 6 would fit");

  /** Some tables have a code beside the scores for a patch of no stated degree. */
  private static boolean isPresent(RuleCase c) {
    return c.record().code(FieldId.BROOD_PATCH).filter("P"::equals).isPresent();
  }

  static List<Rule> all() {
    List<Rule> rules = new ArrayList<>();
    for (FieldId how : List.of(FieldId.HOW_AGED, FieldId.HOW_SEXED)) {
      SCORED.forEach(evidence -> rules.add(rule(how, evidence)));
      rules.add(
          new Rule(
              how.key() + ".recapture",
              Set.of(how),
              EnumSet.of(FieldId.KIND, FieldId.BAND, FieldId.OLD_BAND),
              SOURCE,
              c -> recapture(how, c)));
    }
    rules.add(rule(FieldId.HOW_AGED, SKULL));
    rules.add(
        new Rule(
            "how-aged.skull-unused",
            Set.of(FieldId.SKULL, FieldId.HOW_AGED),
            SOURCE,
            HowRules::skullUnused));
    return List.copyOf(rules);
  }

  /** The empty fields for what a field's codes name. */
  static List<FieldId> lacking(CaptureRecord record, Form form, FieldId how) {
    boolean isHow = how == FieldId.HOW_AGED || how == FieldId.HOW_SEXED;
    List<Evidence> known = new ArrayList<>(isHow ? SCORED : List.of());
    if (how == FieldId.HOW_AGED) {
      known.add(SKULL);
    }
    return known.stream()
        .filter(e -> record.codes(how).contains(e.code()))
        .map(Evidence::field)
        .filter(f -> form.has(f) && record.entry(f).isEmpty())
        .toList();
  }

  private static Rule rule(FieldId how, Evidence evidence) {
    String id = how.key() + "." + evidence.field().key();
    return new Rule(
        id, Set.of(how), EnumSet.allOf(FieldId.class), SOURCE, c -> unproved(id, how, evidence, c));
  }

  private static Optional<Finding> unproved(String id, FieldId how, Evidence evidence, RuleCase c) {
    if (!c.record().codes(how).contains(evidence.code()) || !c.form().has(evidence.field())) {
      return Optional.empty();
    }
    boolean isMissing = c.record().entry(evidence.field()).isEmpty();
    boolean isOdd =
        isMissing ? isPassed(c, evidence.field()) && !isKept(c, id) : !evidence.shows().test(c);
    if (!isOdd) {
      return Optional.empty();
    }
    return Optional.of(
        evidence.field() == FieldId.NOTE
            ? withoutRemark(id, how, evidence, c)
            : withoutEvidence(id, how, evidence, c));
  }

  private static Finding withoutRemark(String id, FieldId how, Evidence evidence, RuleCase c) {
    String words = Findings.words(c, how, evidence.code());
    return Findings.asks(
        id,
        how,
        Findings.shown(c, how) + ": \"" + words + "\" wants a remark; " + evidence.fit() + ".",
        Findings.name(c, how) + " " + words + " wants a remark");
  }

  private static Finding withoutEvidence(String id, FieldId how, Evidence evidence, RuleCase c) {
    boolean isMissing = c.record().entry(evidence.field()).isEmpty();
    String found =
        isMissing
            ? Findings.label(c, evidence.field()) + " is empty"
            : Findings.shown(c, evidence.field());
    String said =
        isMissing
            ? Findings.name(c, evidence.field()) + " is empty"
            : Findings.spoken(c, evidence.field());
    return Findings.asks(
        id,
        how,
        Findings.shown(c, how) + ", but " + found + ": " + evidence.fit() + ".",
        Findings.name(c, how) + " " + Findings.words(c, how, evidence.code()) + ", but " + said);
  }

  /**
   * Whether the bander has gone past a field: one that is asked behind it is filled. One that is
   * taken by name only is passed with the last that is asked.
   */
  private static boolean isPassed(RuleCase c, FieldId field) {
    List<FieldId> asked = c.form().asked(c.kind());
    int at = asked.indexOf(field);
    List<FieldId> behind =
        at < 0
            ? asked.subList(Math.max(asked.size() - 1, 0), asked.size())
            : asked.subList(at + 1, asked.size());
    return behind.stream().anyMatch(f -> c.record().entry(f).isPresent());
  }

  /** Whether the bander was asked already and kept it so, whatever field the answer stands with. */
  private static boolean isKept(RuleCase c, String id) {
    return c.record().entries().values().stream().anyMatch(e -> e.confirmedRules().contains(id));
  }

  /** A bird that wears no band of ours can be known from before by its history alone. */
  private static Optional<Finding> recapture(FieldId how, RuleCase c) {
    boolean isOdd =
        c.record().codes(how).contains("RC")
            && c.kind() != CaptureKind.RECAPTURE
            && c.history().isEmpty();
    String id = how.key() + ".recapture";
    String known = Findings.words(c, how, "RC");
    String odd =
        c.kind() == CaptureKind.NEW
            ? "this is a new band"
            : "these records have no earlier capture";
    return isOdd
        ? Optional.of(
            Findings.asks(
                id,
                how,
                Findings.shown(c, how)
                    + ": "
                    + known
                    + " is named, but "
                    + odd
                    + "; a recapture or another code would fit.",
                Findings.name(c, how) + " " + known + ", but " + odd))
        : Optional.empty();
  }

  /** An incomplete skull tells the age: it is worth a code. */
  private static Optional<Finding> skullUnused(RuleCase c) {
    boolean isUnused =
        Scores.isBetween(c, FieldId.SKULL, 0, 5)
            && !c.record().codes(FieldId.HOW_AGED).contains("SK");
    return isUnused
        ? Optional.of(
            Findings.notes(
                "how-aged.skull-unused",
                FieldId.SKULL,
                Findings.shown(c, FieldId.SKULL)
                    + " was scored, but SK is not among the codes of "
                    + Findings.shown(c, FieldId.HOW_AGED)
                    + "; it would fit.",
                Findings.spoken(c, FieldId.SKULL)
                    + " was scored, but skull is not among the codes of "
                    + Findings.name(c, FieldId.HOW_AGED)))
        : Optional.empty();
  }
}
