package org.calamus.boot;

import java.io.PrintStream;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.calamus.core.dialogue.Effect;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.View;
import org.calamus.core.speech.Utterance;
import org.calamus.port.SessionWatcher;

/** Prints what was heard and what is said, a line each, where there is no screen to show it. */
final class HeardLines implements SessionWatcher {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

  private final PrintStream out;
  private final ZoneId zone;

  HeardLines(PrintStream out, ZoneId zone) {
    this.out = out;
    this.zone = zone;
  }

  @Override
  public void stepped(Event event, List<Effect> effects, View view) {
    if (event instanceof Event.Heard heard) {
      print(event, "heard: " + words(heard.utterance()));
    }
    for (Effect effect : effects) {
      if (effect instanceof Effect.Say say) {
        print(event, "says: " + say.phrase());
      }
    }
  }

  private static String words(Utterance utterance) {
    return utterance.words().isEmpty() ? "no word" : utterance.text();
  }

  private void print(Event event, String line) {
    out.println(TIME.format(event.at().atZone(zone)) + " " + line);
  }
}
