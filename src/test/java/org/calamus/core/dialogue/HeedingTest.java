package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.Known;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is said is acted on only where it is for the console. */
class HeedingTest {

  private static final String BAND = "two eight four one five five six zero one";
  private static final String NUMBER = "2841-55601";

  private static Talk with(Heed heed) {
    Talk talk = new Talk(Fenwick.setup().heeding(heed), Known.nothing());
    talk.event(new Event.Started(talk.now(), Optional.empty()));
    return hearing(talk);
  }

  private static Talk hearing(Talk talk) {
    return talk.event(new Event.PartUp(talk.now(), Part.EARS, "a microphone"));
  }

  private static Talk byKey() {
    return with(new Heed(org.calamus.core.dialogue.Talk.KEY, Duration.ZERO));
  }

  private static Talk press(Talk talk) {
    return talk.event(new Event.KeyStruck(talk.now().plusMillis(200), Key.of(Key.Name.TALK)));
  }

  private static Talk tick(Talk talk, Duration later) {
    return talk.event(new Event.Ticked(talk.now().plus(later)));
  }

  private static List<String> ears(Talk talk) {
    return talk.effects().stream()
        .filter(e -> e instanceof Effect.ShutEars || e instanceof Effect.OpenEars)
        .map(e -> e.getClass().getSimpleName())
        .toList();
  }

  private static Grammar lastGrammar(Talk talk) {
    return talk.effects().stream()
        .filter(Effect.ListenFor.class::isInstance)
        .map(e -> ((Effect.ListenFor) e).grammar())
        .reduce((first, second) -> second)
        .orElseThrow();
  }

