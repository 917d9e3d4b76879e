package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.calamus.core.hearing.MicrophoneCheck;
import org.calamus.core.hearing.MicrophoneVerdict.Grade;
import org.calamus.core.hearing.PastChecks;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.junit.jupiter.api.Test;

/** What the bander is told of the check of the microphone. */
class MicrophonesTest {

  private static final Instant TRIED = Instant.parse("2026-06-12T18:05:00Z");

  private static MicrophoneCheck check(String microphone, Grade grade, String sentence) {
    return new MicrophoneCheck(microphone, TRIED, grade, sentence);
  }

  private static Talk listening(MicrophoneCheck... checks) {
    return begun(Fenwick.setup().hearing(new PastChecks(List.of(checks))));
  }

  private static Talk begun(Setup setup) {
    Talk talk = new Talk(setup, Known.nothing());
    return talk.event(new Event.Started(talk.now(), Optional.empty()));
  }

  private static Talk up(Talk talk) {
    return talk.event(new Event.PartUp(talk.now(), Part.EARS, "headset"));
  }

  private static List<String> session(Talk talk) {
    return talk.keys("+70").view().page().orElseThrow().rows().stream()
        .map(Page.Row::text)
        .toList();
  }

  @Test
  void aMicrophoneThatWasNeverTriedIsSaidInOneLine() {
    Talk talk = listening(check("other", Grade.GOOD, "Good."));
    talk.spoken();
    assertThat(up(talk).view().message())
        .isEqualTo("This microphone was not tried yet: between two rounds run calamus microphone.");
    assertThat(talk.effects()).as("nothing is spoken and nothing asked").isEmpty();
    assertThat(talk.view().question()).isEmpty();
    assertThat(session(talk)).anyMatch(r -> r.matches("Last tried +never"));
  }

  @Test
  void aMicrophoneThatWillNotDoIsSaidWithItsTime() {
    Talk talk =
        up(listening(check("headset", Grade.NOT_USABLE, "Not usable here: nobody was heard.")));
    assertThat(talk.view().message())
        .isEqualTo(
            "Microphone not usable when tried 2026-06-12 18:05: try anew or use the keypad.");
    assertThat(session(talk))
        .anyMatch(r -> r.contains("2026-06-12 18:05: Not usable here: nobody was heard."));
  }

  @Test
  void aMicrophoneThatWillDoIsNamedOnTheSessionPageOnly() {
    Talk talk = up(listening(check("headset", Grade.USABLE, "Usable: 8 of 10 right.")));
    assertThat(talk.view().message()).isEmpty();
    assertThat(session(talk)).anyMatch(r -> r.contains("2026-06-12 18:05: Usable: 8 of 10 right."));
  }

  @Test
  void aMicrophoneThatComesBackIsNotSpokenOfAgain() {
    Talk talk = up(listening());
    talk.event(new Event.PartDown(talk.now(), Part.EARS, "The microphone stopped."));
    assertThat(up(talk).view().message()).containsOnlyOnce("was not tried yet");
  }

  @Test
  void theLastCheckCounts() {
    MicrophoneCheck earlier =
        new MicrophoneCheck("headset", TRIED.minusSeconds(60), Grade.NOT_USABLE, "Not usable.");
    Talk talk = up(listening(check("headset", Grade.GOOD, "Good."), earlier));
    assertThat(talk.view().message()).isEmpty();
  }

  @Test
  void nothingIsSaidWhereNoMicrophoneIsListenedTo() {
    Talk recordings = up(begun(Fenwick.setup()));
    assertThat(recordings.view().message()).isEmpty();
    assertThat(session(recordings)).noneMatch(r -> r.startsWith("Last tried"));
    Talk none = listening();
    none.event(new Event.PartDown(none.now(), Part.EARS, "No microphone can be opened."));
    assertThat(none.view().message()).isEmpty();
    assertThat(session(none)).noneMatch(r -> r.startsWith("Last tried"));
  }

  @Test
  void nothingIsSaidWhileThereIsABirdOrAQuestion() {
    assertThat(up(listening().say("male")).view().message()).doesNotContain("not tried");
    Talk asked = new Talk(Fenwick.setup().hearing(new PastChecks(List.of())), Known.nothing());
    asked.event(new Event.Started(asked.now(), Talk.atFenwick().say("male").record()));
    assertThat(asked.view().question()).as("carry the bird on?").isPresent();
    assertThat(up(asked).view().message()).doesNotContain("not tried");
  }

  @Test
  void nothingIsSaidOnceABirdWasSavedThoughTheMicrophoneComesBack() {
    Talk talk = listening().keys("284155601\n7270\n5\n4\n92\n22.3\n++");
    assertThat(talk.saved()).isEqualTo(1);
    assertThat(up(talk).view().message()).doesNotContain("not tried");
  }

  @Test
  void itIsSaidBehindWhatIsSaidOfKeptUtterances() {
    Talk talk = listening();
    talk.event(new Event.PartUp(talk.now(), Part.KEEPER, "utterances"));
    assertThat(up(talk).view().message())
        .startsWith("What is said at the table is kept")
        .endsWith("run calamus microphone.");
  }
}
