package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Provenance;
import org.calamus.core.rule.Finding.Severity;
import org.calamus.support.Fenwick;

/**
 * A rule's edge: what passes and what does not, with all else the same. Fields are written as
 * {@code kind R, band 2841-55601}; the last is the one just filled.
 *
 * @param rule the rule's id
 * @param severity what it does on the far side
 * @param known what the saved records tell
 * @param given the fields that are filled on both sides
 * @param passes the fields on the near side
 * @param fails the fields on the far side
 * @param wouldFit a part of what the finding says would fit
 */
record Edge(
    String rule,
    Severity severity,
    Known known,
    String given,
    String passes,
    String fails,
    String wouldFit) {

  static final Instant NOW = Instant.parse("2026-05-14T06:30:00Z");

  private static final Form FORM = Fenwick.form();

  private static final Rules RULES =
      new Rules(FORM, Fenwick.reference(), Fenwick.policy(LocalTime.of(5, 30)));

  void assertPassesOnTheNearSide() {
    assertThat(findings(passes)).extracting(Finding::rule).doesNotContain(rule);
  }

  void assertFindsOnTheFarSide() {
    CaptureRecord record = record(NOW, joined(fails));
    Finding finding =
        findings(fails).stream()
            .filter(f -> f.rule().equals(rule))
            .findFirst()
            .orElseThrow(() -> new AssertionError(rule + " does not find " + record.entries()));
    FieldSpec spec = FORM.spec(finding.field());
    assertThat(finding.severity()).isEqualTo(severity);
    assertThat(finding.shown())
        .as("value, and what would fit")
        .contains(record.value(finding.field()).orElseThrow().text())
        .contains(wouldFit)
        .matches("(?s).*[.?]");
    assertThat(finding.shown().toLowerCase(Locale.ROOT))
        .as("the field's name")
        .containsAnyOf(spec.label().toLowerCase(Locale.ROOT), spec.spoken());
    assertThat(finding.spoken()).isNotBlank().doesNotContainPattern("[0-9A-Z]");
  }

  private List<Finding> findings(String side) {
    CaptureRecord record = record(NOW, joined(side));
    String[] parts = side.split(", ");
    FieldId changed = field(parts[parts.length - 1]);
    return RULES.check(record, changed, known, NOW);
  }

  private String joined(String side) {
    return given.isEmpty() ? side : given + ", " + side;
  }

  /** A record of a bird that was taken at an instant. */
  static CaptureRecord record(Instant at, String fields) {
    return record(1000, at, fields);
  }

  private static CaptureRecord record(long id, Instant at, String fields) {
    CaptureRecord record = new CaptureRecord(id, at, "Fenwick Marsh", "QX", Map.of());
    for (String part : fields.split(", ")) {
      record = record.with(field(part), entry(part, NOW));
    }
    return record;
  }

  /** What is known of captures, each written as {@code 2026-05-01T06:30:00Z kind R, band ...}. */
  static Known known(String... captures) {
    long id = 0;
    java.util.ArrayList<PastCapture> past = new java.util.ArrayList<>();
    for (String capture : captures) {
      id++;
      String[] parts = capture.split(" ", 2);
      past.add(PastCapture.of(record(id, Instant.parse(parts[0]), parts[1])));
    }
    past.sort(Comparator.comparing(PastCapture::capturedAt));
    return Known.of(List.of(), past, Fenwick.ZONE);
  }

  private static FieldId field(String part) {
    return FieldId.ofKey(part.split(" ")[0]).orElseThrow();
  }

  /** Behind a value, {@code !rule} is a rule that the bander overruled. */
  static Entry entry(String part, Instant at) {
    String[] words = part.split(" ", 2)[1].split(" !");
    List<String> overruled = Arrays.asList(words).subList(1, words.length);
    return new Entry(
        value(field(part), words[0]),
        new Provenance(Provenance.Way.SAID, ""),
        at,
        List.copyOf(overruled));
  }

  private static FieldValue value(FieldId field, String text) {
    FieldKind kind = FORM.spec(field).kind();
    if (kind instanceof FieldKind.Band) {
      return BandNumber.parse(text)
          .map(b -> (FieldValue) b)
          .orElseGet(() -> new FieldValue.Code(text));
    }
    if (kind instanceof FieldKind.Measured measured) {
      return new FieldValue.Measure(new BigDecimal(text), measured.unit());
    }
    if (kind instanceof FieldKind.Time) {
      return new FieldValue.TimeOfDay(LocalTime.parse(text));
    }
    if (kind instanceof FieldKind.Date) {
      return new FieldValue.Day(LocalDate.parse(text));
    }
    if (kind instanceof FieldKind.Note) {
      return new FieldValue.Note(text, java.util.Optional.empty());
    }
    return kind instanceof FieldKind.CodedMany
        ? new FieldValue.Codes(List.of(text.split(" ")))
        : new FieldValue.Code(text);
  }

  @Override
  public String toString() {
    return rule + ": " + passes + " | " + fails;
  }
}
