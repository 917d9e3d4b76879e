package org.calamus.benchmark;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.Month;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Range;
import org.calamus.core.form.Species;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.SpokenForm;
import org.calamus.core.speech.Token;
import org.calamus.support.Fenwick;

/**
 * What is said in the measurement, for every field of the program's own form: numbers drawn from
 * fixed seeds, another one for each half, and names, codes and commands of the vocabulary, every
 * second one for each half. All of it is invented.
 */
final class UtteranceSets {

  /** How many are drawn of what has no end, such as numbers. */
  private static final int DRAWN = 6;

  private static final List<FieldId> BANDED_WITH_1B = List.of(FieldId.WING, FieldId.MASS);
  private static final List<String> LETTERS =
      Moments.vocabulary().section("letters").stream()
          .map(SpokenForm::text)
          .filter(l -> !l.equals("x ray"))
          .sorted()
          .toList();

  private final Half half;
  private final Random random;
  private final List<Said> all = new ArrayList<>();

  private UtteranceSets(Half half) {
    this.half = half;
    this.random = new Random(seed(half));
  }

  /** The seed of a half. */
  static long seed(Half half) {
    return half == Half.TUNING ? 1729 : 6174;
  }

  /** All utterances of a half. */
  static List<Said> of(Half half) {
    UtteranceSets sets = new UtteranceSets(half);
    sets.bands();
    for (FieldSpec field : Moments.form().fields()) {
      sets.values(field);
    }
    sets.namedFields();
    sets.commands();
    sets.answers();
    sets.dates();
    return sets.all;
  }

  private void add(String set, List<String> before, String words) {
    all.add(new Said(set, before, words, words));
  }

  /** Every second one, other ones for each half. */
  private <T> List<T> halved(List<T> whole) {
    List<T> mine = new ArrayList<>();
    for (int i = half.ordinal(); i < whole.size(); i += 2) {
      mine.add(whole.get(i));
    }
    return mine;
  }

  private void bands() {
    for (int i = 0; i < DRAWN; i++) {
      String digits = String.valueOf(100_000_000 + random.nextInt(899_999_999));
      List<String> parts =
          List.of(digits.substring(0, 4), digits.substring(4, 6), digits.substring(6));
      String spoken = parts.stream().map(SpokenNumbers::spaced).collect(Collectors.joining(", "));
      String words = SpokenNumbers.spaced(digits);
      all.add(new Said("band, whole", List.of("recapture"), words, spoken));
      String last = SpokenNumbers.spaced(String.valueOf(601 + random.nextInt(99)));
      last = random.nextInt(3) == 0 ? last.replace("zero", "oh") : last;
      add("band, last three", Moments.asking(FieldId.BAND), last);
    }
  }

  private void values(FieldSpec field) {
    FieldKind kind = field.kind();
    if (field.id() == FieldId.SPECIES) {
      codes(field, ((FieldKind.Coded) kind).table());
      spelledSpecies();
    } else if (kind instanceof FieldKind.Coded coded) {
      codes(field, coded.table());
    } else if (kind instanceof FieldKind.CodedMany many) {
      codes(field, many.table());
    } else if (kind instanceof FieldKind.Measured measured) {
      measures(field, measured);
    } else if (kind instanceof FieldKind.Time) {
      times(field);
    } else if (field.id() == FieldId.OLD_BAND) {
      for (int i = 0; i < DRAWN / 2; i++) {
        String digits = String.valueOf(100_000_000 + random.nextInt(899_999_999));
        add("old band", Moments.asking(field.id()), SpokenNumbers.spaced(digits));
      }
    }
  }

  private static String set(FieldSpec field) {
    return field.label().toLowerCase(Locale.ROOT);
  }

  /** Codes in words, and those that are said in digits and letters. */
  private void codes(FieldSpec field, CodeTable table) {
    Set<String> said = new LinkedHashSet<>();
    Set<String> inWords = new LinkedHashSet<>();
    for (SpokenForm form : Moments.vocabulary().forms()) {
      Moments.code(form.meaning(), field.id())
          .ifPresent(
              code -> {
                said.add(form.text());
                inWords.add(code);
              });
    }
    for (CodeTable.Row row : table.rows()) {
      if (!inWords.contains(row.code())) {
        said.add(spelled(row.code()));
      }
    }
    for (String words : halved(new ArrayList<>(said))) {
      add(set(field), Moments.asking(field.id()), words);
    }
  }

  private static String spelled(String code) {
    return code.toUpperCase(Locale.ROOT)
        .chars()
        .mapToObj(
            c ->
                Character.isDigit(c)
                    ? SpokenNumbers.spaced(Character.toString(c))
                    : LETTERS.get(c - 'A'))
        .collect(Collectors.joining(" "));
  }

  private void spelledSpecies() {
    List<Species> species = Fenwick.species().species();
    for (int i = 0; i < DRAWN; i++) {
      String code = species.get(random.nextInt(species.size())).code();
      add("species, spelled", Moments.asking(FieldId.SPECIES), spelled(code));
    }
  }

