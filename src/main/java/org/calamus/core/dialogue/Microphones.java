package org.calamus.core.dialogue;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.core.hearing.MicrophoneCheck;
import org.calamus.core.hearing.MicrophoneVerdict.Grade;

/** What is told of the check of the microphone that is listened to. */
final class Microphones {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private final Setup setup;

  Microphones(Setup setup) {
    this.setup = setup;
  }

  /**
   * A microphone is heard: where it was never checked, or its check said that it will not do, that
   * is said in one line, once there is room for it and before the first bird.
   */
  State heard(State state, String microphone) {
    boolean isTime =
        state.record().isEmpty() && state.question().isEmpty() && state.savedCount() == 0;
    Optional<String> notice = isTime ? notice(microphone) : Optional.empty();
    String before = state.face().message();
    return notice
        .filter(n -> !before.contains(n))
        .map(n -> state.message(before.isEmpty() ? n : before + " " + n))
        .orElse(state);
  }

  private Optional<String> notice(String microphone) {
    if (setup.checks().isEmpty()) {
      return Optional.empty();
    }
    Optional<MicrophoneCheck> last = setup.checks().get().last(microphone);
    if (last.isEmpty()) {
      return Optional.of(
          "This microphone was not tried yet: between two rounds run calamus microphone.");
    }
    return last.filter(c -> c.grade() == Grade.NOT_USABLE)
        .map(
            c ->
                "Microphone not usable when tried "
                    + time(c.at())
                    + ": try anew or use the keypad.");
  }

  /** The row of the session page; none where no microphone is listened to. */
  List<PageRow> row(String microphone) {
    List<PageRow> rows = new ArrayList<>();
    if (setup.checks().isPresent()) {
      Optional<MicrophoneCheck> last = setup.checks().get().last(microphone);
      boolean isWrong = last.filter(c -> c.grade() == Grade.NOT_USABLE).isPresent();
      rows.addAll(
          PageRow.named(
              isWrong ? "X" : "",
              "Last tried",
              last.map(c -> time(c.at()) + ": " + c.sentence()).orElse("never"),
              isWrong ? Page.Look.WRONG : Page.Look.TEXT));
    }
    return rows;
  }

  private String time(Instant at) {
    return TIME.format(at.atZone(setup.station().zone()));
  }
}
