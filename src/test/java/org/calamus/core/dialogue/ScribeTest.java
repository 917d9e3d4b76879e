package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.form.CodeSet;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Provenance;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.calamus.support.WholeRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who writes: given for the session or for a bird, and in every record. */
class ScribeTest {

  private static Talk begun(Setup setup, Known known) {
    Talk talk = new Talk(setup, known);
    return talk.event(new Event.Started(talk.now(), Optional.empty()));
  }

  private static Setup setup() {
    return WholeRecord.setup(CodeSet.LABORATORY, List.of());
  }

  private static Talk begun() {
    return begun(setup(), Known.nothing());
  }

  private static Setup stationWithScribe() {
    Setup plain = setup();
    Setup.Station station =
        new Setup.Station("Fenwick Marsh", "QX", ZoneId.of("UTC"), Optional.of("ZB"));
    return new Setup(
        plain.form(),
        plain.rules(),
        plain.interpreter(),
        plain.grammars(),
        station,
        plain.devices());
  }

  private static Talk bird(Talk talk, String last) {
    return talk.keys("7270\n2841556" + last + "\n5\n2\n4\n2\n");
  }

  private static String scribe(CaptureRecord record) {
    return record.value(FieldId.SCRIBE).map(FieldValue::text).orElse("-");
  }

  @ParameterizedTest
  @ValueSource(strings = {"+31ZB\n", "scribe zulu bravo"})
  void theScribeOfTheSessionIsGivenByKeyAndByWordAndBeginsNoRecord(String how) {
    Talk talk = begun();
    talk = how.startsWith("+") ? talk.keys(how) : talk.say(how);
    assertThat(talk.record()).isEmpty();
    assertThat(talk.view().message()).isEqualTo("ZB writes from now on.");
    assertThat(talk.view().big()).isEqualTo("ZB");
    assertThat(talk.view().asked()).isEqualTo("Species");
    assertThat(talk.lastSpoken()).startsWith("scribe zulu bravo. species");
  }

  @Test
  void everyRecordGetsTheScribeAtItsEnd() {
    Talk talk = bird(bird(begun().keys("+31ZB\n"), "01").keys("++"), "02").keys("++");
    assertThat(talk.saved()).isEqualTo(2);
    assertThat(scribe(talk.asSaved(1))).isEqualTo("ZB");
    assertThat(scribe(talk.asSaved(2))).isEqualTo("ZB");
    assertThat(talk.asSaved(1).entry(FieldId.SCRIBE).orElseThrow().provenance())
        .isEqualTo(new Provenance(Provenance.Way.CONCLUDED, "who writes"));
  }

  @Test
  void whoIsGivenForABirdWritesOnAndWhoWasTakenBackDoesNot() {
    Talk talk = bird(begun(), "01").say("scribe zulu bravo").keys("-").keys("++");
    assertThat(scribe(talk.asSaved(1))).isEqualTo("-");
    talk = bird(talk, "02").keys("+31ZB\n").keys("++");
    talk = bird(talk, "03").keys("++");
    assertThat(scribe(talk.asSaved(2))).isEqualTo("ZB");
    assertThat(scribe(talk.asSaved(3))).isEqualTo("ZB");
  }

  @Test
  void theStationsScribeHoldsUntilAnotherIsGivenOrNobodyWrites() {
    Talk talk = bird(begun(stationWithScribe(), Known.nothing()), "01").keys("++");
    assertThat(scribe(talk.asSaved(1))).isEqualTo("ZB");
    talk = bird(talk.keys("+31QX\n"), "02").keys("++");
    assertThat(scribe(talk.asSaved(2))).isEqualTo("QX");
    talk = bird(talk.keys("+31+-"), "03");
    assertThat(scribe(talk.keys("++").asSaved(3))).isEqualTo("-");
  }

  @Test
  void afterACutTheScribeOfTheLastRecordOfTheDayWritesOn() {
    Talk first = begun();
    PastCapture before =
        new PastCapture(
            1,
            first.now().minusSeconds(600),
            "Fenwick Marsh",
            "QX",
            Map.of(FieldId.SCRIBE, new FieldValue.Code("ZB")),
            Set.of());
    Talk talk = begun(setup(), Known.of(List.of(), List.of(before), Fenwick.ZONE));
    assertThat(scribe(bird(talk, "01").keys("++").asSaved(1))).isEqualTo("ZB");
  }

  @Test
  void theSessionPageSaysWhoWrites() {
    assertThat(rows(begun(stationWithScribe(), Known.nothing())))
        .contains("People            QX bands, ZB writes");
    assertThat(rows(begun()))
        .anyMatch(r -> r.equals("People            QX bands, nobody writes (+ 31 names one)"));
  }

  private static List<String> rows(Talk talk) {
    return talk.keys("+70").view().page().orElseThrow().rows().stream()
        .map(Page.Row::text)
        .toList();
  }
}
