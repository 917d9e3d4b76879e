package org.calamus.benchmark;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import org.calamus.core.form.Range;
import org.calamus.core.form.Species;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.SpokenForm;
import org.calamus.core.speech.Token;
import org.calamus.support.Fenwick;

/**
 * What is said in the measurement: numbers drawn from fixed seeds, another one for each half, and
 * names and commands of the vocabulary, every second one for each half. All of it is invented.
 */
final class UtteranceSets {

  private static final String[] DIGITS = {
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"
  };
  private static final String[] TEENS = {
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen"
  };
  private static final String[] TENS = {
    "", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"
  };
  private static final List<String> LETTERS =
      Fenwick.vocabulary().section("letters").stream().map(SpokenForm::text).toList();
  private static final String BAND = "two eight four one five five six zero one";

  private final Half half;
  private final Random random;
  private final List<Said> all = new ArrayList<>();

  private UtteranceSets(Half half) {
    this.half = half;
    this.random = new Random(half == Half.TUNING ? 1729 : 6174);
  }

  /** All utterances of a half. */
  static List<Said> of(Half half) {
    UtteranceSets sets = new UtteranceSets(half);
    for (int i = 0; i < 8; i++) {
      sets.bandNumber();
      sets.lastThree();
      sets.wing();
      sets.mass();
      sets.correction();
    }
    sets.names();
    sets.spelled();
    sets.commands();
    return sets.all;
  }

  private void add(String set, List<String> before, String words, String spoken) {
    all.add(new Said(set, before, words, spoken));
  }

  private static List<String> inHand(Species species) {
    return List.of(BAND, spokenName(species), "second year", "male");
  }

  private void bandNumber() {
    StringBuilder digits = new StringBuilder(String.valueOf(1 + random.nextInt(9)));
    while (digits.length() < 9) {
      digits.append(random.nextInt(10));
    }
    String all = digits.toString();
    String spoken =
        spaced(all.substring(0, 4))
            + ", "
            + spaced(all.substring(4, 6))
            + ", "
            + spaced(all.substring(6));
    add("band number", List.of(), spaced(all), spoken);
  }

  private void lastThree() {
    int last = 100 + random.nextInt(899);
    String before = spaced("2841" + (10 + random.nextInt(89)) + last);
    String words = spaced(String.valueOf(last + 1));
    if (random.nextInt(3) == 0) {
      words = words.replace("zero", "oh");
    }
    add(
        "last three of band",
        List.of(before, "song sparrow", "second year", "male", "save record"),
        words,
        words);
  }

  private Species species() {
    List<Species> known =
        Fenwick.species().species().stream()
            .filter(s -> range(s, FieldId.WING).isPresent())
            .filter(s -> range(s, FieldId.MASS).isPresent())
            .filter(s -> Fenwick.vocabulary().forms().stream().anyMatch(f -> isName(f, s)))
            .toList();
    return known.get(random.nextInt(known.size()));
  }

  private static boolean isName(SpokenForm form, Species species) {
    return form.text().equals(spokenName(species));
  }

  private static String spokenName(Species species) {
    return species.name().toLowerCase(Locale.ROOT).replace('-', ' ');
  }

  private void wing() {
    Species species = species();
    String words = number(within(range(species, FieldId.WING).orElseThrow(), 0).toPlainString());
    add("wing", inHand(species), words, words);
  }

  private void mass() {
    Species species = species();
    String words = number(within(range(species, FieldId.MASS).orElseThrow(), 1).toPlainString());
    List<String> before = new ArrayList<>(inHand(species));
    before.add(spaced(within(range(species, FieldId.WING).orElseThrow(), 0).toPlainString()));
    add("mass", before, words, words);
  }

