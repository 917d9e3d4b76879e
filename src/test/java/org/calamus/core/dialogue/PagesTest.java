package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.BandString;
import org.calamus.core.rule.Known;
import org.calamus.core.speech.Command;
import org.calamus.core.speech.Interpreter;
import org.calamus.core.speech.Meaning;
import org.calamus.core.speech.Utterance;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.calamus.support.WholeRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The pages beside the capture screen, by voice and by keypad. */
class PagesTest {

  private static final String BIRD = "284155601\n7270\n5\n4\n";

  private static Talk evening() {
    return Talk.atFenwick()
        .keys("284155601\n7270\n1\n0\n92\n22.3\n++")
        .keys("284155602\n6190\n5\n0\n*64\n\n++")
        .keys("284155603\n7270\n5\n5\n29\n\n++");
  }

  private static List<String> rows(Talk talk) {
    return page(talk).rows().stream().map(Page.Row::text).toList();
  }

  private static Page page(Talk talk) {
    return talk.view().page().orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({
    "+70, console session overview, Session at Fenwick Marsh",
    "+71, console daily records, 'Records of the day, 2026-06-13'",
    "+72, console string accounts, Band strings",
    "+73, console species summary, 'Species, 2026-06-13'",
    "+77, console species numbers, Species by number",
    "+75, console netting effort, 'Net-hours, 2026-06-13'",
    "+74, console available commands, What can be said and struck"
  })
  void aPageIsShownByKeyAndByWord(String keys, String words, String title) {
    Talk byKey = Talk.atFenwick().keys(keys);
    Talk byWord = Talk.atFenwick().say(words);
    assertThat(page(byKey).title()).isEqualTo(title);
    assertThat(page(byWord)).isEqualTo(page(byKey));
    assertThat(byWord.view().hints()).isEqualTo(byKey.view().hints());
  }

  @ParameterizedTest
  @ValueSource(strings = {"-", "negative", "console capture display", "correction", "which words"})
  void aPageIsLeftByKeyAndByWord(String leaving) {
    Talk talk = Talk.atFenwick().keys("+71");
    talk = leaving.length() == 1 ? talk.keys(leaving) : talk.say(leaving);
    assertThat(talk.view().page()).isEmpty();
  }

  @Test
  void goingBackSaysWhatIsAsked() {
    Talk talk = Talk.atFenwick().keys(BIRD).keys("+71-");
    assertThat(talk.lastSpoken()).isEqualTo("wing");
    assertThat(talk.field(FieldId.SEX)).as("minus took nothing back").isEqualTo("M");
  }

  @Test
  void everyPageIsReachedFromEveryOther() {
    Talk talk = Talk.atFenwick().keys("+70+71+72+73+74+70");
    assertThat(page(talk).title()).startsWith("Session");
  }

  @Test
  void theMenuIsSeenOverAPageAndGivesItBack() {
    Talk talk = Talk.atFenwick().keys("+71+");
    assertThat(talk.view().page()).isEmpty();
    assertThat(talk.view().choices()).isNotEmpty();
    assertThat(page(talk.keys("\n")).title()).startsWith("Records");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "wing nine two",
        "nine two",
        "two nine",
        "weight",
        "next field",
        "save record",
        "erase wing",
        "abandon record",
        "fifty",
        "point point"
      })
  void whatIsSaidOfTheBirdBringsTheCaptureScreenBack(String words) {
    Talk shown = Talk.atFenwick().keys(BIRD).keys("+70");
    assertThat(shown.view().page()).isPresent();
    assertThat(shown.say(words).view().page()).isEmpty();
    Talk other = Talk.atFenwick().keys(BIRD).say(words);
    assertThat(shown.record().map(r -> r.entries().keySet()))
        .as("the page changed nothing of what was said")
        .isEqualTo(other.record().map(r -> r.entries().keySet()));
    assertThat(shown.view().question()).isEqualTo(other.view().question());
  }

