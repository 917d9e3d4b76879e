package org.calamus.core.readback;

import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.form.Range;
import org.calamus.core.form.SpeciesTable;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.core.rule.Known;

/**
 * Places the measures of a bird for the eye.
 *
 * @param form the station's form
 * @param species the published ranges
 * @param zone the station's time zone
 */
public record Placing(Form form, SpeciesTable species, ZoneId zone) {

  /** The measures that have a picture, in the order in which they are shown. */
  public static final List<FieldId> FIELDS =
      List.of(FieldId.WING, FieldId.TAIL, FieldId.TARSUS, FieldId.MASS);

  /** The fewest own birds of a sex that are shown. Our choice, no published source. */
  public static final int FEWEST = 5;

  /** One of so many is left out at each end of what is drawn, since it may be a slip. */
  private static final int TENTH = 10;

  /**
   * Where a measure falls.
   *
   * @param record the record, of which species and sex count
   * @param field one of {@link #FIELDS}
   * @param amount the measure in the field's unit
   * @param known what the saved records tell
   * @return empty where neither a published range nor enough own birds are known
   */
  public Optional<Strip> strip(
      CaptureRecord record, FieldId field, BigDecimal amount, Known known) {
    Optional<Range> published = published(record, field);
    List<Strip.Own> own =
        record.code(FieldId.SPECIES).map(code -> own(code, field, amount, known)).orElse(List.of());
    List<Range> drawn = new ArrayList<>(published.stream().toList());
    own.forEach(group -> drawn.add(group.middle()));
    if (drawn.isEmpty()) {
      return Optional.empty();
    }
    if (field == FieldId.MASS) {
      earlier(record, known).forEach(point -> drawn.add(new Range(point.amount(), point.amount())));
    }
    return Strip.around(drawn)
        .map(axis -> new Strip(field, form.spec(field).spoken(), amount, published, own, axis));
  }

  private Optional<Range> published(CaptureRecord record, FieldId field) {
    return record
        .code(FieldId.SPECIES)
        .flatMap(species::byCode)
        .flatMap(s -> s.range(field, record.code(FieldId.SEX)));
  }

  /** The birds of each sex; those of unknown sex only where neither sex has enough. */
  private static List<Strip.Own> own(String code, FieldId field, BigDecimal amount, Known known) {
    List<Strip.Own> sexed =
        Stream.of("M", "F").flatMap(sex -> own(code, sex, field, amount, known).stream()).toList();
    return sexed.isEmpty() ? own(code, "U", field, amount, known).stream().toList() : sexed;
  }

  private static Optional<Strip.Own> own(
      String code, String sex, FieldId field, BigDecimal amount, Known known) {
    List<BigDecimal> amounts = known.sample().amounts(code, sex, field);
    if (amounts.size() < FEWEST) {
      return Optional.empty();
    }
    int cut = amounts.size() / TENTH;
    Range middle = new Range(amounts.get(cut), amounts.get(amounts.size() - 1 - cut));
    int below = (int) amounts.stream().takeWhile(a -> a.compareTo(amount) < 0).count();
    return Optional.of(new Strip.Own(sex, amounts.size(), below, middle));
  }

  /**
   * The mass of a recaptured bird over time.
   *
   * @param record the bird in the hand, whose band was read
   * @param now its mass where it was taken
   * @param known what the saved records tell
   * @return empty where no earlier mass is known
   */
  public Optional<Course> course(CaptureRecord record, Optional<BigDecimal> now, Known known) {
    List<Course.Point> earlier = earlier(record, known);
    if (earlier.isEmpty()) {
      return Optional.empty();
    }
    List<Range> all = new ArrayList<>(published(record, FieldId.MASS).stream().toList());
    earlier.forEach(point -> all.add(new Range(point.amount(), point.amount())));
    now.ifPresent(amount -> all.add(new Range(amount, amount)));
    return Strip.around(all).map(axis -> new Course(earlier, now, unit(), axis));
  }

  private String unit() {
    FieldSpec spec = form.spec(FieldId.MASS);
    return spec.kind() instanceof FieldKind.Measured measured ? measured.unit().symbol() : "";
  }

  /** The earlier masses of the bird, oldest first; the record itself is not among them. */
  private List<Course.Point> earlier(CaptureRecord record, Known known) {
    List<PastCapture> captures =
        record.kind().bandRead().flatMap(record::band).map(known::birds).orElse(List.of());
    return captures.stream()
        .filter(capture -> capture.id() != record.id())
        .filter(capture -> !capture.caught().isAfter(record.caught(), zone))
        .flatMap(
            capture ->
                capture.amount(FieldId.MASS).stream()
                    .map(amount -> new Course.Point(capture.day(zone), amount)))
        .toList();
  }
}
