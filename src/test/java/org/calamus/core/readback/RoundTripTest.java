package org.calamus.core.readback;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.calamus.core.form.CodeSet;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Unit;
import org.calamus.core.speech.Heard;
import org.calamus.core.speech.Interpreter;
import org.calamus.core.speech.Meaning;
import org.calamus.core.speech.SpokenForm;
import org.calamus.core.speech.Token;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Vocabulary;
import org.calamus.support.Fenwick;
import org.calamus.support.WholeRecord;
import org.junit.jupiter.api.Test;

/** What is read back can be said: every value comes through the readback as the same value. */
class RoundTripTest {

  private static final Form LABORATORY = WholeRecord.form(CodeSet.LABORATORY);
  private static final Form EURING = WholeRecord.form(CodeSet.EURING);

  /** What a station lists is said in its own words: these have a test of their own. */
  private static final Set<FieldId> LISTED = Set.of(FieldId.NET, FieldId.BANDER, FieldId.SCRIBE);

  private static final Map<Form, Interpreter> INTERPRETERS =
      Map.of(
          LABORATORY,
          new Interpreter(Fenwick.vocabulary(), LABORATORY),
          EURING,
          new Interpreter(Fenwick.vocabulary(), EURING));

  @Test
  void understandsItsOwnReadbackOfEveryCodeOfTheLaboratory() {
    assertEveryCodeComesThrough(LABORATORY);
  }

  @Test
  void understandsItsOwnReadbackOfEveryCodeOfEuring() {
    assertEveryCodeComesThrough(EURING);
  }

  private static void assertEveryCodeComesThrough(Form form) {
    for (FieldSpec spec : form.fields()) {
      if (spec.kind() instanceof FieldKind.Coded coded && !LISTED.contains(spec.id())) {
        assertThat(coded.table().rows()).isNotEmpty();
        for (CodeTable.Row row : coded.table().rows()) {
          assertComesThrough(form, spec, new FieldValue.Code(row.code()));
        }
      }
      if (spec.kind() instanceof FieldKind.CodedMany many) {
        List<String> codes = many.table().rows().stream().map(CodeTable.Row::code).toList();
        for (String first : codes) {
          assertComesThrough(form, spec, new FieldValue.Codes(List.of(first)));
          for (String second : codes) {
            if (!first.equals(second)) {
              assertComesThrough(form, spec, new FieldValue.Codes(List.of(first, second)));
            }
          }
        }
      }
    }
  }

  @Test
  void understandsItsOwnReadbackOfEveryTime() {
    for (int minute = 0; minute < 24 * 60; minute++) {
      assertComesThrough(
          spec(FieldId.TIME), new FieldValue.TimeOfDay(LocalTime.MIDNIGHT.plusMinutes(minute)));
    }
  }

  @Test
  void understandsItsOwnReadbackOfEveryDay() {
    // a year with a leap day, and every year that a record may be of
    for (int day = 0; day < 366; day++) {
      assertComesThrough(
          spec(FieldId.DATE), new FieldValue.Day(LocalDate.of(2024, 1, 1).plusDays(day)));
    }
    for (int year = 1900; year < 2100; year++) {
      assertComesThrough(
          spec(FieldId.DATE), new FieldValue.Day(LocalDate.of(year, 6, year % 30 + 1)));
    }
  }

  @Test
  void understandsItsOwnReadbackOfEveryWing() {
    for (int wing = 25; wing <= 400; wing++) {
      for (String text : List.of("" + wing, wing + ".0", wing + ".5")) {
        if (!text.equals("400.5")) {
          assertComesThrough(
              spec(FieldId.WING), new FieldValue.Measure(new BigDecimal(text), Unit.MILLIMETRE));
        }
      }
    }
  }

  @Test
  void understandsItsOwnReadbackOfMasses() {
    // every tenth of a gram up to 60 g, and beyond that a sample with every last digit
    for (int tenths = 15; tenths <= 15_000; tenths += tenths < 600 ? 1 : 77) {
      assertComesThrough(
          spec(FieldId.MASS), new FieldValue.Measure(BigDecimal.valueOf(tenths, 1), Unit.GRAM));
    }
    assertComesThrough(
        spec(FieldId.MASS), new FieldValue.Measure(new BigDecimal("22.30"), Unit.GRAM));
    assertComesThrough(
        spec(FieldId.MASS), new FieldValue.Measure(new BigDecimal("1500"), Unit.GRAM));
  }

  @Test
  void understandsItsOwnReadbackOfBands() {
    Random random = new Random(1967);
    for (int i = 0; i < 300; i++) {
      String prefix = digits(random, 3 + i % 2);
      assertComesThrough(spec(FieldId.BAND), new BandNumber(prefix, digits(random, 5)));
    }
  }