  @Test
  void aSettledMassBringsTheCaptureScreenBack() {
    Talk talk = new Talk(Fenwick.setup(Fenwick.balance()), Known.nothing());
    talk.event(new Event.Started(talk.now(), Optional.empty())).keys(BIRD).keys("+71");
    talk.weigh("0.0", "0.0", "0.0", "0.0", "0.0", "0.0", "0.0");
    assertThat(talk.view().page()).isPresent();
    talk.weigh("22.3", "22.3", "22.3", "22.3", "22.3", "22.3", "22.3", "22.3");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("22.3");
    assertThat(talk.view().page()).isEmpty();
  }

  @Test
  void aFailureOfTheStoreBringsTheCaptureScreenBack() {
    Talk talk = Talk.atFenwick().keys("+71");
    talk.event(new Event.StoreFailed(talk.now(), "The disk is full; make room."));
    assertThat(talk.view().page()).isEmpty();
  }

  @Test
  void theTimeInTheHandStaysVisibleAndWarnsOnAPage() {
    Talk talk = Talk.atFenwick().keys(BIRD).keys("+70");
    talk.event(new Event.Ticked(talk.now().plus(Duration.ofMinutes(6))));
    assertThat(talk.view().page()).isPresent();
    assertThat(talk.view().inHand()).isPresent();
    assertThat(talk.view().hold()).isEqualTo(View.Hold.LONG);
    assertThat(talk.view().message()).startsWith("The bird has been held for 6 minutes");
  }

  @ParameterizedTest
  @ValueSource(strings = {"+70", "console daily records"})
  void noPageHidesAQuestion(String opening) {
    Talk talk = Talk.atFenwick().keys(BIRD).keys("29\n");
    assertThat(talk.view().question()).isPresent();
    talk = opening.startsWith("+") ? talk.keys(opening) : talk.say(opening);
    assertThat(talk.view().page()).isEmpty();
    assertThat(talk.view().question()).isPresent();
  }

  @Test
  void keysNotEnteredAreNotLostByAPage() {
    Talk talk = Talk.atFenwick().keys(BIRD).keys("92").say("console daily records");
    assertThat(talk.view().page()).isEmpty();
    assertThat(talk.lastSpoken()).isEqualTo("not entered yet");
    assertThat(talk.keys("\n").field(FieldId.WING)).isEqualTo("92");
  }

  @ParameterizedTest
  @ValueSource(strings = {"console standby", "console manual listening"})
  void howTheConsoleListensLeavesThePage(String words) {
    assertThat(Talk.atFenwick().keys("+70").say(words).view().page()).isPresent();
  }

  @Test
  void otherTalkLeavesThePageWhereNoBirdIsInTheHand() {
    assertThat(evening().keys("+71").say("affirm wing").view().page()).isPresent();
  }

  @Test
  void theRecordsToBeLookedAtAgainComeFirst() {
    Talk talk = evening().keys("+71");
    assertThat(rows(talk))
        .containsExactly(
            "time   band         species  age   sex  wing      mass      kind",
            "To be looked at again: 2     * kept against a rule   ~ noted   r remarks",
            "06:30  2841-55602   CEDW     SY    U    -         64 g      N",
            "06:30  2841-55603   WBNU     SY    F    29 mm     -         N",
            "The others: 1",
            "06:30  2841-55601   WBNU     AHY   U    92 mm     22.3 g    N");
    assertThat(page(talk).rows().get(2).more()).startsWith("kept: mass; ");
    assertThat(page(talk).rows()).extracting(Page.Row::number).containsSubsequence("1", "2", "3");
  }

