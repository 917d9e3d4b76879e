package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.CodeSet;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.rule.BandFate;
import org.calamus.core.rule.BandString;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.calamus.support.WholeRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The program's own form in a station with two strings: every kind of capture to its end. */
class WholeRecordTest {

  private static final List<BandString> STRINGS =
      List.of(
          new BandString("1B", band("2841-55601"), band("2841-55700")),
          new BandString("0", band("2760-10101"), band("2760-10200")));

  private static BandNumber band(String text) {
    return BandNumber.parse(text).orElseThrow();
  }

  private static Talk talk() {
    return WholeRecord.talk(STRINGS);
  }

  /** A nuthatch with band 2841-55601 is in the records. */
  private static Talk withBird() {
    Talk talk =
        talk()
            .say("white breasted nuthatch")
            .say("six zero one")
            .say("second year")
            .say("male")
            .say("wing nine two")
            .say("save record");
    assertThat(talk.saved()).isEqualTo(1);
    talk.spoken();
    return talk;
  }

  private static CaptureRecord lastSaved(Talk talk) {
    List<CaptureRecord> saved = new ArrayList<>();
    for (Effect effect : talk.effects()) {
      if (effect instanceof Effect.SaveRecord save) {
        saved.add(save.record());
      }
    }
    assertThat(saved).isNotEmpty();
    return saved.get(saved.size() - 1);
  }

  /** What is said and what is struck for each kind of capture, and what comes of it. */
  private enum Kind {
    NEW(
        List.of("white breasted nuthatch", "six zero two", "second year", "male", "save record"),
        "7270\n602\n5\n*4\n++",
        "species WBNU band 2841-55602 age SY sex M"),
    RECAPTURE(
        List.of(
            "recapture",
            "two eight four one five five six zero one",
            "white breasted nuthatch",
            "second year",
            "male",
            "save record"),
        "+012\n284155601\n7270\n5\n*4\n++",
        "band 2841-55601 species WBNU age SY sex M kind R"),
    FOREIGN(
        List.of(
            "foreign band",
            "one two three four five six seven eight nine",
            "one two three four five six seven eight nine",
            "song sparrow",
            "after hatching year",
            "sex unknown",
            "save record"),
        "+013\n123456789\n123456789\n5810\n1\n*0\n++",
        "band 1234-56789 species SOSP age AHY sex U kind F"),
    REPLACED(
        List.of(
            "replace band",
            "two eight four one five five six zero one",
            "white breasted nuthatch",
            "six zero two",
            "second year",
            "male",
            "save record"),
        "+014\n284155601\n7270\n602\n5\n*4\n++",
        "old band 2841-55601 species WBNU band 2841-55602 age SY sex M kind C"),
    ADDED(
        List.of(
            "add band",
            "two eight four one five five six zero one",
            "white breasted nuthatch",
            "six zero two",
            "second year",
            "male",
            "save record"),
        "+015\n284155601\n7270\n602\n5\n*4\n++",
        "old band 2841-55601 species WBNU band 2841-55602 age SY sex M kind A"),
    UNBANDED(
        List.of("unbanded", "cedar waxwing", "save record"),
        "+016\n6190\n++",
        "species CEDW kind U"),
    LOST(
        List.of("band lost", "six zero two", "save record"),
        "+017\n602\n++",
        "band 2841-55602 kind L"),
    DESTROYED(
        List.of("band destroyed", "six zero two", "save record"),
        "+018\n602\n++",
        "band 2841-55602 kind D"),
    ESCAPED(
        List.of("white breasted nuthatch", "six zero two", "escaped"),
        "7270\n602\n+253\n",
        "species WBNU band 2841-55602 release ESCAPED"),
    LET_GO(
        List.of("white breasted nuthatch", "six zero two", "released"),
        "7270\n602\n+/",
        "species WBNU band 2841-55602 release EARLY");

    private final List<String> said;
    private final String struck;
    private final String line;