  private void measures(FieldSpec field, FieldKind.Measured measured) {
    for (int i = 0; i < DRAWN; i++) {
      Species species = species();
      add(
          set(field),
          Moments.asking(field.id(), name(species)),
          SpokenNumbers.amount(drawn(field, measured, species), random));
    }
  }

  private String drawn(FieldSpec field, FieldKind.Measured measured, Species species) {
    int decimals = field.id() == FieldId.WING ? 0 : Math.min(1, measured.decimals());
    Range likely =
        species
            .range(field.id(), java.util.Optional.empty())
            .orElseGet(
                () ->
                    new Range(
                        measured.least().multiply(new BigDecimal("2")),
                        measured.least().multiply(new BigDecimal("5"))));
    return within(likely, decimals).toPlainString();
  }

  private BigDecimal within(Range range, int decimals) {
    double share = 0.1 + 0.8 * random.nextDouble();
    double span = range.most().subtract(range.least()).doubleValue();
    return range
        .least()
        .add(BigDecimal.valueOf(share * span))
        .setScale(decimals, RoundingMode.HALF_UP);
  }

  /** A species that can be said, takes a band of the station's string and has known measures. */
  private Species species() {
    List<Species> fit =
        Fenwick.species().species().stream()
            .filter(s -> s.bandSizes(java.util.Optional.of("M")).equals(List.of("1B")))
            .filter(
                s ->
                    BANDED_WITH_1B.stream()
                        .allMatch(f -> s.range(f, java.util.Optional.empty()).isPresent()))
            .filter(
                s -> Moments.vocabulary().forms().stream().anyMatch(f -> f.text().equals(name(s))))
            .toList();
    return fit.get(random.nextInt(fit.size()));
  }

  private static String name(Species species) {
    return species.name().toLowerCase(Locale.ROOT).replace('-', ' ');
  }

  private void times(FieldSpec field) {
    for (int i = 0; i < DRAWN; i++) {
      String words = SpokenNumbers.time(random.nextInt(24), random.nextInt(60), random);
      add(set(field), Moments.asking(field.id()), words);
    }
  }

  /** A day of each month, drawn apart from the others, which came before dates could be said. */
  private void dates() {
    Random days = new Random(seed(half) + 1);
    FieldSpec field = Moments.form().spec(FieldId.DATE);
    for (Month month : Month.values()) {
      LocalDate date = LocalDate.of(2025, month, 1 + days.nextInt(month.minLength()));
      add(set(field), Moments.asking(FieldId.DATE), SpokenNumbers.date(date, days));
    }
  }

  /** Names of fields while another one is asked, alone and with a value, and corrections. */
  private void namedFields() {
    List<SpokenForm> names =
        Moments.vocabulary().forms().stream()
            .filter(f -> f.section().name().equals("fields") && !f.section().isShort())
            .filter(f -> f.meaning() instanceof Token.Field)
            .toList();
    List<FieldId> asked = List.of(FieldId.AGE, FieldId.FAT, FieldId.WING, FieldId.NET);
    int at = 0;
    for (SpokenForm name : halved(names)) {
      add("field named", Moments.asking(asked.get(at++ % asked.size())), name.text());
    }
    for (int i = 0; i < DRAWN; i++) {
      Species species = species();
      FieldSpec wing = Moments.form().spec(FieldId.WING);
      FieldSpec mass = Moments.form().spec(FieldId.MASS);
      String chord = number(wing, species);
      String weight = number(mass, species);
      List<String> before = new ArrayList<>(Moments.asking(FieldId.FAT, name(species)));
      boolean isWing = random.nextBoolean();
      String named = isWing ? "wing chord " + chord : "weight " + weight;
      add("field named with value", before, named);
      before.add(
          isWing ? "wing chord " + number(wing, species) : "weight " + number(mass, species));
      add("correction", before, "correction " + (isWing ? chord : weight));
      add("correction by no", before, "no " + (isWing ? chord : weight));
    }
  }

  private String number(FieldSpec field, Species species) {
    FieldKind.Measured kind = (FieldKind.Measured) field.kind();
    return SpokenNumbers.amount(drawn(field, kind, species), random);
  }

  /**
   * Commands at two moments each, others in each half; why a saved record is corrected only when
   * that is asked, since it is listened for at no other moment.
   */
  private void commands() {
    List<FieldId> asked =
        List.of(FieldId.SPECIES, FieldId.BAND, FieldId.AGE, FieldId.FAT, FieldId.WING, FieldId.NET);
    List<SpokenForm> commands = Moments.vocabulary().section("commands");
    for (int i = 0; i < commands.size(); i++) {
      if (Moments.isReason(commands.get(i).meaning())) {
        add("command", Moments.askingTheReason(), commands.get(i).text());
        continue;
      }
      int first = half.ordinal() + 2 * i;
      add("command", Moments.asking(asked.get(first % 6)), commands.get(i).text());
      add("command", Moments.asking(asked.get((first + 3) % 6)), commands.get(i).text());
    }
  }

  /** Answers to a question. */
  private void answers() {
    List<String> question = new ArrayList<>(Moments.asking(FieldId.WING));
    question.add("two zero zero");
    for (String answer : List.of("affirm", "affirmative", "negative", "six eight", "say again")) {
      add("answer", question, answer);
    }
  }
}
