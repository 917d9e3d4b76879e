package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.calamus.core.effort.Net;
import org.calamus.core.effort.NetEvent;
import org.calamus.core.effort.NetLog;
import org.calamus.core.form.CodeSet;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.calamus.support.WholeRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NetOrdersTest {

  private static final List<Net> NETS =
      List.of(Net.of("1"), Net.of("2"), new Net("12", "south pond", new BigDecimal("18")));

  /** The form of the program, which has nets; they are 1, 2 and 12. It is 6:30. */
  private static Talk talk() {
    return talk(NETS);
  }

  private static Talk talk(List<Net> nets) {
    Setup setup = WholeRecord.setup(CodeSet.LABORATORY, List.of()).netting(nets);
    Talk talk = new Talk(setup, Known.nothing());
    talk.event(new Event.Started(talk.now(), Optional.empty()));
    talk.spoken();
    return talk;
  }

  private static NetLog log(Talk talk) {
    return talk.state().desk().nets();
  }

  private static List<NetEvent> stored(Talk talk) {
    return talk.effects().stream()
        .filter(Effect.JournalNets.class::isInstance)
        .flatMap(e -> ((Effect.JournalNets) e).events().stream())
        .toList();
  }

  private static Instant at(String time) {
    return Instant.parse("2026-06-13T" + time + ":00Z");
  }

  @Test
  void wordsOpenAndCloseAllNets() {
    Talk talk = talk().say("open mist nets");
    assertThat(talk.lastSpoken()).isEqualTo("open all nets, or which one");
    talk.say("affirm");
    assertThat(stored(talk)).extracting(NetEvent::net).containsExactly("1", "2", "12");
    assertThat(stored(talk)).allMatch(e -> e.at().equals(talk.now()) && e.bander().equals("QX"));
    assertThat(talk.view().message()).isEqualTo("Nets 1, 2, 12 opened at 06:30.");
    assertThat(talk.lastSpoken()).startsWith("three nets opened zero six three zero");
    talk.say("close mist nets").say("affirm");
    assertThat(log(talk).open()).isEmpty();
  }

  /** The form's table has the number by which a code that is none is struck. */
  @Test
  void aNetWithoutANumberOfItsOwnIsOpenedByTheNumberItWasGiven() {
    Talk talk = talk(List.of(Net.of("1"), Net.of("RB"))).keys("+82").keys("101.0600\n");
    assertThat(stored(talk)).extracting(NetEvent::net).containsExactly("RB");
    assertThat(stored(talk)).extracting(NetEvent::at).containsExactly(at("06:00"));
    assertThat(talk.view().message()).isEqualTo("Net RB opened at 06:00.");
  }

  @ParameterizedTest
  @CsvSource({"1, 1", "one two, 12"})
  void aNetIsOpenedByItsNumberInWords(String words, String net) {
    Talk talk = talk().say("open mist nets").say(words.equals("1") ? "one" : words);
    assertThat(log(talk).open()).containsExactly(net);
    assertThat(talk.state().question()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # keys,          open,    since
          +8212\\n,         12,      06:30
          +822.0615\\n,     2,       06:15
          """)
  void keysOpenANet(String keys, String net, String since) {
    Talk talk = talk().keys(keys.replace("\\n", "\n"));
    assertThat(log(talk).open()).containsExactly(net);
    assertThat(log(talk).last(net).orElseThrow().at())
        .isBetween(at(since), at(since).plusSeconds(10));
  }

  @Test
  void keysOpenAndCloseAllNetsAtAnEarlierTime() {
    Talk talk = talk().keys("+82.0545\n");
    assertThat(log(talk).open()).containsExactly("1", "2", "12");
    assertThat(stored(talk)).allMatch(e -> e.at().equals(at("05:45")));
    talk.keys("+83.0620\n");
    assertThat(log(talk).open()).isEmpty();
    assertThat(log(talk).spans("1"))
        .containsExactly(new NetLog.Span(at("05:45"), Optional.of(at("06:20"))));
  }

  @Test
  void aTimeIsSaidBehindItsName() {
    Talk talk = talk().say("open mist nets").say("one capture time zero six one zero");
    assertThat(log(talk).last("1").orElseThrow().at()).isEqualTo(at("06:10"));
  }

  @Test
  void aTimeForANetThatIsOpenCorrectsItsOpening() {
    Talk talk = talk().keys("+821.0620\n").keys("+821.0555\n");
    assertThat(log(talk).spans("1"))
        .containsExactly(new NetLog.Span(at("05:55"), Optional.empty()));
    assertThat(stored(talk).get(1).supersedes()).contains(1L);
    talk.keys("+831.0610\n").keys("+831.0615\n");
    assertThat(log(talk).spans("1"))
        .containsExactly(new NetLog.Span(at("05:55"), Optional.of(at("06:15"))));
  }

  @Test
  void anOpenNetIsNotOpenedAgainWithoutATime() {
    Talk talk = talk().keys("+821.0620\n");
    talk.spoken();
    talk.keys("+821\n");
    assertThat(stored(talk)).isEmpty();
    assertThat(talk.view().message())
        .isEqualTo("Net 1 is open since 06:20; with a time that is corrected.");
  }

  @Test
  void aNetIsNotClosedBeforeItWasOpenedNorWithoutThat() {
    Talk talk = talk().keys("+821.0620\n").keys("+831.0600\n");
    assertThat(log(talk).isOpen("1")).isTrue();
    assertThat(talk.view().message())
        .isEqualTo("Not entered: net 1 was opened at 06:20, after that.");
    talk.keys("-").keys("+832.0600\n");
    assertThat(talk.view().message()).contains("net 2 was never opened");
    assertThat(log(talk).nets()).containsExactly("1");
  }

  @Test
  void aNetThatTheStationDoesNotHaveIsRefusedAndAsked() {
    Talk talk = talk().keys("+8277\n");
    assertThat(talk.view().message()).isEqualTo("The station has no net 77.");
    assertThat(talk.state().question()).isPresent();
    talk.keys(".0799\n");
    assertThat(talk.view().message())
        .isEqualTo("A net is its number; a time is a point and four digits.");
    talk.say("negative");
    assertThat(talk.state().question()).isEmpty();
    assertThat(log(talk).events()).isEmpty();
  }

  @Test
  void whereNoNetIsNamedOneIsOpenedByNumberAndAllThatAreOpenAreClosed() {
    Talk talk = talk(List.of()).keys("+82\n");
    assertThat(talk.view().message())
        .isEqualTo("The station file names no nets: give the number of one.");
    talk.keys("5\n").keys("+827\n");
    assertThat(log(talk).open()).containsExactly("5", "7");
    talk.keys("+83\n");
    assertThat(log(talk).open()).isEmpty();
  }

  @Test
  void aBirdInTheHandStaysAndIsAskedOn() {
    Talk talk = talk().say("white breasted nuthatch");
    Optional<?> open = talk.state().open();
    talk.keys("+821\n");
    assertThat(talk.state().record()).isPresent();
    assertThat(talk.state().open()).isEqualTo(open);
    assertThat(log(talk).open()).containsExactly("1");
  }

  @Test
  void theEndAsksForNetsThatAreOpenByName() {
    Talk talk = talk().keys("+82\n").keys("+831\n").say("end session");
    assertThat(talk.lastSpoken()).isEqualTo("nets are open. end session");
    assertThat(talk.view().question().orElseThrow()).startsWith("Still open: nets 2, 12.");
    talk.say("affirm");
    assertThat(talk.effects()).contains(new Effect.EndSession());
  }

  @Test
  void aStationWhoseFormHasNoNetsEntersThemByKey() {
    Talk talk = new Talk(Fenwick.setup().netting(NETS), Known.nothing());
    talk.event(new Event.Started(talk.now(), Optional.empty())).keys("+822\n");
    assertThat(log(talk).open()).containsExactly("2");
  }

  private static List<String> rows(Talk talk) {
    return talk.view().page().orElseThrow().rows().stream()
        .map(r -> (r.mark() + " " + r.text()).strip())
        .toList();
  }

  @Test
  void thePageShowsTheNetHoursOfTheDayByNetAndOfTheDaysBefore() {
    NetLog log =
        NetLog.of(
            List.of(
                event(1, "1", NetEvent.What.OPENED, "2026-06-12T05:00:00Z"),
                event(2, "1", NetEvent.What.CLOSED, "2026-06-12T11:00:00Z"),
                event(3, "12", NetEvent.What.OPENED, "2026-06-12T23:00:00Z")));
    Setup setup = WholeRecord.setup(CodeSet.LABORATORY, List.of()).netting(NETS);
    State start = State.atStart(1, setup.form().first(), Known.nothing(), log);
    Dialogue dialogue = new Dialogue(setup);
    State state = dialogue.step(start, new Event.Started(at("06:30"), Optional.empty())).state();
    for (char c : "+75".toCharArray()) {
      state = dialogue.step(state, new Event.KeyStruck(at("06:30"), Key.of(c))).state();
    }
    Page page = new Views(setup).of(state).page().orElseThrow();
    // 6.5 hours of 18 m are 9.75 net-hours; yesterday 6 and one and a half
    assertThat(page.rows().stream().map(r -> (r.mark() + " " + r.text()).strip()).toList())
        .containsExactly(
            "By net     > open now; a net of 12 m for an hour is one net-hour",
            "net                          open  net-hours   birds   for 100",
            "> 12 south pond, 18 m          6:30       9.75       0       0.0",
            "All                                     9.75       0       0.0",
            "The days before, all nets",
            "2026-06-12                              7.50       0       0.0");
  }

  private static NetEvent event(long id, String net, NetEvent.What what, String at) {
    Instant when = Instant.parse(at);
    return new NetEvent(id, net, what, when, when, "QX", Optional.empty());
  }

  @Test
  void thePageFollowsTheClockAndTellsHowNetsAreEntered() {
    Talk talk = talk().keys("+75");
    assertThat(rows(talk))
        .containsExactly("No net was entered as open today: \"open mist nets\" or +82.");
    talk.keys("+821.0530\n+75");
    assertThat(rows(talk).get(2)).contains("1:00").contains("1.00");
    talk.event(new Event.Ticked(at("07:00")));
    assertThat(rows(talk).get(2)).contains("1:30").contains("1.50");
  }
}
