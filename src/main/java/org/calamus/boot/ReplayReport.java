package org.calamus.boot;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Locale;
import org.calamus.core.dialogue.Circumstances;
import org.calamus.core.dialogue.Outcome;
import org.calamus.core.dialogue.Understood;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Word;
import org.calamus.port.KeptUtterances.Kept;

/** Prints a line for each thing replayed, and sums them up. Used from one thread. */
final class ReplayReport {

  private final PrintStream out;
  private int same;
  private int reworded;
  private int changed;
  private int recordings;
  private int leftOut;

  ReplayReport(PrintStream out) {
    this.out = out;
  }

  /** Compares what an utterance was understood as with what it is understood as today. */
  void compare(Kept kept, Utterance now, Understood meaning) {
    Utterance then = kept.event().utterance();
    boolean isSame = kept.account().understood().equals(meaning);
    if (!isSame) {
      changed++;
    } else {
      same++;
      reworded += then.text().equals(now.text()) ? 0 : 1;
    }
    out.println(
        (isSame ? "same     " : "CHANGED  ")
            + name(nameOf(kept), kept.account().met())
            + heard(then, kept.account().understood())
            + became(kept.account().outcome())
            + " -> "
            + heard(now, meaning));
  }

  /** Tells what an utterance of a recording is understood as today. */
  void tell(Path file, Circumstances met, Utterance now, Understood meaning) {
    recordings++;
    out.println(
        "now      " + name(file.getFileName().toString(), met) + "-> " + heard(now, meaning));
  }

  /** Something cannot be replayed. */
  void leaveOut(String sentence) {
    leftOut++;
    out.println("LEFT OUT " + sentence);
  }

  /**
   * Prints the sum.
   *
   * @return the exit code: done where all is as it was
   */
  int end() {
    if (recordings > 0) {
      out.println(recordings + " heard in recordings, with nothing to compare.");
    }
    if (same + changed + leftOut > 0 || recordings == 0) {
      out.println(sum());
    }
    if (changed > 0) {
      out.println("Whether a change is for the better only you can tell: listen to the sound.");
    }
    return changed + leftOut > 0 ? ExitCode.FAILURE : ExitCode.DONE;
  }

  private String sum() {
    String words = reworded > 0 ? " (" + reworded + " of them in other words)" : "";
    return same + " same" + words + ", " + changed + " changed, " + leftOut + " left out.";
  }

  /** The sound of an utterance, with the session that it is of. */
  static String nameOf(Kept kept) {
    return kept.wav().getParent().getFileName() + "/" + kept.wav().getFileName();
  }

  private static String name(String sound, Circumstances met) {
    String asked = met.asked().map(FieldId::key).orElse("no field");
    String state = met.isPaused() ? ", paused" : met.isQuestioning() ? ", question" : "";
    return sound + " [" + asked + state + "] ";
  }

  private static String heard(Utterance utterance, Understood meaning) {
    String words = utterance.text().replace(Word.UNKNOWN, "...");
    return "\"" + words + "\" = " + meaning(meaning);
  }

  private static String meaning(Understood meaning) {
    return switch (meaning.kind()) {
      case UNHEEDED -> "not heeded";
      case NOTHING -> "nothing";
      case UNCLEAR -> "not understood";
      case VALUES -> meaning.what();
      case FIELD -> "field " + meaning.what();
      case COMMAND -> "command " + meaning.what();
    };
  }

  private static String became(Outcome outcome) {
    return " (" + outcome.kind().name().toLowerCase(Locale.ROOT).replace('_', ' ') + ")";
  }
}
