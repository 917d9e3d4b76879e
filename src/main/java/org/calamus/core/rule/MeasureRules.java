package org.calamus.core.rule;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.Range;
import org.calamus.core.form.Species;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;
import org.calamus.core.record.Unit;

/**
 * The rules that hold a measured value against what is known of the species, of the station's own
 * birds, and of the bird's other measures. They only ask.
 */
final class MeasureRules {

  private static final String TABLE =
      "the species table: AVONET and Dunning 2008 (published), widened as its header says"
          + " (derived)";
  private static final String FAR =
      "twice beyond the species table: common practice, no published source";
  private static final String OWN =
      "the station's own records, median and deviation of 30 or more (derived)";
  private static final String BUILD =
      "middle build of the species table, and how far mass, tail and wing stray from their"
          + " means (derived)";

  private static final Set<FieldId> MEASURED =
      EnumSet.of(FieldId.WING, FieldId.TAIL, FieldId.TARSUS, FieldId.CULMEN, FieldId.MASS);

  /** How far beyond a species' range no bird of it can be. Common practice, no published source. */
  private static final BigDecimal TWICE = BigDecimal.valueOf(2);

  private MeasureRules() {}

  static List<Rule> all() {
    List<Rule> rules = new ArrayList<>();
    for (FieldId field : MEASURED) {
      Set<FieldId> inputs = Set.of(FieldId.SPECIES, field);
      Set<FieldId> watched = Set.of(FieldId.SEX);
      String key = field.key();
      rules.add(new Rule(key + ".species", inputs, watched, TABLE, c -> outside(field, c)));
      rules.add(new Rule(key + ".impossible", inputs, watched, FAR, c -> impossible(field, c)));
      rules.add(new Rule(key + ".station", inputs, watched, OWN, c -> unlikeOwn(field, c)));
    }
    rules.add(build(FieldId.MASS));
    rules.add(build(FieldId.TAIL));
    return List.copyOf(rules);
  }

  private static Optional<Range> range(FieldId field, RuleCase c) {
    return c.species().flatMap(s -> s.range(field, c.sex()));
  }

  private static boolean fits(FieldId field, RuleCase c) {
    BigDecimal amount = c.record().amount(field).orElse(BigDecimal.ZERO);
    return range(field, c).map(r -> r.holds(amount)).orElse(true);
  }

  private static Optional<Slip> slip(FieldId field, RuleCase c) {
    Unit unit =
        c.record().value(field).orElseThrow() instanceof FieldValue.Measure m
            ? m.unit()
            : Unit.MILLIMETRE;
    return c.record()
        .amount(field)
        .filter(a -> a.signum() > 0)
        .flatMap(amount -> range(field, c).flatMap(r -> Slips.named(amount, unit, r)));
  }

  /** Twice beyond the range, and no slip of tongue or eye would explain it. */
  private static boolean isFar(FieldId field, RuleCase c) {
    BigDecimal amount = c.record().amount(field).orElse(BigDecimal.ZERO);
    return slip(field, c).isEmpty()
        && range(field, c)
            .filter(
                r ->
                    amount.multiply(TWICE).compareTo(r.least()) < 0
                        || amount.compareTo(r.most().multiply(TWICE)) > 0)
            .isPresent();
  }

  private static Optional<Finding> outside(FieldId field, RuleCase c) {
    Optional<BigDecimal> amount = c.record().amount(field);
    if (amount.isEmpty() || fits(field, c) || isFar(field, c)) {
      return Optional.empty();
    }
    Range range = range(field, c).orElseThrow();
    Optional<Slip> slip = slip(field, c);
    String perhaps =
        slip.map(s -> "; " + plain(s) + " would fit (" + s.kind().words() + ")")
            .orElseGet(() -> otherFields(field, c));
    String said = slip.map(s -> ". perhaps " + Spoken.number(s.amount())).orElse("");
    return Optional.of(
        Findings.asks(
            field.key() + ".species",
            field,
            Findings.shown(c, field)
                + " is outside "
                + limits(range, field, c)
                + birds(field, c)
                + perhaps
                + ".",
            Findings.spoken(c, field) + side(amount.get(), range) + said));
  }

  private static Optional<Finding> impossible(FieldId field, RuleCase c) {
    if (c.record().amount(field).isEmpty() || !isFar(field, c)) {
      return Optional.empty();
    }
    Range range = range(field, c).orElseThrow();
    String others = otherFields(field, c);
    BigDecimal amount = c.record().amount(field).orElseThrow();
    String said =
        others.isEmpty()
            ? " is far too " + (amount.compareTo(range.least()) < 0 ? "small" : "large")
            : " looks like another field";
    return Optional.of(
        Findings.asks(
            field.key() + ".impossible",
            field,
            Findings.shown(c, field)
                + " is far outside "
                + limits(range, field, c)
                + birds(field, c)
                + (others.isEmpty() ? "" : " and looks like another field" + others)
                + ".",
            Findings.spoken(c, field) + said));
  }

