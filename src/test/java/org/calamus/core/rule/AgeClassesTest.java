package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.adapter.files.TableFiles;
import org.calamus.core.form.CodeTable;
import org.calamus.core.record.Caught;
import org.calamus.core.rule.AgeClasses.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Source of the facts: Bird Banding Laboratory, "Age (Year Class) and Sex Codes": each time a bird
 * passes December 31, it graduates to the next higher year class; U on 31 December is AHY on 1
 * January. The intervals are derived from the classes' meanings.
 */
class AgeClassesTest {

  private static final TableFiles TABLES = new TableFiles(Optional.empty());
  private static final AgeClasses CLASSES = TABLES.ageClasses();

  /** The codes of the program's age table, which ends with ATY. */
  private static final Set<String> LISTED =
      TABLES.codes("age").rows().stream().map(CodeTable.Row::code).collect(Collectors.toSet());

  private static final Set<String> ALL =
      CLASSES.rows().stream().map(AgeClasses.Row::code).collect(Collectors.toSet());

  /** Reads {@code "AHY 2023, ASY 2024"}. */
  private static List<Statement> history(String text) {
    return Arrays.stream(text.split(", "))
        .map(s -> s.split(" "))
        .map(s -> new Statement(s[0], Integer.parseInt(s[1])))
        .toList();
  }