    Kind(List<String> said, String struck, String line) {
      this.said = said;
      this.struck = struck;
      this.line = line;
    }
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void everyKindIsFinishedByVoiceAndByKeypad(Kind kind) {
    Talk bySpeech = withBird();
    kind.said.forEach(bySpeech::say);
    Talk byKeys = withBird().keys(kind.struck);
    assertThat(line(bySpeech)).as("said").isEqualTo(kind.line);
    assertThat(line(byKeys)).as("struck").isEqualTo(kind.line);
    assertThat(bySpeech.saved()).isEqualTo(2);
    assertThat(byKeys.saved()).isEqualTo(2);
  }

  /** The newest saved line without what was left empty. */
  private static String line(Talk talk) {
    return talk.view()
        .recent()
        .get(0)
        .replaceAll("  ", " ")
        .replaceAll(" ?\\b[a-z ]+? -", "")
        .strip();
  }

  @Test
  void voiceAndKeypadMayBeMixedInOneRecord() {
    Talk talk =
        talk().say("white breasted nuthatch").keys("601\n").say("second year").keys("*4\n++");
    assertThat(talk.saved()).isEqualTo(1);
  }

  @Test
  void aBirdThatDiedNeedsARemark() {
    Talk talk = talk().say("white breasted nuthatch").say("six zero one").say("bird died");
    talk.say("affirm");
    assertThat(talk.lastSpoken()).isEqualTo("bird died. missing remarks");
    assertThat(talk.saved()).isZero();
    talk.keys("Cold in the net\n");
    assertThat(talk.saved()).isEqualTo(1);
    assertThat(lastSaved(talk).value(FieldId.NOTE))
        .contains(new FieldValue.Note("Cold in the net", Optional.empty()));
  }

  @Test
  void theUsualValuesAreAddedWhenARecordIsSaved() {
    Talk talk = talk().say("white breasted nuthatch").say("six zero one").say("second year");
    talk.say("male").say("save record");
    CaptureRecord saved = lastSaved(talk);
    assertThat(saved.code(FieldId.KIND)).contains("N");
    assertThat(saved.code(FieldId.STATUS)).contains("300");
    assertThat(saved.code(FieldId.RELEASE)).contains("RELEASED");
    assertThat(saved.code(FieldId.BAND_SIZE)).contains("1B");
  }

  @Test
  void theSpeciesProposesSizeAndNextBand() {
    Talk talk = talk().say("white breasted nuthatch");
    assertThat(talk.view().message()).isEqualTo("Band size 1B, or 1; next 2841-55601.");
    assertThat(talk.lastSpoken())
        .isEqualTo("white breasted nuthatch. band size one b. next six zero one");
    talk = talk().say("black capped chickadee");
    assertThat(talk.view().message()).isEqualTo("Band size 0, or 0A; next 2760-10101.");
  }

  @Test
  void theLegGaugeDecidesTheSize() {
    Talk talk = talk().say("white breasted nuthatch").say("leg gauge zero");
    assertThat(talk.view().message()).contains("Band size 0; next 2760-10101");
  }

  @ParameterizedTest
  @ValueSource(strings = {"band lost", "band destroyed"})
  void skippedBandsAreAccountedForBeforeABandIsTaken(String fate) {
    Talk talk = talk().say("white breasted nuthatch").say("six zero three");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("-");
    assertThat(talk.lastSpoken())
        .isEqualTo("bands six zero one to six zero two skipped. lost, destroyed, or out of order");
    talk.say("affirm").say("negative save record");
    assertThat(talk.field(FieldId.BAND)).as("only its own answers help").isEqualTo("-");
    talk.say(fate);
    assertThat(talk.field(FieldId.BAND)).isEqualTo("2841-55603");
    BandFate expected = fate.equals("band lost") ? BandFate.LOST : BandFate.DESTROYED;
    assertThat(talk.state().known().ledger().fateOf(band("2841-55601"))).contains(expected);
    assertThat(talk.state().known().ledger().fateOf(band("2841-55602"))).contains(expected);
    assertThat(talk.effects()).filteredOn(Effect.AccountFor.class::isInstance).hasSize(2);
  }

