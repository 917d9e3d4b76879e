package org.calamus.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.calamus.core.dialogue.Heed;
import org.calamus.core.dialogue.Key;
import org.calamus.core.dialogue.Talk;
import org.calamus.core.dialogue.View;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A session that listens behind the talk key: what the engine does to the ears. */
class EngineTalkKeyTest {

  private static final String BAND = "two eight four one five five six zero one";

  private final Stand stand =
      new Stand(Fenwick.setup().heeding(new Heed(Talk.KEY, Heed.usual().pauseAfter())));

  private List<String> ears() {
    return stand.log.stream()
        .filter(l -> List.of("shut", "open", "open at once", "finish").contains(l))
        .toList();
  }

  @Test
  @Timeout(20)
  void runKeepsTheEarsShutBehindThePromptAtTheStart() throws InterruptedException {
    stand.voiceBegan().voiceEnded().second().second().run();
    assertThat(ears()).isNotEmpty().containsOnly("shut");
  }

  @Test
  @Timeout(20)
  void runTakesNothingThatIsSaidBeforeTheTalkKey() throws InterruptedException {
    stand.voiceEnded().say(BAND).run();
    assertThat(stand.logged("journal")).isEmpty();
    assertThat(ears()).doesNotContain("open", "open at once");
  }

  @Test
  @Timeout(20)
  void runOpensTheEarsForOneUtteranceAndShutsThemBehindTheAnswer() throws InterruptedException {
    stand
        .voiceEnded() // of the prompt at the start
        .key(Key.Name.TALK)
        .say(BAND)
        .voiceEnded() // of the answer
        .second()
        .say("white breasted nuthatch")
        .run();
    assertThat(stand.log).containsSubsequence("open at once", "journal 1 BAND 2841-55601", "shut");
    assertThat(stand.logged("journal")).hasSize(1);
    assertThat(stand.logged("open")).containsExactly("open at once");
    assertThat(ears()).endsWith("shut");
  }

  @Test
  @Timeout(20)
  void runFinishesTheUtteranceWhenTheKeyIsPressedAgain() throws InterruptedException {
    stand.voiceEnded().key(Key.Name.TALK).key(Key.Name.TALK).run();
    assertThat(ears()).endsWith("open at once", "finish");
  }

  @Test
  @Timeout(20)
  void runCutsTheVoiceOffAndOpensWhenTheKeyIsPressedWhileItSpeaks() throws InterruptedException {
    stand.voiceBegan().key(Key.Name.TALK).voiceEnded().say(BAND).run();
    assertThat(stand.log)
        .containsSubsequence("say band", "hush", "open at once", "journal 1 BAND 2841-55601");
    assertThat(stand.logged("open")).containsExactly("open at once");
  }

  @Test
  @Timeout(20)
  void runOpensBehindAPhraseThatHasNotBegunWhenTheKeyIsPressed() throws InterruptedException {
    stand
        .key(Key.Name.TALK) // the prompt at the start is on its way to the loudspeaker
        .then(() -> assertThat(stand.logged("open")).isEmpty())
        .voiceEnded()
        .say(BAND)
        .run();
    assertThat(stand.log).containsSubsequence("open", "journal 1 BAND 2841-55601");
    assertThat(stand.logged("open")).containsExactly("open");
  }

  @Test
  @Timeout(20)
  void runShutsTheEarsAgainWhenNobodySpeaksAfterTheKey() throws InterruptedException {
    stand.voiceEnded().key(Key.Name.TALK);
    for (int i = 0; i < 9; i++) {
      stand.second();
    }
    stand.say(BAND).run();
    assertThat(ears()).endsWith("open at once", "shut");
    assertThat(stand.logged("journal")).isEmpty();
  }

  @Test
  @Timeout(20)
  void runOpensTheEarsForGoodWhenOpenListeningIsChosen() throws InterruptedException {
    stand
        .voiceEnded() // of the prompt at the start
        .key(Key.Name.TALK)
        .say("console open microphone")
        .voiceEnded() // of the answer
        .say(BAND)
        .voiceEnded() // of the answer
        .say("white breasted nuthatch")
        .run();
    assertThat(stand.logged("journal")).hasSize(2);
    assertThat(stand.logged("open")).containsExactly("open at once", "open", "open");
  }

  @Test
  @Timeout(20)
  void runTakesKeysWhateverTheEarsDo() throws InterruptedException {
    stand.voiceEnded();
    "284155601".chars().forEach(c -> stand.key((char) c));
    stand.key(Key.Name.ENTER).run();
    assertThat(stand.logged("journal")).containsExactly("journal 1 BAND 2841-55601");
    assertThat(ears()).containsOnly("shut");
    assertThat(stand.lastView().mode()).isNotEqualTo(View.Mode.LISTENING);
  }
}
