package org.calamus.core.readback;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.StringJoiner;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.record.Spoken;

/**
 * Words for values: short, numbers digit by digit, codes always in words (a code read back by
 * itself hides a look-alike).
 *
 * @param form the station's form
 */
public record Phrases(Form form) {

  /** What a station lists by itself: no vocabulary has it in words. */
  private static final Set<FieldId> STATION_LISTS =
      Set.of(FieldId.NET, FieldId.BANDER, FieldId.SCRIBE);

  /** The fields that the console fills by itself where nothing is said of them. */
  private static final Set<FieldId> ADDED =
      Set.of(FieldId.KIND, FieldId.BAND_SIZE, FieldId.STATUS, FieldId.RELEASE, FieldId.SCRIBE);

  /** A value as it is said, without its field: "nine two", "white breasted nuthatch". */
  public String spoken(FieldSpec spec, FieldValue value) {
    if (value instanceof BandNumber band) {
      return Spoken.characters(band.text());
    }
    if (value instanceof FieldValue.Measure measure) {
      return Spoken.number(measure.amount());
    }
    if (value instanceof FieldValue.TimeOfDay time) {
      return Spoken.digits(time.text().replace(":", ""));
    }
    if (value instanceof FieldValue.Day day) {
      return Spoken.date(day.date());
    }
    if (value instanceof FieldValue.Note note) {
      return note.written().isEmpty() ? "a spoken memo" : note.written();
    }
    return inWords(spec, value);
  }

  /** Codes in words; a code that is a number, digit by digit. */
  private static String inWords(FieldSpec spec, FieldValue value) {
    StringJoiner words = new StringJoiner(" ");
    for (String code : codes(value)) {
      Optional<CodeTable.Row> row = table(spec).flatMap(t -> t.byCode(code));
      boolean isNumber = row.filter(CodeTable.Row::isNumber).isPresent();
      words.add(
          isNumber
              ? Spoken.digits(code)
              : row.map(CodeTable.Row::words)
                  .filter(w -> !w.equals(code))
                  .map(Spoken::name)
                  .orElseGet(() -> Spoken.characters(code)));
    }
    return words.toString();
  }

  /** A field and its value as said: "wing nine two". */
  public String spokenWithName(FieldSpec spec, FieldValue value) {
    return speaksForItself(spec, value)
        ? spoken(spec, value)
        : spec.spoken() + " " + spoken(spec, value);
  }

  /** Whether the words alone tell the field: no other field has them, and they are no number. */
  private boolean speaksForItself(FieldSpec spec, FieldValue value) {
    if (!(spec.kind() instanceof FieldKind.Coded coded) || coded.table().isNumbered()) {
      return false;
    }
    String words = coded.table().words(value.text());
    return !STATION_LISTS.contains(spec.id())
        && !words.equals("unknown")
        && form.fields().stream()
            .filter(other -> other.id() != spec.id())
            .flatMap(other -> table(other).stream())
            .flatMap(table -> table.rows().stream())
            .noneMatch(row -> row.words().equals(words));
  }

  /** A value as it is shown in the record: code and words, amount and unit. */
  public String shown(FieldSpec spec, FieldValue value) {
    if (value instanceof FieldValue.Measure measure) {
      return measure.text() + " " + measure.unit().symbol();
    }
    String brief = brief(spec, value);
    StringJoiner words = new StringJoiner(", ");
    codes(value).forEach(c -> words.add(table(spec).map(t -> t.words(c)).orElse(brief)));
    return words.toString().equals(brief) ? brief : brief + "  " + words;
  }

  /** The whole record as said, field by field; "nothing yet" where it is empty. */
  public String spoken(CaptureRecord record) {
    StringJoiner words = new StringJoiner(". ");
    for (FieldSpec spec : form.fields()) {
      record.value(spec.id()).ifPresent(v -> words.add(spokenWithName(spec, v)));
    }
    return words.length() == 0 ? "nothing yet" : words.toString();
  }

  /**
   * The record on one line: what was given. What is empty, and what the console adds as a matter of
   * course, is left out.
   */
  public String line(CaptureRecord record) {
    StringJoiner line = new StringJoiner("  ");
    for (FieldSpec spec : form.shown(record)) {
      Optional<Entry> entry = record.entry(spec.id());
      entry
          .filter(e -> !isMatterOfCourse(spec.id(), e))
          .ifPresent(e -> line.add(spec.spoken() + " " + brief(spec, e.value())));
    }
    return line.toString();
  }

  /** Whether a value was added because nothing else was said. */
  private static boolean isMatterOfCourse(FieldId field, Entry entry) {
    boolean isSpecial =
        field == FieldId.KIND && !entry.value().text().equals(CaptureKind.NEW.code());
    return entry.provenance().way() == Provenance.Way.CONCLUDED
        && ADDED.contains(field)
        && !isSpecial;
  }

  /** What is filled of the record, on one line. */
  public String filled(CaptureRecord record) {
    StringJoiner line = new StringJoiner("  ");
    for (FieldSpec spec : form.fields()) {
      record.value(spec.id()).ifPresent(v -> line.add(spec.spoken() + " " + brief(spec, v)));
    }
    return line.toString();
  }

  /** A value in short, as the station's code set has it: {@code 92 mm}, {@code AHY}. */
  public static String brief(FieldSpec spec, FieldValue value) {
    if (value instanceof FieldValue.Measure m) {
      return m.text() + " " + m.unit().symbol();
    }
    Optional<CodeTable> table = table(spec);
    if (table.isEmpty()) {
      return value.text();
    }
    StringJoiner shown = new StringJoiner(" ");
    codes(value).forEach(c -> shown.add(table.get().shown(c)));
    return shown.toString();
  }

  private static List<String> codes(FieldValue value) {
    return value instanceof FieldValue.Codes several ? several.codes() : List.of(value.text());
  }

  private static Optional<CodeTable> table(FieldSpec spec) {
    if (spec.kind() instanceof FieldKind.Coded coded) {
      return Optional.of(coded.table());
    }
    return spec.kind() instanceof FieldKind.CodedMany many
        ? Optional.of(many.table())
        : Optional.empty();
  }
}