  @Test
  void whatIsSaidOfOtherFieldsIsTakenWhileSkippedBandsAreAskedAbout() {
    Talk talk = talk().say("white breasted nuthatch").say("six zero three");
    talk.say("wing nine two").say("second year").say("sex male").say("net twelve");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    assertThat(talk.field(FieldId.AGE)).isEqualTo("SY");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
    assertThat(talk.field(FieldId.NET)).isEqualTo("12");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("-");
    assertThat(talk.view().question().orElseThrow()).startsWith("Band 2841-55603 is not the next");
    assertThat(talk.state().console().attention().talk())
        .isEqualTo(org.calamus.core.dialogue.Talk.OPEN);
    talk.say("band lost");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("2841-55603");
  }

  @Test
  void aValueThatIsRefusedOrNotUnderstoodLeavesTheQuestionAboutSkippedBands() {
    Talk talk = talk().say("white breasted nuthatch").say("six zero three");
    talk.say("wing nine two zero");
    assertThat(talk.view().question().orElseThrow()).startsWith("Band 2841-55603 is not the next");
    talk.say("wing point point");
    assertThat(talk.say("band lost").field(FieldId.BAND)).isEqualTo("2841-55603");
  }

  @Test
  void aNamedFieldWhileAQuestionIsOpenIsNoTalkOfOtherPeople() {
    Talk talk = talk().say("white breasted nuthatch").say("six zero three");
    for (int i = 0; i < 6; i++) {
      talk.say("wing song sparrow point");
      talk.say("species [unk] [unk] [unk]");
      talk.say("wing point point");
    }
    assertThat(talk.state().console().attention().talk())
        .isEqualTo(org.calamus.core.dialogue.Talk.OPEN);
    assertThat(talk.view().question()).isPresent();
  }

  @Test
  void skippedBandsThatAreAccountedForAreAmongTheSaved() {
    Talk talk = talk().say("white breasted nuthatch").say("six zero three").say("band lost");
    assertThat(talk.saved()).isEqualTo(2);
    assertThat(talk.view().recent()).hasSize(2).allMatch(line -> line.contains("2841-5560"));
    talk.say("second year").say("male").say("save record");
    assertThat(talk.saved()).isEqualTo(3);
    talk.keys("+71");
    assertThat(talk.view().page().orElseThrow().rows())
        .filteredOn(row -> !row.number().isEmpty())
        .as("as many as the day has")
        .hasSize(3);
  }

  @Test
  void theNextBandIsTheOneBehindThatOnTheBird() {
    Talk talk = talk().say("white breasted nuthatch");
    assertThat(talk.view().nextBand()).isEqualTo("2841-55601");
    talk.say("six zero one");
    assertThat(talk.view().nextBand()).isEqualTo("2841-55602");
    talk.say("second year").say("male").say("save record").say("white breasted nuthatch");
    assertThat(talk.view().nextBand()).isEqualTo("2841-55602");
    talk.say("six zero three").say("out of order");
    assertThat(talk.view().nextBand()).as("still expected").isEqualTo("2841-55602");
  }

  @Test
  void bandsUsedOutOfOrderLeaveTheOthersExpected() {
    Talk talk = talk().say("white breasted nuthatch").say("six zero three").say("out of order");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("2841-55603");
    talk.say("second year").say("male").say("save record");
    assertThat(talk.state().known().ledger().next("1B")).contains(band("2841-55601"));
  }

  @Test
  void aSkippedNumberMayBeGivenAgain() {
    Talk talk = talk().say("white breasted nuthatch").say("six zero three").say("six zero one");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("2841-55601");
  }

  @Test
  void soManySkippedBandsAreAMisreadNumber() {
    Talk talk = talk().say("white breasted nuthatch").say("six nine nine").say("band lost");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("-");
    assertThat(talk.effects()).noneMatch(Effect.AccountFor.class::isInstance);
  }

  @Test
  void whatIsSaidOfOtherFieldsIsTakenBeforeTheSecondReading() {
    Talk talk = talk().say("foreign band").say("one two three four five six seven eight nine");
    talk.say("wing nine two");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    assertThat(talk.lastSpoken()).endsWith("read the band once more");
    talk.say("one two three four five six seven eight nine");
    assertThat(talk.field(FieldId.BAND)).endsWith("56789");
  }

