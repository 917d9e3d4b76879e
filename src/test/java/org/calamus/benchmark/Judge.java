package org.calamus.benchmark;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Word;

/**
 * Gives what was heard to the dialogue and says what came of it. May be used by several threads.
 */
final class Judge {

  private final Map<List<String>, Grammar> grammars = new ConcurrentHashMap<>();

  /** What is listened for at the moment when something is said. */
  Grammar grammar(Said said) {
    return grammars.computeIfAbsent(said.before(), before -> Moments.after(before).grammar());
  }

  /** Whether every word of it is listened for at the moment when it is said. */
  boolean isListenedFor(Said said) {
    Set<String> words = new HashSet<>();
    grammar(said).phrases().forEach(p -> words.addAll(List.of(p.split(" "))));
    return words.containsAll(List.of(said.words().split(" ")));
  }

  /** Compares what came of what was heard with what would have come of what was said. */
  Verdict of(Said said, List<Utterance> heard) {
    Moment before = Moments.after(said.before());
    Moment after = before;
    for (Utterance utterance : heard) {
      after = after.hears(utterance);
    }
    boolean isUnchanged = after.kept().equals(before.kept());
    String reply = after.replySince(before);
    if (said.isChatter()) {
      return !isUnchanged ? Verdict.WRONG : reply.isEmpty() ? Verdict.RIGHT : Verdict.AGAIN;
    }
    Moment meant = before.says(said.words());
    boolean isKept = after.kept().equals(meant.kept());
    if (isKept && reply.equals(meant.replySince(before)) && heard.size() == 1) {
      return Verdict.RIGHT;
    }
    return isUnchanged || isKept ? Verdict.AGAIN : Verdict.WRONG;
  }

  /** The way to hear an utterance that makes sense at the moment when it is said. */
  Utterance heardAs(Said said, Utterance utterance) {
    return Moments.after(said.before()).heardAs(utterance);
  }

  /**
   * The same for words of which no more is known, in one utterance that was said clearly.
   *
   * @param confidence of each of them, 0 to 1
   */
  Verdict of(Said said, List<Word> words, double confidence) {
    List<Word> heard = words.stream().map(w -> w.with(confidence)).toList();
    return of(said, heard.isEmpty() ? List.of() : List.of(Utterance.of(heard)));
  }
}