  @ParameterizedTest
  @CsvSource({
    "U, 2026 or before",
    "AHY, 2025 or before",
    "HY, 2026",
    "L, 2026",
    "SY, 2025",
    "ASY, 2024 or before",
    "TY, 2024",
    "ATY, 2023 or before",
    "4Y, 2023",
    "A4Y, 2022 or before",
    "8Y, 2019",
    "A8Y, 2018 or before"
  })
  void birthYearsAreThoseOfTheClass(String code, String years) {
    assertThat(CLASSES.birthYears(new Statement(code, 2026)).orElseThrow().text()).isEqualTo(years);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // history | caught in | birth years | finest the table lists | finest of all
        "AHY 2023 | 2026 | 2022 or before | ATY | A4Y",
        "HY 2024 | 2026 | 2024 | TY | TY",
        "HY 2024, ASY 2026 | 2026 | 2024 | TY | TY",
        "AHY 2024, SY 2024 | 2025 | 2023 | TY | TY",
        "U 2025 | 2026 | 2025 or before | AHY | AHY",
        "L 2026 | 2026 | 2026 | HY | HY",
        "L 2025 | 2026 | 2025 | SY | SY",
        "HY 2020 | 2026 | 2020 | ATY | 7Y",
        "HY 2010 | 2026 | 2010 | ATY | A8Y",
        "XX 2010, HY 2025 | 2026 | 2025 | SY | SY"
      })
  void finestIsTheClosestThatTheHistoryProves(
      String history, int year, String years, String listed, String all) {
    BirthYears birth = CLASSES.birthYears(history(history)).orElseThrow();
    assertThat(birth.text()).isEqualTo(years);
    assertThat(CLASSES.finest(birth, year, LISTED)).contains(listed);
    assertThat(CLASSES.finest(birth, year, ALL)).contains(all);
    assertThat(CLASSES.contradiction(history(history))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "SY 2025, SY 2026 | SY 2026",
        "HY 2025, ASY 2026 | ASY 2026",
        "HY 2024, HY 2024, SY 2026, TY 2026 | SY 2026",
        "ATY 2024, AHY 2025, TY 2025 | TY 2025",
        "ASY 2025, HY 2020, SY 2022 | SY 2022"
      })
  void contradictionIsTheFirstStatementThatDoesNotMeetTheRest(String history, String first) {
    assertThat(CLASSES.contradiction(history(history))).contains(history(first).get(0));
    BirthYears birth = CLASSES.birthYears(history(history)).orElseThrow();
    assertThat(birth.isEmpty()).isTrue();
    assertThat(birth.text()).isEqualTo("none");
    assertThat(CLASSES.finest(birth, 2026, ALL)).isEmpty();
  }

  @Test
  void nothingIsKnownOfCodesThatTheTableDoesNotHave() {
    assertThat(CLASSES.birthYears(history("XX 2026"))).isEmpty();
    assertThat(CLASSES.birthYears(List.of())).isEmpty();
    assertThat(CLASSES.contradiction(List.of())).isEmpty();
  }

  @Test
  void aBirdOfTheFutureHasNoClass() {
    assertThat(CLASSES.finest(BirthYears.between(2027, 2027), 2026, ALL)).isEmpty();
  }

  /** The whole order of statements of two years: intersecting is the same in any order. */
  @Test
  void theOrderOfStatementsDoesNotMatterToTheBirthYears() {
    for (String one : ALL) {
      for (String other : ALL) {
        List<Statement> ab = List.of(new Statement(one, 2024), new Statement(other, 2026));
        List<Statement> ba = List.of(ab.get(1), ab.get(0));
        BirthYears birth = CLASSES.birthYears(ab).orElseThrow();
        boolean isEmpty = birth.isEmpty();
        assertThat(CLASSES.birthYears(ba).orElseThrow().isEmpty()).isEqualTo(isEmpty);
        assertThat(CLASSES.contradiction(ab).isPresent()).isEqualTo(isEmpty);
        assertThat(isEmpty).as(ab.toString()).isEqualTo(noYearFits(ab));
      }
    }
  }

  /** Tries every year of a century, one statement at a time, as a person would on paper. */
  private static boolean noYearFits(List<Statement> history) {
    for (int year = 1926; year <= 2026; year++) {
      BirthYears only = BirthYears.between(year, year);
      if (history.stream().allMatch(s -> CLASSES.birthYears(s).orElseThrow().holds(only))) {
        return false;
      }
    }
    return true;
  }

  @ParameterizedTest
  @CsvSource({"U, AHY", "AHY, ASY", "HY, SY", "L, SY", "SY, TY", "ASY, ATY", "TY, ATY", "ATY, ATY"})
  void inYearGraduatesWhenTheYearTurns(String before, String after) {
    Statement statement = new Statement(before, 2026);
    assertThat(CLASSES.inYear(statement, 2027, LISTED)).contains(after);
    String same = before.equals("L") ? "HY" : before;
    assertThat(CLASSES.inYear(statement, 2026, LISTED)).contains(same);
  }

  private static List<Instant> momentsOf(LocalDate day, ZoneId zone) {
    List<Instant> moments = new ArrayList<>();
    moments.add(day.atStartOfDay(zone).toInstant());
    for (LocalTime time : List.of(LocalTime.NOON, LocalTime.of(23, 59, 59, 999_999_999))) {
      moments.add(LocalDateTime.of(day, time).atZone(zone).toInstant());
    }
    return moments;
  }

  /** 2028 is a leap year; the zones are ahead of, behind and far from Universal Time. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "UTC",
        "America/New_York",
        "America/Adak",
        "Europe/Berlin",
        "Pacific/Kiritimati",
        "Asia/Kathmandu"
      })
  void classesHoldThroughEveryDayOfAYearAndTurnWithTheStationsCalendar(String name) {
    ZoneId zone = ZoneId.of(name);
    Statement young = new Statement("HY", 2027);
    Statement unknown = new Statement("U", 2027);
    LocalDate day = LocalDate.of(2027, 1, 1);
    int days = 0;
    for (; day.getYear() < 2029; day = day.plusDays(1)) {
      boolean isFirstYear = day.getYear() == 2027;
      for (Instant moment : momentsOf(day, zone)) {
        int year = new Caught(moment, Optional.empty(), Optional.empty()).day(zone).getYear();
        assertThat(CLASSES.inYear(young, year, LISTED)).contains(isFirstYear ? "HY" : "SY");
        assertThat(CLASSES.inYear(unknown, year, LISTED)).contains(isFirstYear ? "U" : "AHY");
      }
      days++;
    }
    assertThat(days).isEqualTo(365 + 366);
  }

  @Test
  void aClassCannotLieInTheFuture() {
    assertThatThrownBy(() -> new AgeClasses.Row("XX", OptionalInt.of(0), 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new AgeClasses.Row("XX", OptionalInt.of(0), -1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void yearsAreShownInWords() {
    assertThat(BirthYears.between(2023, 2024).text()).isEqualTo("2023 to 2024");
    assertThat(BirthYears.upTo(2022).holds(BirthYears.between(2021, 2023))).isFalse();
    assertThat(BirthYears.upTo(2022).holds(BirthYears.between(2021, 2022))).isTrue();
  }
}