  @Test
  void aBandFromElsewhereIsTakenOnlyWhereBothReadingsAgree() {
    Talk talk = talk().say("foreign band").say("one two three four five six seven eight nine");
    assertThat(talk.lastSpoken()).isEqualTo("read the band once more");
    talk.say("one two three four five six seven eight eight");
    assertThat(talk.lastSpoken()).isEqualTo("readings differ. read it again");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("-");
  }

  /** "Release the bird" was said of a bird that had gone, while its record wanted a remark. */
  @Test
  void aBirdThatWentIsHeldNoLongerThoughItsRecordWantsARemark() {
    Talk talk = withBird().say("disposition wing injury").say("released");
    assertThat(talk.view().asked()).isEqualTo("Remarks");
    Duration held = talk.view().inHand().orElseThrow();
    assertThat(after(talk, Duration.ofMinutes(11))).isEmpty();
    assertThat(talk.view().inHand()).contains(held);
  }

  /** Every foreign bird stood among the records to be looked at again. */
  @Test
  void twoReadingsThatAgreeOverruleNothing() {
    String band = "one two three four five six seven eight nine";
    Talk talk = talk().say("foreign band").say(band).say(band);
    assertThat(talk.field(FieldId.BAND)).isEqualTo("1234-56789");
    assertThat(talk.record().orElseThrow().entry(FieldId.BAND).orElseThrow().confirmedRules())
        .isEmpty();
  }

  @Test
  void aKnownBandIsARecaptureAndItsHistoryIsTold() {
    Talk talk = withBird().say("band number two eight four one five five six zero one");
    assertThat(talk.field(FieldId.KIND)).isEqualTo("R");
    assertThat(talk.view().history()).containsExactly("2026-06-13 QX  N  WBNU  SY  M  wing 92 mm");
    assertThat(talk.lastSpoken())
        .isEqualTo(
            "recapture. band two eight four one five five six zero one. white breasted nuthatch,"
                + " male, first caught june two zero two six as second year, wing nine two."
                + " species");
  }

  @Test
  void aContradictionIsAskedAtOnce() {
    Talk talk = withBird().say("band number two eight four one five five six zero one");
    talk.say("song sparrow");
    assertThat(talk.view().question().orElseThrow())
        .contains("Species")
        .contains("SOSP")
        .contains("WBNU");
    assertThat(talk.field(FieldId.SPECIES)).isEqualTo("-");
  }

  @Test
  void theLastDigitsOfAUsedBandAreNoRecapture() {
    Talk talk = withBird().say("white breasted nuthatch").say("six zero one");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("-");
    assertThat(talk.view().message()).contains("already on a bird");
  }

  @Test
  void theTimerWarnsOnceAtEachStep() {
    Talk talk = talk().say("white breasted nuthatch");
    assertThat(after(talk, Duration.ofMinutes(4))).isEmpty();
    assertThat(after(talk, Duration.ofMinutes(1))).containsExactly("bird held five minutes");
    assertThat(talk.view().hold()).isEqualTo(View.Hold.LONG);
    assertThat(after(talk, Duration.ofMinutes(1))).isEmpty();
    assertThat(after(talk, Duration.ofMinutes(4)))
        .containsExactly("bird held one zero minutes. release the bird");
    assertThat(talk.view().hold()).isEqualTo(View.Hold.OVER);
    assertThat(talk.keys("/").lastSpoken())
        .as("say again says what was asked")
        .contains("next six zero one");
  }

  private static List<String> after(Talk talk, Duration time) {
    talk.spoken();
    talk.event(new Event.Ticked(talk.now().plus(time)));
    return talk.spoken();
  }

  @ParameterizedTest
  @ValueSource(strings = {"wing two nine", "abandon record", "end session", "six zero four"})
  void aReleaseComesBeforeAnyQuestion(String asked) {
    Talk talk = talk().say("white breasted nuthatch").say(asked);
    assertThat(talk.view().question()).isPresent();
    talk.say("released");
    assertThat(talk.saved()).isEqualTo(1);
    assertThat(lastSaved(talk).code(FieldId.RELEASE)).contains("EARLY");
    assertThat(lastSaved(talk).code(FieldId.SPECIES)).contains("WBNU");
  }