  @ParameterizedTest
  @ValueSource(strings = {"2\n", "2 affirm"})
  void digitsChooseARowAndEnterOpensIt(String choosing) {
    Talk talk = evening().keys("+71").keys("2");
    assertThat(page(talk).chosen()).contains("2");
    talk = choosing.endsWith("\n") ? talk.keys("\n") : talk.say("affirm");
    assertThat(page(talk).title()).startsWith("Record 3, 2026-06-13 06:30, by QX");
    assertThat(rows(talk)).anyMatch(r -> r.startsWith("Wing chord        29 mm (kept)"));
    assertThat(page(talk.keys("/")).title()).as("back to the page").startsWith("Records");
    assertThat(page(talk).chosen()).as("where it was").contains("2");
    assertThat(talk.record()).isEmpty();
    assertThat(talk.saved()).isEqualTo(3);
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "affirm"})
  void aRecordShownWholeIsCorrected(String how) {
    Talk talk = evening().keys("+711\n");
    talk = how.equals("\n") ? talk.keys(how) : talk.say(how);
    assertThat(talk.effects()).contains(new Effect.ReadSaved(2));
    assertThat(talk.view().page()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"+76", "console record history"})
  void theLastRecordIsShownWholeWithHowItsValuesCameAndWhatWasCorrected(String how) {
    Talk talk = evening().keys("+81\n+1793\n").say("save record").keys("3\n");
    talk = how.startsWith("+") ? talk.keys(how) : talk.say(how);
    assertThat(talk.lastSpoken()).isEqualTo("record history");
    assertThat(page(talk).title()).startsWith("Record 3, 2026-06-13 06:30, by QX");
    assertThat(rows(talk)).anyMatch(r -> r.matches("Wing chord +93 mm +keyed"));
    assertThat(rows(talk)).contains("Corrected 2026-06-13 06:30 by QX: reading error");
    assertThat(rows(talk))
        .anyMatch(r -> r.matches("Wing chord +was .* mm, keyed; now 93 mm, keyed"));
    assertThat(page(talk).rows()).anyMatch(r -> r.mark().equals("=c") && r.more().contains("93"));
    assertThat(page(talk.keys("/")).title()).as("the day lies behind it").startsWith("Records of");
  }

  @Test
  void aRecordThatWasNeverCorrectedSaysSo() {
    Talk talk = evening().keys("+711\n");
    assertThat(talk.effects()).contains(new Effect.ReadTrail(2));
    assertThat(rows(talk)).contains("Never corrected");
  }

  @Test
  void theChosenRecordIsShownWholeByTheSamePhrase() {
    Talk talk = evening().keys("+712").say("console record history");
    assertThat(page(talk).title()).startsWith("Record 3");
    assertThat(page(talk.keys("/")).chosen()).contains("2");
  }

  @Test
  void whatTheStoreTellsTooLateOrOfAnotherRecordChangesNothing() {
    Talk talk = evening().keys("+711\n");
    List<Page.Row> before = page(talk).rows();
    talk.event(new Event.TrailRead(talk.now(), 3, Optional.empty()));
    talk.event(new Event.TrailRead(talk.now(), 2, Optional.empty()));
    assertThat(page(talk).rows()).isEqualTo(before);
    CaptureRecord record = talk.asSaved(2);
    talk.keys("-")
        .event(new Event.TrailRead(talk.now(), 2, Optional.of(new Trail(record, List.of()))));
    assertThat(talk.view().page()).isEmpty();
  }

  @Test
  void withoutASavedRecordThereIsNoneToShow() {
    Talk talk = Talk.atFenwick().keys("+76");
    assertThat(talk.view().page()).isEmpty();
    assertThat(talk.view().message()).isEqualTo("There is no saved record to look at.");
    assertThat(talk.lastSpoken()).isEqualTo("no saved record");
  }

  @Test
  void aRecordThatCannotBeReadIsShownWithoutTheRestAndTheReason() {
    Talk talk = evening().keys("+711\n");
    talk.event(new Event.ReadFailed(talk.now(), "The disk cannot be read: look at its cable."));
    assertThat(page(talk).title()).startsWith("Record 2");
    assertThat(talk.view().message()).isEqualTo("The disk cannot be read: look at its cable.");
  }

  @Test
  void noRecordIsCorrectedWithABirdInTheHand() {
    Talk talk = evening().keys("284155604\n7270\n").keys("+711\n\n");
    assertThat(talk.effects()).noneMatch(Effect.ReadSaved.class::isInstance);
    assertThat(talk.view().page()).isEmpty();
    assertThat(talk.lastSpoken()).isEqualTo("bird in hand. save it first");
  }

  @ParameterizedTest
  @ValueSource(strings = {".", "console choose entry"})
  void choosesOneRowAfterTheOther(String how) {
    Talk talk = evening().keys("+71");
    for (String number : List.of("1", "2", "3", "1")) {
      move(talk, how);
      assertThat(page(talk).chosen()).contains(number);
    }
    move(talk.keys("+74"), how);
    assertThat(talk.view().message()).isEqualTo("There is nothing to choose on this page.");
  }

  @Test
  void aNumberThatNoRowHasBeginsAnewOrIsNamed() {
    Talk talk = evening().keys("+71").keys("13");
    assertThat(page(talk).chosen()).contains("3");
    talk.keys("9");
    assertThat(page(talk).chosen()).isEmpty();
    assertThat(talk.view().message()).isEqualTo("There is no row 39 here.");
    assertThat(talk.keys("\n").view().message())
        .isEqualTo("Strike the number of a row, then Enter.");
  }

  @Test
  void backspaceTakesADigitBack() {
    Talk talk = evening().keys("+71").keys("2");
    talk.event(new Event.KeyStruck(talk.now(), Key.of(Key.Name.BACKSPACE)));
    assertThat(page(talk).chosen()).isEmpty();
    assertThat(page(talk.keys("1")).chosen()).contains("1");
  }

  @ParameterizedTest
  @CsvSource({"*, /", "console following entries, console preceding entries"})
  void leafsOnAndBackWithoutGoingBeyondTheEnds(String on, String back) {
    Talk talk = Talk.atFenwick().keys("+74");
    int last = page(talk).rows().size() - Page.SCREENFUL;
    move(talk, back);
    assertThat(talk.view().message()).isEqualTo("These are the first rows.");
    move(talk, on);
    assertThat(page(talk).first()).isEqualTo(Page.SCREENFUL);
    for (int i = 0; i < 20; i++) {
      move(talk, on);
    }
    assertThat(page(talk).first()).isEqualTo(last);
    assertThat(talk.view().message()).isEqualTo("These are the last rows.");
    move(talk, back);
    assertThat(page(talk).first()).isEqualTo(last - Page.SCREENFUL);
  }

  private static void move(Talk talk, String how) {
    if (how.length() == 1) {
      talk.keys(how);
    } else {
      talk.say(how);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"console following entries", "console capture display"})
  void whatMovesOnAPageSaysSoWithoutOne(String words) {
    Talk talk = Talk.atFenwick().keys(BIRD);
    assertThat(talk.say(words).lastSpoken()).isEqualTo("no page");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
  }

  @Test
  void theSessionPageFollowsTheMoment() {
    Talk talk = Talk.atFenwick().keys(BIRD).keys("+70");
    assertThat(rows(talk))
        .anyMatch(
            r -> r.startsWith("In the hand       species WBNU") || r.contains("band 2841-55601"));
    talk.event(new Event.PartUp(talk.now(), Part.EARS, "a microphone"));
    assertThat(rows(talk)).contains("Ears              ok, a microphone");
    assertThat(rows(talk)).anyMatch(r -> r.contains("run: calamus"));
    talk.event(new Event.PartDown(talk.now(), Part.EARS, "It was unplugged; plug it in."));
    assertThat(rows(talk)).contains("Ears              DOWN: It was unplugged; plug it in.");
    assertThat(rows(talk)).contains("Saved             0 in this session, 0 today, 0 in all");
  }

  @Test
  void theStringsAreAccountedFor() {
    Talk talk = evening().keys("+72");
    assertThat(rows(talk).get(1))
        .isEqualTo("-    2841-55601  2841-55700  3    0    0     0    97   2841-55604");
    assertThat(rows(talk)).contains("Everything adds up.");
    assertThat(rows(talk.keys("1\n")))
        .contains("Left              97", "Next              2841-55604");
  }

  @Test
  void aStringThatIsUsedUpIsNotInHand() {
    BandNumber band = BandNumber.parse("2841-55601").orElseThrow();
    List<BandString> strings =
        List.of(
            new BandString("1B", band, band),
            new BandString("1B", band.successor(), band.lastOfString()));
    Talk talk = WholeRecord.talk(strings);
    talk.keys("7270\n601\n1\n+070\n++").keys("+72");
    assertThat(rows(talk))
        .contains("Used up: 1")
        .endsWith("1B   2841-55601  2841-55601  1    0    0     0    0    none");
    assertThat(rows(talk.keys("+70"))).filteredOn(r -> r.startsWith("size")).hasSize(1);
  }

  @Test
  void theSpeciesAreCountedAndOpenTheirBirds() {
    Talk talk = evening().keys("+73");
    assertThat(rows(talk).get(2))
        .isEqualTo("WBNU White-breasted Nuthatch      2  2   0   0  NN                  2");
    assertThat(rows(talk)).contains("06:00    3  NNN");
    assertThat(rows(talk.keys("1\n"))).hasSize(3).element(2).asString().contains("2841-55601");
    assertThat(page(talk.keys("1\n")).title()).startsWith("Record ");
    assertThat(page(talk.keys("/")).title()).startsWith("WBNU");
    assertThat(page(talk.keys("/")).title()).startsWith("Species");
  }

  @Test
  void theSpeciesOfTheSeasonComeFirstWithTheNumbersThatAreStruckForThem() {
    assertThat(rows(evening().keys("+77")))
        .startsWith(
            "Strike a number, then Enter: the species is taken.",
            "Caught this year",
            "WBNU    White-breasted Nuthatch                         2 birds",
            "CEDW    Cedar Waxwing                                   1 bird",
            "The others",
            "SSHA    Sharp-shinned Hawk");
    assertThat(page(evening().keys("+77")).rows())
        .extracting(Page.Row::number)
        .containsSubsequence("7270", "6190", "3320")
        .filteredOn(number -> !number.isEmpty())
        .doesNotHaveDuplicates()
        .hasSize(Fenwick.species().species().size());
  }

  @Test
  void aSpeciesThatIsChosenFromTheListIsTakenAsIfItsNumberWereStruck() {
    Talk listed = Talk.atFenwick().keys("284155601\n+775810\n");
    Talk struck = Talk.atFenwick().keys("284155601\n5810\n");
    assertThat(listed.field(FieldId.SPECIES)).isEqualTo("SOSP");
    assertThat(listed.view().page()).isEmpty();
    assertThat(listed.lastSpoken()).isEqualTo(struck.lastSpoken());
    assertThat(listed.view().asked()).isEqualTo(struck.view().asked());
    assertThat(listed.record().orElseThrow().entry(FieldId.SPECIES).orElseThrow().provenance())
        .isEqualTo(struck.record().orElseThrow().entry(FieldId.SPECIES).orElseThrow().provenance());
  }

  @Test
  void theFirstDigitsOfANumberBringItsRowsIntoSight() {
    Talk talk = Talk.atFenwick().keys("+77").keys("58");
    assertThat(page(talk).chosen()).isEmpty();
    assertThat(page(talk).rows().get(page(talk).first()).number()).startsWith("58");
    assertThat(talk.view().message())
        .isEqualTo("Numbers that begin with 58: strike the rest, then Enter.");
    assertThat(page(talk.keys("10")).chosen()).contains("5810");
  }

  @Test
  void aSpeciesIsChosenByLeafingAndThePoint() {
    Talk talk = Talk.atFenwick().keys("284155601\n+77**.");
    String number = page(talk).chosen().orElseThrow();
    assertThat(page(talk).rows().get(page(talk).first()).number()).isEqualTo(number);
    String code =
        Fenwick.form().spec(FieldId.SPECIES).kind()
                instanceof org.calamus.core.form.FieldKind.Coded coded
            ? coded.table().byDigits(number).orElseThrow().code()
            : "";
    assertThat(talk.keys("\n").field(FieldId.SPECIES)).isEqualTo(code);
  }

  @Test
  void theKeyOfTheListIsAmongTheHintsWhileTheSpeciesIsAsked() {
    View.Hint hint = new View.Hint("", "+77", "list of species");
    Talk talk = Talk.atFenwick();
    assertThat(talk.view().hints()).doesNotContain(hint);
    assertThat(talk.keys("284155601\n").view().hints()).contains(hint);
    assertThat(talk.keys("5810\n").view().hints()).doesNotContain(hint);
  }

  @Test
  void aSpeciesFromTheListThatIsDoubtedIsAskedAbout() {
    Talk talk =
        Talk.atFenwick().keys("284155601\n").say("wing nine two").keys("+03").keys("+775810\n");
    assertThat(talk.view().page()).isEmpty();
    assertThat(talk.view().question()).isPresent();
  }

  @Test
  void theCommandsAreThoseOfTheDispatcher() {
    Talk talk = Talk.atFenwick().keys(BIRD).keys("+74");
    String all = String.join("\n", rows(talk));
    assertThat(all).contains("Asked now: Wing chord, mm");
    for (Command command : Command.values()) {
      Sayable sayable =
          Sayable.ALL.stream().filter(s -> s.command() == command).findFirst().orElseThrow();
      if (sayable.isShown(Pages.left(talk.state())) || Pages.isOfPage(command)) {
        assertThat(all).contains(Fenwick.setup().words(command).orElseThrow());
      }
    }
    Fenwick.form().fields().forEach(f -> assertThat(all).contains(f.labelWithUnit()));
  }

  @Test
  void noRowIsWiderThanAPage() {
    for (String keys :
        List.of("+70", "+71", "+72", "+73", "+74", "+77", "+711\n", "+721\n", "+731\n")) {
      assertThat(rows(evening().keys(keys)))
          .as(keys)
          .allSatisfy(row -> assertThat(row.length()).isLessThanOrEqualTo(78));
    }
  }

  @ParameterizedTest
  @EnumSource(Command.class)
  void everyCommandIsSaidAndStruck(Command command) {
    String words = Fenwick.setup().words(command).orElseThrow();
    Meaning meaning =
        new Interpreter(Fenwick.vocabulary(), Fenwick.form())
            .interpret(
                Utterance.of(words),
                Optional.empty(),
                Optional.empty(),
                Fenwick.expected(Optional.empty()));
    assertThat(meaning).isEqualTo(new Meaning.Order(command, Optional.empty()));
    assertThat(Sayable.keys(command)).isNotEmpty();
  }

  @Test
  void everyCommandOfTheVocabularyIsInTheTable() {
    Set<Command> inTable = Sayable.ALL.stream().map(Sayable::command).collect(Collectors.toSet());
    Set<Command> spoken =
        Fenwick.vocabulary().forms().stream()
            .map(f -> f.meaning())
            .filter(org.calamus.core.speech.Token.Order.class::isInstance)
            .map(t -> ((org.calamus.core.speech.Token.Order) t).command())
            .collect(Collectors.toSet());
    assertThat(spoken).isEqualTo(inTable);
    assertThat(inTable).containsExactlyInAnyOrder(Command.values());
  }
}
