package org.calamus.core.dialogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.Known;

/**
 * A correction that is begun and not saved.
 *
 * @param saved the record as it was saved
 * @param known what all records told when it was begun
 * @param accounts what became of bands that the correction leaves over; kept back until it is
 *     saved, since it may be given up
 * @param memo the name of the sound file into which the reason is being told
 */
record Correction(
    CaptureRecord saved, Known known, List<CaptureRecord> accounts, Optional<String> memo) {

  Correction {
    Objects.requireNonNull(saved);
    Objects.requireNonNull(known);
    Objects.requireNonNull(memo);
    accounts = List.copyOf(accounts);
  }

  static Correction of(CaptureRecord saved, Known known) {
    return new Correction(saved, known, List.of(), Optional.empty());
  }

  Correction with(CaptureRecord account) {
    List<CaptureRecord> more = new ArrayList<>(accounts);
    more.add(account);
    return new Correction(saved, known, more, memo);
  }

  Correction withMemo(Optional<String> name) {
    return new Correction(saved, known, accounts, name);
  }

  /** Whether a field of the corrected record is another than it was saved. */
  boolean hasChanged(CaptureRecord corrected, FieldId field) {
    return !corrected.entry(field).equals(saved.entry(field));
  }

  /** The record as people call it: by its band, or else by its number. */
  static String name(CaptureRecord record) {
    return record.band().map(b -> b.text()).orElse("record " + record.id());
  }
}