  /** A value for another field than the one asked, or in place of the last one. */
  private void correction() {
    Species species = species();
    String wing = number(within(range(species, FieldId.WING).orElseThrow(), 0).toPlainString());
    String mass = number(within(range(species, FieldId.MASS).orElseThrow(), 1).toPlainString());
    List<String> before = new ArrayList<>(inHand(species));
    if (random.nextBoolean()) {
      add("named field", before, "weight " + mass, "weight, " + mass);
      before.add(spaced(within(range(species, FieldId.WING).orElseThrow(), 0).toPlainString()));
      add("correction", before, "correction " + wing, "correction, " + wing);
    } else {
      add("named field", before, "wing " + wing, "wing " + wing);
      before.add(spaced(within(range(species, FieldId.WING).orElseThrow(), 0).toPlainString()));
      add("correction", before, "correction wing " + wing, "correction, wing " + wing);
    }
  }

  private static Optional<Range> range(Species species, FieldId field) {
    return species.range(field, Optional.empty());
  }

  private BigDecimal within(Range range, int decimals) {
    double share = 0.1 + 0.8 * random.nextDouble();
    double span = range.most().subtract(range.least()).doubleValue();
    return range
        .least()
        .add(BigDecimal.valueOf(share * span))
        .setScale(decimals, RoundingMode.HALF_UP);
  }

  /** Digit by digit or in number words, each about as often. */
  private String number(String figures) {
    String[] parts = figures.split("\\.");
    boolean digitByDigit = random.nextBoolean();
    String whole = digitByDigit ? spaced(parts[0]) : inWords(Integer.parseInt(parts[0]));
    return parts.length == 1 ? whole : whole + " point " + spaced(parts[1]);
  }

  private String inWords(int number) {
    if (number >= 100) {
      String hundred = DIGITS[number / 100] + " hundred";
      return number % 100 == 0 ? hundred : hundred + " " + inWords(number % 100);
    }
    if (number < 10) {
      return DIGITS[number];
    }
    if (number < 20) {
      return TEENS[number - 10];
    }
    return number % 10 == 0 ? TENS[number / 10] : TENS[number / 10] + " " + DIGITS[number % 10];
  }

  private static String spaced(String digits) {
    return digits.chars().mapToObj(d -> DIGITS[d - '0']).collect(Collectors.joining(" "));
  }

  private void names() {
    List<SpokenForm> forms = new ArrayList<>(Fenwick.vocabulary().section("species"));
    forms.addAll(Fenwick.vocabulary().section("codes"));
    int at = half.ordinal();
    for (; at < forms.size(); at += 2) {
      SpokenForm form = forms.get(at);
      String field =
          form.meaning() instanceof Token.CodeWords code
              ? code.fields().stream().findFirst().map(f -> f.name()).orElse("AGE")
              : "";
      List<String> asked =
          switch (field) {
            case "SPECIES" -> List.of(BAND);
            case "AGE" -> List.of(BAND, "song sparrow");
            default -> List.of(BAND, "song sparrow", "second year");
          };
      add(field.equals("SPECIES") ? "species" : "age and sex", asked, form.text(), form.text());
    }
  }

  private void spelled() {
    List<Species> species = Fenwick.species().species();
    for (int i = 0; i < 8; i++) {
      String code = species.get(random.nextInt(species.size())).code();
      String words =
          code.chars().mapToObj(c -> LETTERS.get(c - 'A')).collect(Collectors.joining(" "));
      add("spelled code", List.of(BAND), words, words);
    }
  }

  /** Commands while nothing, a band, a code and a number is asked. */
  private void commands() {
    List<List<String>> moments =
        List.of(
            List.of(BAND, "song sparrow", "second year", "male", "six five", "two zero point one"),
            List.of(BAND),
            List.of(BAND, "song sparrow", "second year", "male"),
            List.of(BAND, "song sparrow", "second year", "male", "six five"));
    List<SpokenForm> commands = Fenwick.vocabulary().section("commands");
    for (int i = 0; i < commands.size(); i++) {
      String words = commands.get(i).text();
      int first = half.ordinal();
      add("command", moments.get((first + 2 * i) % 4), words, words);
      add("command", moments.get((first + 2 * i + 1) % 4), words, words);
    }
  }
}
