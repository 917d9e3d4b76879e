package org.calamus.core.rule;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.calamus.core.form.Form;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;

/**
 * Checks a record against every rule.
 *
 * @param form the station's form
 * @param reference the published tables
 * @param policy what the station decided
 */
public record Rules(Form form, Reference reference, Policy policy) {

  private static final List<Rule> CATALOGUE =
      Stream.of(
              FieldRules.all(),
              BandRules.all(),
              WornBandRules.all(),
              BandSizeRules.all(),
              HistoryRules.all(),
              SessionRules.all(),
              CostRules.all(),
              AgeRules.all(),
              SexRules.all(),
              HowRules.all(),
              MeasureRules.all())
          .flatMap(List::stream)
          .toList();

  /**
   * What the rules have to say after a field was filled.
   *
   * @param record the record with the new value in it
   * @param changed the field that was filled
   * @param known what the saved records tell
   * @param now the time of the check
   * @return the findings, refusals first, then doubts, then notes; empty where nothing is odd
   */
  public List<Finding> check(CaptureRecord record, FieldId changed, Known known, Instant now) {
    RuleCase subject = subject(record, known, now);
    return found(r -> r.looksAt(changed), subject).stream()
        .filter(f -> changed != FieldId.DATE || !isAskedAgain(subject, f))
        .toList();
  }

  /** Whether it was asked about another field already: a date is no reason to ask that again. */
  private static boolean isAskedAgain(RuleCase subject, Finding finding) {
    return finding.field() != FieldId.DATE
        && finding.severity() == Finding.Severity.ASKS
        && subject.isKept(finding.field(), finding.rule());
  }

  /**
   * What the rules have to say of a whole record, as for the proof-reading in the evening.
   *
   * @param record the record
   * @param known what the other saved records tell
   * @param now the time of the check
   * @return the findings, refusals first, then doubts, then notes; empty where nothing is odd
   */
  public List<Finding> review(CaptureRecord record, Known known, Instant now) {
    return found(r -> true, subject(record, known, now));
  }

  /**
   * The fields that hold the evidence which a field names, as a skull its score, and that are
   * empty.
   *
   * @param record the record
   * @param how how it was aged or sexed; another field names none
   * @return those that the form has, the first being the one to ask; empty where nothing is lacking
   */
  public List<FieldId> evidenceLacking(CaptureRecord record, FieldId how) {
    return HowRules.lacking(record, form, how);
  }

  private RuleCase subject(CaptureRecord record, Known known, Instant now) {
    return new RuleCase(record, form, reference, known, policy, now);
  }

  private static List<Finding> found(Predicate<Rule> isMeant, RuleCase subject) {
    return CATALOGUE.stream()
        .filter(isMeant)
        .flatMap(rule -> rule.apply(subject).stream())
        .sorted(Comparator.comparing(Finding::severity))
        .toList();
  }

  /**
   * What does not add up at the end of a day in the accounts of the bands.
   *
   * @param known what all saved records tell
   * @param day the day at the station
   * @return notes; empty where everything adds up
   */
  public List<Finding> dayEnd(Known known, LocalDate day) {
    return new BandAccounts(known, policy.zone()).dayEnd(day);
  }

  /** The ids of all rules with their sources, for the documentation. */
  public static List<String> catalogue() {
    return Stream.concat(
            CATALOGUE.stream().map(r -> r.id() + ": " + r.source()),
            BandAccounts.CATALOGUE.stream())
        .toList();
  }

  /** The rules of single records. */
  static List<Rule> all() {
    return CATALOGUE;
  }
}