  private static Optional<Finding> unlikeOwn(FieldId field, RuleCase c) {
    Optional<BigDecimal> amount = c.record().amount(field);
    if (amount.isEmpty() || !fits(field, c)) {
      return Optional.empty();
    }
    String species = c.record().code(FieldId.SPECIES).orElse("");
    return c.known()
        .sample()
        .range(species, c.sex().orElse("U"), field)
        .filter(own -> !own.usual().holds(amount.get()))
        .map(
            own ->
                Findings.asks(
                    field.key() + ".station",
                    field,
                    Findings.shown(c, field)
                        + " is outside the station's own "
                        + limits(rounded(own.usual()), field, c)
                        + " ("
                        + own.count()
                        + " birds).",
                    Findings.spoken(c, field)
                        + side(amount.get(), own.usual())
                        + " for this station"));
  }

  /** To a tenth, outwards, so that every amount that passes is in it. */
  private static Range rounded(Range range) {
    return new Range(
        range.least().setScale(1, RoundingMode.FLOOR),
        range.most().setScale(1, RoundingMode.CEILING));
  }

  private static String plain(Slip slip) {
    return slip.amount().toPlainString();
  }

  private static String side(BigDecimal amount, Range range) {
    return amount.compareTo(range.least()) < 0 ? " is small" : " is large";
  }

  private static String limits(Range range, FieldId field, RuleCase c) {
    return c.record().value(field).orElseThrow() instanceof FieldValue.Measure m
        ? range.text() + " " + m.unit().symbol()
        : range.text();
  }

  /** The birds that the range is for: of the species, or of its sex where that has its own. */
  private static String birds(FieldId field, RuleCase c) {
    String name = c.species().map(Species::name).orElse("the species");
    boolean isOfSex =
        c.species()
            .map(s -> s.ranges().get(field))
            .flatMap(r -> c.sex().filter(r.own()::containsKey))
            .isPresent();
    return " for " + name + (isOfSex ? ", " + c.sex().map(x -> sexWords(c, x)).orElse("") : "");
  }

  private static String sexWords(RuleCase c, String code) {
    return Findings.words(c, FieldId.SEX, code);
  }

  private static String otherFields(FieldId field, RuleCase c) {
    Map<FieldId, Range> ranges = new EnumMap<>(FieldId.class);
    MEASURED.stream()
        .filter(c.form()::has)
        .forEach(f -> range(f, c).ifPresent(r -> ranges.put(f, r)));
    BigDecimal amount = c.record().amount(field).orElse(BigDecimal.ZERO);
    String others =
        Slips.fieldsThatFit(amount, field, ranges).stream()
            .map(f -> Findings.label(c, f))
            .collect(Collectors.joining(" or "));
    return others.isEmpty() ? "" : "; as " + others + " it would fit";
  }

  /** A measure against the wing: each passes alone, the pair does not. */
  private static Rule build(FieldId field) {
    return new Rule(
        field.key() + ".wing",
        Set.of(FieldId.SPECIES, FieldId.WING, field),
        Set.of(FieldId.SEX),
        BUILD,
        c -> unlikeWing(field, c));
  }

  private static Optional<Finding> unlikeWing(FieldId field, RuleCase c) {
    boolean eachFits = fits(FieldId.WING, c) && fits(field, c);
    Optional<BigDecimal> wing = c.record().amount(FieldId.WING).filter(w -> w.signum() > 0);
    Optional<BigDecimal> other = c.record().amount(field).filter(o -> o.signum() > 0);
    if (!eachFits || wing.isEmpty() || other.isEmpty()) {
      return Optional.empty();
    }
    return proportion(c)
        .filter(
            p ->
                field == FieldId.MASS
                    ? !p.massFits(other.get(), wing.get())
                    : !p.tailFits(other.get(), wing.get()))
        .map(
            p ->
                Findings.asks(
                    field.key() + ".wing",
                    field,
                    Findings.shown(c, field)
                        + excess(field, p, other.get(), wing.get())
                        + "a wing of "
                        + wing.get().toPlainString()
                        + " mm: measure one of them again.",
                    Findings.spoken(c, field)
                        + excess(field, p, other.get(), wing.get())
                        + "a wing of "
                        + Spoken.number(wing.get())));
  }

  private static String excess(
      FieldId field, BodyProportion build, BigDecimal amount, BigDecimal wing) {
    boolean isMass = field == FieldId.MASS;
    BigDecimal factor = isMass ? build.massFactor(amount, wing) : build.tailFactor(amount, wing);
    boolean isAbove = factor.compareTo(BigDecimal.ONE) > 0;
    if (isMass) {
      return isAbove ? " is much for " : " is little for ";
    }
    return isAbove ? " is long for " : " is short for ";
  }

  private static Optional<BodyProportion> proportion(RuleCase c) {
    Optional<BigDecimal> wing = middle(FieldId.WING, c);
    Optional<BigDecimal> tail = middle(FieldId.TAIL, c);
    Optional<BigDecimal> mass = middle(FieldId.MASS, c);
    return wing.isPresent() && tail.isPresent() && mass.isPresent()
        ? Optional.of(new BodyProportion(wing.get(), tail.get(), mass.get()))
        : Optional.empty();
  }

  /**
   * About the mean that a range was made of: the geometric middle of its ends, which the table puts
   * at 0.88 and 1.12 of a wing's mean, 0.85 and 1.15 of a tail's, and 0.75 and 1.5 of a mass's.
   */
  private static Optional<BigDecimal> middle(FieldId field, RuleCase c) {
    return range(field, c)
        .map(r -> r.least().multiply(r.most()).sqrt(MathContext.DECIMAL32))
        .filter(m -> m.signum() > 0);
  }
}
