package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.calamus.adapter.files.TableFiles;
import org.calamus.core.rule.AgeSeason.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Source of the facts: Pyle 1997, bar charts, generalised; from memory, as the table says. */
class AgeSeasonTest {

  private static final AgeSeason SEASON = new TableFiles(Optional.empty()).ageSeason();

  @ParameterizedTest
  @CsvSource({
    // code, species, last day of one verdict, the verdict, that of the day after
    "L, WBNU, 2026-03-31, REFUSED, ASKS",
    "L, WBNU, 2026-05-15, ASKS, OK",
    "L, WBNU, 2026-09-30, OK, ASKS",
    "L, WBNU, 2026-12-31, ASKS, REFUSED",
    "L, MODO, 2026-05-15, ASKS, OK",
    "L, MODO, 2026-09-30, OK, ASKS",
    "HY, WBNU, 2026-03-31, REFUSED, ASKS",
    "HY, WBNU, 2026-05-15, ASKS, OK",
    "HY, WBNU, 2026-12-31, OK, REFUSED",
    "HY, RECR, 2026-12-31, OK, ASKS",
    "HY, RTHU, 2026-05-15, ASKS, OK",
    "U, WBNU, 2026-05-15, REFUSED, ASKS",
    "U, WBNU, 2026-08-31, ASKS, OK",
    "U, WBNU, 2026-12-31, OK, REFUSED",
    "SY, WBNU, 2026-08-31, OK, ASKS",
    "SY, WBNU, 2026-12-31, ASKS, OK",
    "ASY, WBNU, 2026-08-31, OK, ASKS",
    "ASY, WBNU, 2026-12-31, ASKS, OK"
  })
  void verdictChangesAtTheEdge(
      String code, String species, LocalDate last, Verdict until, Verdict after) {
    assertThat(SEASON.verdict(code, species, last)).isEqualTo(until);
    assertThat(SEASON.verdict(code, species, last.plusDays(1))).isEqualTo(after);
  }

  @Test
  void changesNowhereButAtTheEdges() {
    assertThat(changes("L", "WBNU")).isEqualTo(4);
    assertThat(changes("HY", "WBNU")).isEqualTo(3);
    assertThat(changes("U", "WBNU")).isEqualTo(3);
    assertThat(changes("SY", "WBNU")).isEqualTo(2);
    assertThat(changes("AHY", "WBNU")).isZero();
    assertThat(changes("TY", "WBNU")).isZero();
    assertThat(changes("HY", "GHOW")).isEqualTo(2);
  }

  /** Through a leap year and round to its first day. */
  private static int changes(String code, String species) {
    int changes = 0;
    LocalDate day = LocalDate.of(2028, 1, 1);
    for (int i = 0; i < 366; i++) {
      Verdict today = SEASON.verdict(code, species, day.plusDays(i));
      changes += today == SEASON.verdict(code, species, day.plusDays(i + 1)) ? 0 : 1;
    }
    return changes;
  }

  @Test
  void inMarchAHatchingYearBirdIsRefusedAndOlderOnesAreNot() {
    for (int day = 1; day <= 31; day++) {
      LocalDate march = LocalDate.of(2026, 3, day);
      assertThat(SEASON.verdict("HY", "WBNU", march)).isEqualTo(Verdict.REFUSED);
      assertThat(SEASON.verdict("U", "WBNU", march)).isEqualTo(Verdict.REFUSED);
      for (String code : List.of("SY", "ASY", "AHY")) {
        assertThat(SEASON.verdict(code, "WBNU", march)).isEqualTo(Verdict.OK);
      }
    }
  }

  @Test
  void nothingIsSaidOfACodeThatTheTableDoesNotHave() {
    assertThat(SEASON.verdict("A8Y", "WBNU", LocalDate.of(2026, 1, 1))).isEqualTo(Verdict.OK);
  }

  @Test
  void aRowNeedsTheWholeYear() {
    assertThatThrownBy(() -> new AgeSeason.Row("HY", Set.of(), List.of(Verdict.OK)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("HY has 1 halves");
  }
}
