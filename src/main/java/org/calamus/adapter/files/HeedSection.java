package org.calamus.adapter.files;

import java.time.Duration;
import java.util.Locale;
import java.util.Set;
import org.calamus.core.dialogue.Heed;
import org.calamus.core.dialogue.Talk;

/** Reads what the station file says about how the station wants to be listened to. */
final class HeedSection {

  /** The keys of the station file that are about listening. */
  static final Set<String> KEYS = Set.of("talk", "bystanders", "pause-after-minutes");

  private static final int LONGEST_MINUTES = 240;

  private HeedSection() {}

  /** Reads it; mistakes are noted in the section. */
  static Heed read(TomlSection root) {
    Heed usual = Heed.usual();
    boolean areOthersThere = root.truth("bystanders");
    Talk unsaid = areOthersThere ? Talk.KEY : usual.talk();
    int minutes =
        root.wholeOr(
            "pause-after-minutes", 0, LONGEST_MINUTES, (int) usual.pauseAfter().toMinutes());
    return new Heed(talk(root, unsaid), Duration.ofMinutes(minutes));
  }

  private static Talk talk(TomlSection root, Talk unsaid) {
    String text = root.textOr("talk", "");
    if (text.isEmpty()) {
      return unsaid;
    }
    for (Talk talk : Talk.values()) {
      if (talk.name().toLowerCase(Locale.ROOT).equals(text)) {
        return talk;
      }
    }
    root.mistake("talk", "\"" + text + "\" is no way to talk; write open or key.");
    return unsaid;
  }
}