  @Test
  void remarksAreTakenDownAsSound() {
    Talk talk = talk().say("white breasted nuthatch").say("remarks");
    Effect.RecordMemo memo =
        talk.effects().stream()
            .filter(Effect.RecordMemo.class::isInstance)
            .map(Effect.RecordMemo.class::cast)
            .findFirst()
            .orElseThrow();
    assertThat(talk.keys("\n").effects()).contains(new Effect.StopMemo());
    talk.event(new Event.MemoRecorded(talk.now(), memo.name(), Duration.ofSeconds(4)));
    assertThat(talk.record().orElseThrow().value(FieldId.NOTE))
        .contains(new FieldValue.Note("", Optional.of(memo.name())));
  }

  @Test
  void remarksAreTypedWhereThereIsNoMicrophone() {
    Talk talk = talk().say("white breasted nuthatch").say("remarks");
    talk.event(new Event.MemoFailed(talk.now(), "There is no microphone: type the note."));
    assertThat(talk.view().message()).isEqualTo("There is no microphone: type the note.");
    talk.keys("Left leg - an old scar.\n");
    assertThat(talk.field(FieldId.NOTE)).isEqualTo("Left leg - an old scar.");
  }

  @Test
  void remarksMayBeTypedWhenTheBirdIsGone() {
    Talk talk = withBird().keys("+27").keys("Sang from the nearest bush\n");
    assertThat(talk.record()).isEmpty();
    assertThat(talk.lastSpoken()).isEqualTo("remarks added. species");
    talk.keys("+27");
    assertThat(talk.view().message()).isEqualTo("Remarks for record 1, the bird saved last.");
    talk.keys("Again\n");
    CaptureRecord kept =
        talk.effects().stream()
            .filter(Effect.AccountFor.class::isInstance)
            .map(e -> ((Effect.AccountFor) e).record())
            .reduce((one, next) -> next)
            .orElseThrow();
    assertThat(kept.id()).isEqualTo(1);
    assertThat(kept.band()).contains(band("2841-55601"));
    assertThat(kept.value(FieldId.NOTE)).contains(new FieldValue.Note("Again", Optional.empty()));
    assertThat(talk.saved()).as("no new bird").isEqualTo(1);
  }

  @Test
  void remarksStillSpokenWhenTheBirdGoesAreItsOwn() {
    Talk talk = talk().say("white breasted nuthatch").say("six zero one").say("remarks");
    talk.say("released").say("cedar waxwing");
    talk.event(new Event.MemoRecorded(talk.now(), "1-063008.wav", Duration.ofSeconds(4)));
    assertThat(talk.field(FieldId.NOTE)).as("not the next bird's").isEqualTo("-");
    assertThat(talk.state().lastSaved().orElseThrow().value(FieldId.NOTE))
        .contains(new FieldValue.Note("", Optional.of("1-063008.wav")));
  }

  @Test
  void severalCriteriaAreTakenAtOnce() {
    Talk talk = talk().say("white breasted nuthatch").say("how aged plumage moult limit");
    assertThat(talk.field(FieldId.HOW_AGED)).isEqualTo("PL LP");
    assertThat(talk.keys("+062.3.5\n").field(FieldId.HOW_AGED)).isEqualTo("PL LP FF");
  }

  @Test
  void aStationOfEuringSeesAndStrikesItsCodes() {
    Talk talk =
        new Talk(
            WholeRecord.setup(CodeSet.EURING, STRINGS), Known.of(STRINGS, List.of(), Fenwick.ZONE));
    talk.event(new Event.Started(talk.now(), Optional.empty()));
    talk.say("white breasted nuthatch").say("six zero one").keys("5\n");
    assertThat(talk.field(FieldId.AGE)).as("stored as ours").isEqualTo("SY");
    assertThat(talk.view().lines())
        .anyMatch(l -> l.field() == FieldId.AGE && l.value().startsWith("5"));
  }
}
