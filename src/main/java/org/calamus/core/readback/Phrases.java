package org.calamus.core.readback;

import java.util.Optional;
import java.util.StringJoiner;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;

/**
 * Words for values: short, numbers digit by digit, codes always in words (a code read back by
 * itself hides a look-alike).
 *
 * @param form the station's form
 */
public record Phrases(Form form) {

  /** A value as it is said, without its field: "nine two", "white breasted nuthatch". */
  public String spoken(FieldSpec spec, FieldValue value) {
    if (value instanceof BandNumber band) {
      return Spoken.characters(band.text());
    }
    if (value instanceof FieldValue.Measure measure) {
      return Spoken.number(measure.amount());
    }
    return Spoken.name(codeWords(spec, value));
  }

  /** A field and its value as said: "wing nine two". */
  public String spokenWithName(FieldSpec spec, FieldValue value) {
    boolean speaksForItself =
        spec.kind() instanceof FieldKind.Coded && !codeWords(spec, value).equals("unknown");
    return speaksForItself ? spoken(spec, value) : spec.spoken() + " " + spoken(spec, value);
  }

  /** A value as it is shown in the record: code and words, amount and unit. */
  public String shown(FieldSpec spec, FieldValue value) {
    if (value instanceof FieldValue.Measure measure) {
      return measure.text() + " " + measure.unit().symbol();
    }
    String words = codeWords(spec, value);
    return words.equals(value.text()) ? words : value.text() + "  " + words;
  }

  /** The whole record as said, field by field; "nothing yet" where it is empty. */
  public String spoken(CaptureRecord record) {
    StringJoiner words = new StringJoiner(". ");
    for (FieldSpec spec : form.fields()) {
      record.value(spec.id()).ifPresent(v -> words.add(spokenWithName(spec, v)));
    }
    return words.length() == 0 ? "nothing yet" : words.toString();
  }

  /** The whole record on one line, with how each value came in. */
  public String line(CaptureRecord record) {
    StringJoiner line = new StringJoiner("  ");
    for (FieldSpec spec : form.fields()) {
      Optional<Entry> entry = record.entry(spec.id());
      line.add(entry.map(e -> spec.spoken() + " " + brief(e.value())).orElse(spec.spoken() + " -"));
    }
    return line.toString();
  }

  private static String brief(FieldValue value) {
    return value instanceof FieldValue.Measure m
        ? m.text() + " " + m.unit().symbol()
        : value.text();
  }

  private static String codeWords(FieldSpec spec, FieldValue value) {
    return spec.kind() instanceof FieldKind.Coded coded
        ? coded.table().words(value.text())
        : value.text();
  }
}
