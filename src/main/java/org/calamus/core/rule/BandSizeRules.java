package org.calamus.core.rule;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.BandSizes;
import org.calamus.core.form.Species;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.Finding.Severity;

/** The rules of the sizes of bands. They only ask: the tables can be wrong, the gauge is right. */
final class BandSizeRules {

  private static final String RECOMMENDED =
      "Bird Banding Laboratory, Species Numbers, Alpha Codes and Recommended Band Sizes";

  private static final String DIGIT =
      "Bird Banding Laboratory, North American Bird Banding Manual, page Band numbers: the last"
          + " digit of the prefix tells the size group; which small sizes are with which digit:"
          + " from memory";

  private static final String GAUGE =
      "Bird Banding Laboratory, Technical Specifications for Band Sizes (inside diameters); that"
          + " the gauge decides: common practice";

  private static final Set<FieldId> BAND_AND_SIZE = Set.of(FieldId.BAND, FieldId.BAND_SIZE);
  private static final Set<FieldId> KIND = Set.of(FieldId.KIND);

  private BandSizeRules() {}

  static List<Rule> all() {
    return List.of(
        new Rule("band.size-digit", BAND_AND_SIZE, KIND, DIGIT, BandSizeRules::otherDigit),
        new Rule(
            "band.size-string",
            BAND_AND_SIZE,
            KIND,
            "the size with which the string was declared",
            BandSizeRules::otherString),
        new Rule(
            "band.species-size",
            Set.of(FieldId.SPECIES, FieldId.BAND_SIZE),
            Set.of(FieldId.SEX, FieldId.LEG_GAUGE, FieldId.KIND),
            RECOMMENDED,
            BandSizeRules::notRecommended),
        new Rule(
            "band.gauge",
            Set.of(FieldId.BAND_SIZE, FieldId.LEG_GAUGE),
            KIND,
            GAUGE,
            BandSizeRules::otherGauge));
  }

  private static Optional<String> size(RuleCase c) {
    return c.record().code(FieldId.BAND_SIZE);
  }

  private static Optional<Finding> otherDigit(RuleCase c) {
    Optional<String> prefix =
        c.record().band().map(BandNumber::prefix).filter(p -> p.matches("\\d{3,4}"));
    if (prefix.isEmpty() || !c.kind().usesBand()) {
      return Optional.empty();
    }
    List<String> allowed =
        c.reference().bandSizes().allowedBy(prefix.get()).stream()
            .map(BandSizes.Size::code)
            .toList();
    return size(c)
        .filter(s -> c.reference().bandSizes().size(s).isPresent())
        .filter(s -> !allowed.isEmpty() && !allowed.contains(s))
        .map(
            s ->
                asks(
                    "band.size-digit",
                    FieldId.BAND_SIZE,
                    "Band size "
                        + s
                        + " does not go with the prefix "
                        + prefix.get()
                        + ": its last digit is that of "
                        + String.join(", ", allowed)
                        + ".",
                    "band size " + said(s) + " does not go with the number"));
  }

  private static Optional<Finding> otherString(RuleCase c) {
    Optional<String> declared =
        c.record().band().filter(b -> c.kind().usesBand()).flatMap(c.ledger()::sizeOf);
    return size(c)
        .flatMap(
            s ->
                declared
                    .filter(d -> !d.equalsIgnoreCase(s))
                    .map(
                        d ->
                            asks(
                                "band.size-string",
                                FieldId.BAND_SIZE,
                                "Band size " + s + " is not that of the band's string: " + d + ".",
                                "band size " + said(s) + ". its string has " + said(d))));
  }

  private static Optional<Finding> notRecommended(RuleCase c) {
    Optional<String> size = size(c).filter(s -> c.kind().putsBand());
    Optional<Species> species = c.species();
    if (size.isEmpty() || species.isEmpty()) {
      return Optional.empty();
    }
    List<String> recommended = species.get().bandSizes(c.sex());
    boolean isGauged =
        !species.get().isOnlySize()
            && c.record().code(FieldId.LEG_GAUGE).filter(size.get()::equalsIgnoreCase).isPresent();
    return recommended.isEmpty() || isGauged || isKept(c) || recommended.contains(size.get())
        ? Optional.empty()
        : Optional.of(
            notRecommended(c.reference().bandSizes(), size.get(), species.get(), recommended));
  }

  /** Whether the size was kept for this species: the sex may be given behind both. */
  private static boolean isKept(RuleCase c) {
    FieldId later =
        c.record()
                .entry(FieldId.SPECIES)
                .orElseThrow()
                .at()
                .isAfter(c.record().entry(FieldId.BAND_SIZE).orElseThrow().at())
            ? FieldId.SPECIES
            : FieldId.BAND_SIZE;
    return c.isKept(later, "band.species-size");
  }

  private static Finding notRecommended(
      BandSizes sizes, String size, Species species, List<String> recommended) {
    String fits = String.join(", ", recommended);
    String start =
        species.isOnlySize()
            ? " must not be put on " + species.name() + ": no size but " + fits
            : " is not one of " + fits + " for " + species.name();
    return asks(
        "band.species-size",
        FieldId.BAND_SIZE,
        "Band size "
            + size
            + start
            + danger(sizes, size, recommended)
            + ". What does the leg gauge say?",
        "band size "
            + said(size)
            + (species.isOnlySize() ? " must not be used here" : " is unusual here")
            + ". what does the leg gauge say");
  }

  /** What a band beside all the sizes that fit would do; nothing where it lies between them. */
  private static String danger(BandSizes sizes, String size, List<String> fitting) {
    Optional<BigDecimal> own = inches(sizes, size);
    List<BigDecimal> others =
        fitting.stream()
            .flatMap(f -> inches(sizes, f).stream())
            .sorted()
            .collect(Collectors.toList());
    if (own.isEmpty() || others.isEmpty()) {
      return "";
    }
    if (own.get().compareTo(others.get(others.size() - 1)) > 0) {
      return "; too large, it could slip over the foot";
    }
    return own.get().compareTo(others.get(0)) < 0 ? "; too small, it could injure the leg" : "";
  }

  private static Optional<BigDecimal> inches(BandSizes sizes, String size) {
    return sizes.size(size).flatMap(BandSizes.Size::inches);
  }

  private static Optional<Finding> otherGauge(RuleCase c) {
    BandSizes sizes = c.reference().bandSizes();
    Optional<String> gauge = c.record().code(FieldId.LEG_GAUGE);
    Optional<String> size = size(c).filter(s -> c.kind().putsBand());
    if (gauge.isEmpty() || size.isEmpty() || isSame(sizes, gauge.get(), size.get())) {
      return Optional.empty();
    }
    return Optional.of(
        asks(
            "band.gauge",
            FieldId.LEG_GAUGE,
            "Leg gauge "
                + gauge.get()
                + " is not the size of the band, "
                + size.get()
                + danger(sizes, size.get(), List.of(gauge.get()))
                + ". Gauge again, or take a band of size "
                + gauge.get()
                + ".",
            "leg gauge " + said(gauge.get()) + ". band size " + said(size.get())));
  }

  /** Sizes of one diameter differ in height alone, which the gauge does not tell. */
  private static boolean isSame(BandSizes sizes, String one, String other) {
    Optional<BigDecimal> inches = inches(sizes, one);
    return one.equalsIgnoreCase(other) || inches.isPresent() && inches.equals(inches(sizes, other));
  }

  private static String said(String size) {
    return Spoken.characters(size);
  }

  private static Finding asks(String rule, FieldId field, String shown, String spoken) {
    return new Finding(rule, Severity.ASKS, field, shown, spoken);
  }
}
