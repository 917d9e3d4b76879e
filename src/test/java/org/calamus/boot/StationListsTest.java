package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.effort.Net;
import org.calamus.core.form.CodeTable;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.SpokenForm;
import org.calamus.core.speech.Token;
import org.calamus.port.Protocol;
import org.calamus.port.StationSettings;
import org.junit.jupiter.api.Test;

class StationListsTest {

  private static StationLists lists(List<String> nets, List<String> people) {
    Protocol usual = Protocol.usual();
    Protocol protocol =
        new Protocol(
            nets,
            people,
            List.of(),
            usual.warnAfter(),
            usual.limit(),
            usual.netsOpenedAt(),
            Map.of("SP", new BigDecimal("18")),
            Optional.of("ZB"));
    return new StationLists(
        new StationSettings(
            "Fenwick Marsh",
            "QX",
            ZoneId.of("UTC"),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            protocol));
  }

  @Test
  void namesTheNetsWithTheirLengths() {
    assertThat(lists(List.of("1", "SP = south pond"), List.of()).named())
        .containsExactly(Net.of("1"), new Net("SP", "south pond", new BigDecimal("18")));
    assertThat(lists(List.of(), List.of()).named()).isEmpty();
  }

  @Test
  void numbersTheNetsWhereNoneIsNamed() {
    assertThat(lists(List.of(), List.of()).nets().rows()).hasSize(99);
  }

  @Test
  void givesANetItsSpokenFormWhereItHasOne() {
    StationLists lists = lists(List.of("12", "7a", "RB = Reed  bed"), List.of());
    assertThat(lists.nets().rows())
        .containsExactly(
            new CodeTable.Row("12", "12", "12"),
            new CodeTable.Row("7a", "101", "7a"),
            new CodeTable.Row("RB", "102", "reed bed"));
    assertThat(lists.forms())
        .containsExactly(
            new SpokenForm(
                List.of("reed", "bed"),
                new Token.CodeWords(Set.of(FieldId.NET), "RB"),
                new SpokenForm.Section("station", false, false, false),
                "station.toml"));
  }

  /** On a numeric keypad there was no way to strike south pond. */
  @Test
  void numbersTheCodesThatAreNoneSoThatTheKeypadHasThemAll() {
    assertThat(lists(List.of("SP", "RB"), List.of()).nets().rows())
        .extracting(CodeTable.Row::digits)
        .containsExactly("1", "2");
    assertThat(lists(List.of("7a", "1", "104", "SP", "1"), List.of()).nets().rows())
        .extracting(CodeTable.Row::digits)
        .containsExactly("201", "1", "104", "202");
  }

  @Test
  void listsTheSessionsBanderFirstAndOnce() {
    assertThat(lists(List.of(), List.of("ZB = zoe", "QX = quinn")).people("bander").rows())
        .containsExactly(
            new CodeTable.Row("QX", "1", "quinn"), new CodeTable.Row("ZB", "2", "zoe"));
  }
}
