package org.calamus.benchmark;

import java.util.List;
import org.calamus.core.dialogue.Effect;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.support.Talk;

/** What came of an utterance in the dialogue. */
enum Verdict {
  /** What was meant came of it. */
  RIGHT,
  /** Nothing came of it, or the bander is asked: no harm, it is said again. */
  AGAIN,
  /** Something that was not meant was taken or done. */
  WRONG;

  /** The session at the moment before something is said. */
  static Talk moment(Said said) {
    Talk talk = Talk.atFenwick();
    said.before().forEach(talk::say);
    return talk;
  }

  /** What is listened for at that moment. */
  static Grammar grammar(Said said) {
    List<Effect> effects = moment(said).effects();
    Grammar last = null;
    for (Effect effect : effects) {
      if (effect instanceof Effect.ListenFor listen) {
        last = listen.grammar();
      }
    }
    return last;
  }

  /** Compares what came of what was heard with what would have come of what was said. */
  static Verdict of(Said said, List<Utterance> heard) {
    Talk after = moment(said);
    for (Utterance utterance : heard) {
      after.event(new org.calamus.core.dialogue.Event.Heard(after.now(), utterance, after.now()));
    }
    Talk before = moment(said);
    if (said.isChatter()) {
      return done(after).equals(done(before)) ? RIGHT : WRONG;
    }
    Talk meant = moment(said).say(said.words());
    boolean isSame =
        done(after).equals(done(meant))
            && after.lastSpoken().equals(meant.lastSpoken())
            && heard.size() == 1;
    if (isSame) {
      return RIGHT;
    }
    return done(after).equals(done(before)) || done(after).equals(done(meant)) ? AGAIN : WRONG;
  }

  /** All that stays: values, questions about values, records, the end. */
  private static String done(Talk talk) {
    StringBuilder done = new StringBuilder();
    for (FieldId field : FieldId.values()) {
      done.append(talk.field(field)).append(' ');
    }
    boolean ends = talk.effects().stream().anyMatch(Effect.EndSession.class::isInstance);
    return done.append(talk.saved()).append(ends).toString();
  }
}
