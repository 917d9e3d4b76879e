package org.calamus.core.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.form.Form;
import org.calamus.core.form.SpeciesTable;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;

/**
 * Checks a record against every rule.
 *
 * @param form the station's form
 * @param species the station's species
 */
public record Rules(Form form, SpeciesTable species) {

  private static final List<Rule> CATALOGUE =
      Stream.of(FieldRules.all(), BandRules.all(), SpeciesRules.all())
          .flatMap(List::stream)
          .toList();

  /**
   * What the rules have to say after a field was filled.
   *
   * @param record the record with the new value in it
   * @param changed the field that was filled
   * @param ledger the bands used so far
   * @return the findings, refusals first; empty where the value is accepted
   */
  public List<Finding> check(CaptureRecord record, FieldId changed, BandLedger ledger) {
    RuleCase subject = new RuleCase(record, form, species, ledger);
    List<Finding> refusals = new ArrayList<>();
    List<Finding> doubts = new ArrayList<>();
    for (Rule rule : CATALOGUE) {
      Optional<Finding> finding =
          rule.inputs().contains(changed) ? rule.apply(subject) : Optional.empty();
      finding.ifPresent(f -> (f.severity() == Finding.Severity.REFUSED ? refusals : doubts).add(f));
    }
    refusals.addAll(doubts);
    return List.copyOf(refusals);
  }

  /** The ids of all rules with their sources, for the documentation. */
  public static List<String> catalogue() {
    return CATALOGUE.stream().map(r -> r.id() + ": " + r.source()).toList();
  }
}