  @Test
  void takesNothingThatIsSaidWhilePaused() {
    Talk talk = hearing(Talk.atFenwick()).say("console standby");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.PAUSED);
    assertThat(lastGrammar(talk).phrases()).contains("console resume listening", "[unk]");
    assertThat(lastGrammar(talk).phrases()).doesNotContain("save record", "one");
    assertThat(talk.lastSpoken()).isEqualTo("paused");
    talk.say(BAND).say("new band").say("console open microphone");
    assertThat(talk.record()).isEmpty();
    assertThat(talk.effects()).isEmpty();
  }

  /** On a slow computer a second passes before the session has begun. */
  @Test
  void doesNotPauseBeforeTheSessionHasBegun() {
    Talk talk = new Talk(Fenwick.setup(), Known.nothing());
    tick(talk, Duration.ofSeconds(1));
    assertThat(talk.state().console().attention().isPaused()).isFalse();
    assertThat(talk.view().message()).isEmpty();
  }

  @Test
  void takesKeysWhilePaused() {
    Talk talk = hearing(Talk.atFenwick()).say("console standby").keys("284155601\n");
    assertThat(talk.field(FieldId.BAND)).isEqualTo(NUMBER);
    assertThat(talk.view().mode()).isEqualTo(View.Mode.PAUSED);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "console resume listening",
        "console resume listening console resume listening",
        "[unk] the [unk] console resume listening console resume listening"
      })
  void goesOnWhenTold(String words) {
    Talk talk = hearing(Talk.atFenwick()).say("console standby").say(words);
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
    assertThat(talk.lastSpoken()).startsWith("listening. ");
    assertThat(talk.say(BAND).field(FieldId.BAND)).isEqualTo(NUMBER);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "console",
        "resume listening",
        "[unk] console resume listening",
        "console resume listening okay",
        "console resume listening resume listening"
      })
  void staysPausedForAPartOfThePhraseOrOtherTalk(String words) {
    Talk talk = hearing(Talk.atFenwick()).say("console standby").say(words);
    assertThat(talk.view().mode()).isEqualTo(View.Mode.PAUSED);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"console resume listening", "console resume listening console resume listening"})
  void answersThatItListensAlready(String words) {
    assertThat(Talk.atFenwick().say(words).lastSpoken()).isEqualTo("already listening");
  }

  @Test
  void goesOnByTheTalkKey() {
    Talk talk = press(hearing(Talk.atFenwick()).say("console standby"));
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
  }

  @Test
  void pausesByItselfOnceWithoutABird() {
    Talk talk = with(new Heed(org.calamus.core.dialogue.Talk.OPEN, Duration.ofMinutes(5)));
    tick(talk, Duration.ofSeconds(299));
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
    talk.spoken();
    tick(tick(talk, Duration.ofSeconds(1)), Duration.ofMinutes(9));
    assertThat(talk.view().mode()).isEqualTo(View.Mode.PAUSED);
    assertThat(talk.spoken()).containsExactly("paused");
    assertThat(talk.view().message()).contains("5 minutes", "console resume listening");
  }

  /** Whoever had no microphone was told to say how to go on. */
  @Test
  void neverPausesByItselfWithoutEars() {
    Talk talk = with(new Heed(org.calamus.core.dialogue.Talk.OPEN, Duration.ofMinutes(1)));
    talk.event(new Event.PartDown(talk.now(), Part.EARS, "No microphone."));
    tick(talk, Duration.ofMinutes(9));
    assertThat(talk.state().console().attention().isPaused()).isFalse();
    talk.event(new Event.PartUp(talk.now(), Part.EARS, "a microphone"));
    tick(talk, Duration.ofSeconds(59));
    assertThat(talk.state().console().attention().isPaused()).isFalse();
    tick(talk, Duration.ofSeconds(1));
    assertThat(talk.view().message()).startsWith("Paused after 1 minute without a bird.");
  }

  @Test
  void neverPausesByItselfWithABirdInTheHand() {
    Talk talk = with(Heed.usual()).say(BAND);
    for (int i = 0; i < 60; i++) {
      tick(talk, Duration.ofMinutes(1));
    }
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
  }

  @Test
  void neverPausesByItselfWhereThatIsOff() {
    Talk talk = with(new Heed(org.calamus.core.dialogue.Talk.OPEN, Duration.ZERO));
    tick(talk, Duration.ofHours(9));
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
  }

  @Test
  void hearsOneUtteranceAPress() {
    Talk talk = byKey();
    assertThat(ears(talk)).containsExactly("ShutEars");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.PRESS_TO_TALK);
    talk.say(BAND);
    assertThat(talk.record()).isEmpty();
    talk.spoken();
    assertThat(ears(press(talk))).containsExactly("OpenEars");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
    talk.spoken();
    talk.say(BAND);
    assertThat(talk.field(FieldId.BAND)).isEqualTo(NUMBER);
    assertThat(ears(talk)).containsExactly("ShutEars");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.PRESS_TO_TALK);
  }

  @Test
  void endsTheUtteranceByASecondPress() {
    Talk talk = press(byKey());
    talk.spoken();
    press(talk);
    assertThat(talk.effects()).containsExactly(new Effect.FinishUtterance());
    assertThat(talk.say(BAND).field(FieldId.BAND)).isEqualTo(NUMBER);
  }

  @Test
  void shutsTheEarsAgainWhereNobodySpeaks() {
    Talk talk = press(byKey());
    tick(talk, Duration.ofMillis(7900));
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
    tick(talk, Duration.ofMillis(200));
    assertThat(talk.view().mode()).isEqualTo(View.Mode.PRESS_TO_TALK);
  }

  @Test
  void wantsTheKeyAgainBehindAMissAndAQuestion() {
    Talk talk = press(byKey()).say("[unk]");
    assertThat(talk.lastSpoken()).isEqualTo("again");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.PRESS_TO_TALK);
    press(talk).say(BAND);
    press(talk).say("weight two two three point one");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.PRESS_TO_TALK);
  }

  @Test
  void cutsTheVoiceOffAndOpensTheEarsInOnePress() {
    Talk talk = byKey();
    Instant now = talk.now();
    talk.event(new Event.VoiceBegan(now)).spoken();
    press(talk);
    assertThat(talk.effects()).containsExactly(new Effect.Hush(), new Effect.OpenEars());
  }

  @Test
  void changesToTheTalkKeyWhereOthersTalk() {
    Talk talk = hearing(Talk.atFenwick()).say(BAND).say("[unk]").say("point point").say("[unk]");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
    talk.spoken();
    talk.say("[unk] okay");
    assertThat(talk.spoken()).containsExactly("others are talking. press to talk");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.PRESS_TO_TALK);
    assertThat(talk.view().message()).contains("console open microphone", "+96");
    assertThat(talk.field(FieldId.BAND)).isEqualTo(NUMBER);
  }

  @Test
  void doesNotTakeAValueBetweenOrNoiseOrLongPausesForOthers() {
    Talk talk = hearing(Talk.atFenwick()).say("[unk]").say("[unk]").say("[unk]").say(BAND);
    talk.say("[unk]").say("[unk]").say("[unk]").say("").say("").say("");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
    tick(talk, Duration.ofMinutes(1)).say("[unk]");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
  }

  /** What the recogniser makes of a gust of wind: words, and no pitch of a voice. */
  private static Talk gust(Talk talk, String words) {
    Utterance heard = Utterance.of(words);
    Duration length = Duration.ofMillis(550);
    Utterance gust = new Utterance(heard.words(), List.of(), -20, length, 16, Duration.ZERO);
    return talk.event(new Event.Heard(talk.now(), gust, talk.now()));
  }

  @Test
  void meetsGustsOfWindWithSilenceHoweverManyThereAre() {
    Talk talk = hearing(Talk.atFenwick()).say(BAND).say("age");
    talk.spoken();
    for (int i = 0; i < 9; i++) {
      gust(talk, "one");
    }
    assertThat(talk.spoken()).isEmpty();
    assertThat(talk.field(FieldId.AGE)).isEqualTo("-");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
  }

  @Test
  void takesNoGustForAnAnswerOrANamedField() {
    Talk talk = hearing(Talk.atFenwick()).say(BAND).say("weight two two three point one");
    talk.spoken();
    String question = talk.view().message();
    gust(gust(gust(talk, "yes"), "weight"), "weight nine");
    assertThat(talk.spoken()).isEmpty();
    assertThat(talk.view().message()).isEqualTo(question);
  }

  @Test
  void isNotWokenByAGust() {
    Talk talk = hearing(Talk.atFenwick()).say("console standby");
    gust(talk, "console resume listening");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.PAUSED);
  }

  @Test
  void leavesOpenListeningAloneOnceTheBanderChoseIt() {
    Talk talk = hearing(Talk.atFenwick()).keys("+96+96");
    for (int i = 0; i < 9; i++) {
      talk.say("[unk]");
    }
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
  }

  @Test
  void changesByWordsToTheTalkKeyAndBack() {
    Talk talk = hearing(Talk.atFenwick()).say("console manual listening");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.PRESS_TO_TALK);
    press(talk).say("console open microphone");
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
  }

  @Test
  void leavesTheEarsOpenForRemarksThatTheTalkKeyBegan() {
    Talk talk = press(byKey()).say(BAND);
    press(talk).spoken();
    talk.say("remarks");
    assertThat(ears(talk)).isEmpty();
    String name =
        talk.effects().stream()
            .filter(Effect.RecordMemo.class::isInstance)
            .map(e -> ((Effect.RecordMemo) e).name())
            .findFirst()
            .orElseThrow();
    talk.event(new Event.MemoRecorded(talk.now().plusSeconds(3), name, Duration.ofSeconds(2)));
    assertThat(ears(talk)).containsExactly("ShutEars");
  }
}
