package org.calamus.core.readback;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.StringJoiner;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Spoken;

/**
 * The history of a bird in words: a line a capture for the screen, and one sentence to say while
 * the bird is in the hand.
 *
 * @param form the station's form
 * @param zone the station's time zone
 */
public record History(Form form, ZoneId zone) {

  private static final List<FieldId> IN_A_LINE =
      List.of(
          FieldId.KIND,
          FieldId.SPECIES,
          FieldId.AGE,
          FieldId.SEX,
          FieldId.WING,
          FieldId.TAIL,
          FieldId.TARSUS,
          FieldId.MASS,
          FieldId.NET);

  /**
   * A line for each capture, newest first: {@code 2025-06-14 QX N WBNU SY M wing 91 mm mass 21.5
   * g}.
   */
  public List<String> lines(List<PastCapture> captures) {
    List<String> lines = new ArrayList<>();
    for (PastCapture capture : captures) {
      lines.add(0, line(capture));
    }
    return lines;
  }

  private String line(PastCapture capture) {
    StringJoiner line = new StringJoiner("  ");
    line.add(capture.day(zone) + " " + capture.bander());
    for (FieldId field : IN_A_LINE) {
      capture.value(field).ifPresent(v -> line.add(brief(field, v)));
    }
    return line.toString();
  }

  private String brief(FieldId field, FieldValue value) {
    String name = form.has(field) ? form.spec(field).spoken() : field.key();
    if (value instanceof FieldValue.Measure measure) {
      return name + " " + measure.text() + " " + measure.unit().symbol();
    }
    return field == FieldId.NET ? name + " " + value.text() : value.text();
  }

  /**
   * The history in one sentence: what the bird was last taken for, when it was caught first and
   * last, how often, and its last wing. Numbers are said digit by digit.
   *
   * @param captures the captures, oldest first, at least one
   */
  public String sentence(List<PastCapture> captures) {
    PastCapture first = captures.get(0);
    PastCapture last = captures.get(captures.size() - 1);
    StringJoiner words = new StringJoiner(", ");
    last(captures, FieldId.SPECIES).ifPresent(v -> words.add(words(FieldId.SPECIES, v)));
    last(captures, FieldId.SEX)
        .filter(v -> !v.text().equals("U"))
        .ifPresent(v -> words.add(words(FieldId.SEX, v)));
    String age = first.value(FieldId.AGE).map(v -> " as " + words(FieldId.AGE, v)).orElse("");
    words.add("first caught " + date(first.day(zone)) + age);
    if (captures.size() > 1) {
      words.add("last " + date(last.day(zone)));
      words.add(Spoken.digits(String.valueOf(captures.size())) + " captures");
    }
    last(captures, FieldId.WING).ifPresent(v -> words.add("wing " + Spoken.digits(v.text())));
    return words.toString();
  }

  private static Optional<FieldValue> last(List<PastCapture> captures, FieldId field) {
    return captures.stream().flatMap(c -> c.value(field).stream()).reduce((one, next) -> next);
  }

  private String words(FieldId field, FieldValue value) {
    if (!form.has(field)) {
      return Spoken.name(value.text());
    }
    FieldSpec spec = form.spec(field);
    return Spoken.name(
        spec.kind() instanceof FieldKind.Coded coded
            ? coded.table().words(value.text())
            : value.text());
  }

  /** A month by its name and the year digit by digit: a day more would not help in the hand. */
  private static String date(LocalDate day) {
    return Spoken.name(day.getMonth().name()) + " " + Spoken.digits(String.valueOf(day.getYear()));
  }
}
