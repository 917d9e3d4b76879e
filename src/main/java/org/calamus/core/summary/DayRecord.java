package org.calamus.core.summary;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Provenance;
import org.calamus.core.rule.Finding;
import org.calamus.core.rule.Known;
import org.calamus.core.rule.Rules;

/**
 * A saved record with what is to be looked at again when the day's records are read through.
 *
 * @param capture the record
 * @param notes what rules noted of it and nobody had to answer
 */
public record DayRecord(PastCapture capture, List<Finding> notes) {

  /** Copies the list. */
  public DayRecord {
    notes = List.copyOf(notes);
  }

  /**
   * The records of a day, and those entered on it of birds that were caught before, so that they
   * are read through as well; those to be looked at again first, each part in the order of time.
   *
   * @param known what the saved records tell
   * @param rules the rules
   * @param day the date at the station
   */
  public static List<DayRecord> of(Known known, Rules rules, LocalDate day) {
    List<DayRecord> records = new ArrayList<>();
    for (PastCapture capture : known.captures().ofDayOrEnteredOn(day, rules.policy().zone())) {
      records.add(of(capture, known, rules));
    }
    records.sort(Comparator.comparing(r -> !r.isToBeLookedAt()));
    return List.copyOf(records);
  }

  /** A record with what rules note of it now. */
  public static DayRecord of(PastCapture capture, Known known, Rules rules) {
    List<Finding> notes =
        rules.review(asRecord(capture), withoutSample(known), capture.capturedAt()).stream()
            .filter(f -> f.severity() == Finding.Severity.NOTES)
            .toList();
    return new DayRecord(capture, notes);
  }

  /** The station's own measures only ask, and to look at them takes longest of all. */
  private static Known withoutSample(Known known) {
    return new Known(known.ledger(), known.captures());
  }

  /** How its values came in is not held for saved records, and no rule that notes asks for it. */
  private static CaptureRecord asRecord(PastCapture capture) {
    Provenance unknown = new Provenance(Provenance.Way.CONCLUDED, "");
    Instant at = capture.capturedAt();
    Map<FieldId, Entry> entries = new EnumMap<>(FieldId.class);
    capture.values().forEach((f, v) -> entries.put(f, new Entry(v, unknown, at, List.of())));
    return new CaptureRecord(capture.id(), at, capture.place(), capture.bander(), entries);
  }

  /** Whether a rule doubted a value that the bander kept. */
  public boolean isDoubted() {
    return !capture.doubted().isEmpty();
  }

  /** Whether there are remarks. */
  public boolean isRemarked() {
    return capture.value(FieldId.NOTE).isPresent();
  }

  /** Whether there is anything to look at again. */
  public boolean isToBeLookedAt() {
    return isDoubted() || isRemarked() || !notes.isEmpty();
  }
}