  @Test
  void understandsItsOwnReadbackOfTarsusAndCulmenWithEveryDecimal() {
    for (FieldId field : List.of(FieldId.TARSUS, FieldId.CULMEN)) {
      for (int hundredths = 300; hundredths <= 8000; hundredths += 7) {
        assertComesThrough(
            spec(field),
            new FieldValue.Measure(BigDecimal.valueOf(hundredths, 2), Unit.MILLIMETRE));
      }
    }
  }

  @Test
  void understandsItsOwnReadbackOfNetsAndPeople() {
    for (FieldId field : LISTED) {
      for (String code : List.of("7a", "12", "3b", "QX", "ABCDEFGH", "IJKLMNOP", "QRSTUVWXYZ")) {
        assertListedComesThrough(field, new CodeTable.Row(code, "", code));
      }
      assertListedComesThrough(field, new CodeTable.Row("RB", "", "reed bed"));
    }
  }

  /** A value of a table that the station lists, with the spoken form that it may give. */
  private static void assertListedComesThrough(FieldId field, CodeTable.Row row) {
    CodeTable table = new CodeTable("listed", List.of(row));
    FieldSpec spec = new FieldSpec(field, "Listed", field.key(), new FieldKind.Coded(table));
    Form form = Form.ofAll(List.of(spec), Set.of());
    List<String> problems = new ArrayList<>();
    SpokenForm said =
        new SpokenForm(
            List.of(row.words().split(" ")),
            new Token.CodeWords(Set.of(field), row.code()),
            new SpokenForm.Section("station", false, false, false),
            "station.toml");
    Vocabulary vocabulary =
        Fenwick.vocabulary()
            .with(row.words().equals(row.code()) ? List.of() : List.of(said), problems);
    assertThat(problems).isEmpty();
    Interpreter interpreter = new Interpreter(vocabulary, form);
    Phrases phrases = new Phrases(form);
    FieldValue value = new FieldValue.Code(row.code());
    assertThat(heard(interpreter, field, field, phrases.spoken(spec, value))).contains(value);
    assertThat(heard(interpreter, field, field, phrases.spokenWithName(spec, value)))
        .contains(value);
  }

  @Test
  void understandsTheLastThreeDigitsOfTheExpectedBand() {
    BandNumber expected = new BandNumber("2841", "55600");
    for (int last = 0; last < 1000; last++) {
      BandNumber band = expected.endingIn(String.format(Locale.ROOT, "%03d", last));
      String words = org.calamus.core.record.Spoken.digits(band.suffix().substring(2));
      assertThat(heard(LABORATORY, FieldId.BAND, FieldId.BAND, words, expected)).contains(band);
    }
  }

  private static void assertComesThrough(FieldSpec spec, FieldValue value) {
    assertComesThrough(LABORATORY, spec, value);
  }

  private static void assertComesThrough(Form form, FieldSpec spec, FieldValue value) {
    Phrases phrases = new Phrases(form);
    String words = phrases.spoken(spec, value);
    String named = phrases.spokenWithName(spec, value);
    BandNumber other = new BandNumber("1111", "11111");
    assertThat(heard(form, spec.id(), spec.id(), words, other))
        .as("%s: %s", spec.id(), words)
        .contains(value);
    for (FieldId open : FieldId.values()) {
      assertThat(heard(form, spec.id(), open, named, other))
          .as("%s while %s is asked", named, open)
          .contains(value);
    }
  }

  /** The one value heard for the wanted field, while another may be asked; digits as received. */
  private static Optional<FieldValue> heard(
      Form form, FieldId wanted, FieldId open, String words, BandNumber expected) {
    return heard(INTERPRETERS.get(form), wanted, open, words, Optional.of(expected));
  }

  private static Optional<FieldValue> heard(
      Interpreter interpreter, FieldId wanted, FieldId open, String words) {
    return heard(interpreter, wanted, open, words, Optional.empty());
  }

  private static Optional<FieldValue> heard(
      Interpreter interpreter,
      FieldId wanted,
      FieldId open,
      String words,
      Optional<BandNumber> expected) {
    Meaning meaning =
        interpreter.interpret(
            Utterance.of(words), Optional.of(open), Optional.empty(), Fenwick.expected(expected));
    List<Meaning.Item> items = new ArrayList<>();
    Stream.of(meaning)
        .filter(Meaning.Values.class::isInstance)
        .forEach(m -> items.addAll(((Meaning.Values) m).items()));
    if (items.size() != 1 || items.get(0).field().orElse(open) != wanted) {
      return Optional.empty();
    }
    Heard heard = items.get(0).heard();
    if (heard instanceof Heard.Ending ending) {
      return Optional.of(ending.value());
    }
    return heard instanceof Heard.One one ? Optional.of(one.value()) : Optional.empty();
  }

  private static String digits(Random random, int count) {
    StringBuilder digits = new StringBuilder();
    for (int i = 0; i < count; i++) {
      digits.append(random.nextInt(10));
    }
    return digits.toString();
  }

  private static FieldSpec spec(FieldId id) {
    return LABORATORY.spec(id);
  }
}
