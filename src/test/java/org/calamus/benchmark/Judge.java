package org.calamus.benchmark;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.calamus.core.dialogue.Effect;
import org.calamus.core.dialogue.Event;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.support.Talk;

/**
 * Gives what was heard to the dialogue and says what came of it. May be used by several threads.
 */
final class Judge {

  private final Map<List<String>, Grammar> grammars = new ConcurrentHashMap<>();
  private final Map<Said, Meant> meant = new ConcurrentHashMap<>();

  /**
   * What would have come of an utterance that was heard rightly.
   *
   * @param before what there was before it
   * @param after what there is after it
   * @param reply what is said in answer
   */
  private record Meant(String before, String after, String reply) {}

  /** What is listened for at the moment when something is said. */
  Grammar grammar(Said said) {
    return grammars.computeIfAbsent(said.before(), before -> grammar(Moments.after(before)));
  }

  /** What is listened for now. */
  static Grammar grammar(Talk talk) {
    Grammar last = null;
    for (Effect effect : talk.effects()) {
      if (effect instanceof Effect.ListenFor listen) {
        last = listen.grammar();
      }
    }
    return last;
  }

  /** Whether every word of it is listened for at the moment when it is said. */
  boolean isListenedFor(Said said) {
    Set<String> words = new HashSet<>();
    grammar(said).phrases().forEach(p -> words.addAll(List.of(p.split(" "))));
    return words.containsAll(List.of(said.words().split(" ")));
  }

  /** Compares what came of what was heard with what would have come of what was said. */
  Verdict of(Said said, List<Utterance> heard) {
    Meant right = meant.computeIfAbsent(said, Judge::meant);
    Talk talk = Moments.after(said.before());
    talk.spoken();
    for (Utterance utterance : heard) {
      talk.event(new Event.Heard(talk.now(), utterance, talk.now()));
    }
    String after = done(talk);
    if (said.isChatter()) {
      return chatter(right, after, talk.lastSpoken());
    }
    if (after.equals(right.after) && talk.lastSpoken().equals(right.reply) && heard.size() == 1) {
      return Verdict.RIGHT;
    }
    return after.equals(right.before) || after.equals(right.after) ? Verdict.AGAIN : Verdict.WRONG;
  }

  /** The same for words without anything known of their sound; empty text is nothing heard. */
  Verdict of(Said said, String heard) {
    return of(said, heard.isEmpty() ? List.of() : List.of(Utterance.of(heard)));
  }

  /** Of what is not for the console nothing may come; a question is a lesser harm. */
  private static Verdict chatter(Meant right, String after, String reply) {
    if (!after.equals(right.before)) {
      return Verdict.WRONG;
    }
    return reply.isEmpty() ? Verdict.RIGHT : Verdict.AGAIN;
  }

  private static Meant meant(Said said) {
    Talk talk = Moments.after(said.before());
    talk.spoken();
    String before = done(talk);
    if (!said.isChatter()) {
      talk.say(said.words());
    }
    return new Meant(before, done(talk), talk.lastSpoken());
  }

  /** All that stays: values, records, the end. */
  private static String done(Talk talk) {
    StringBuilder done = new StringBuilder();
    for (FieldId field : FieldId.values()) {
      done.append(talk.field(field)).append(' ');
    }
    boolean ends = talk.effects().stream().anyMatch(Effect.EndSession.class::isInstance);
    return done.append(talk.saved()).append(ends).toString();
  }
}
