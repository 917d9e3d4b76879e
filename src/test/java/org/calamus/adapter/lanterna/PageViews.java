package org.calamus.adapter.lanterna;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Heed;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.Setup;
import org.calamus.core.dialogue.View;
import org.calamus.core.form.CodeSet;
import org.calamus.core.record.BandNumber;
import org.calamus.core.rule.BandString;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.calamus.support.WholeRecord;

/** The pages as the dialogue makes them after a morning at an invented station. */
final class PageViews {

  private static final List<BandString> STRINGS =
      List.of(string("1B", "2841-55601", "2841-55700"), string("0", "2790-41201", "2790-41300"));

  private PageViews() {}

  private static BandString string(String size, String first, String last) {
    return new BandString(
        size, BandNumber.parse(first).orElseThrow(), BandNumber.parse(last).orElseThrow());
  }

  /** A morning of five birds, of which one was kept against a rule and one has remarks. */
  private static Talk morning() {
    Heed heed = new Heed(org.calamus.core.dialogue.Talk.OPEN, Duration.ZERO);
    Setup setup = WholeRecord.setup(CodeSet.LABORATORY, STRINGS).heeding(heed);
    Talk talk = new Talk(setup, Known.of(STRINGS, List.of(), Fenwick.ZONE));
    talk.event(new Event.Started(talk.now(), Optional.empty()));
    parts(talk, Map.of(Part.EARS, "USB microphone", Part.VOICE, "built-in voice"));
    parts(talk, Map.of(Part.SCALE, "bench balance", Part.STORE, "calamus.db"));
    talk.event(new Event.LevelMeasured(talk.now(), -38, false));
    bird(talk, "7270", "601", "92", "22.3");
    later(talk, Duration.ofMinutes(47));
    bird(talk, "7350", "201", "64", "11.0");
    later(talk, Duration.ofMinutes(31));
    bird(talk, "7270", "602", "29\n", "21.5");
    later(talk, Duration.ofMinutes(75));
    bird(talk, "7350", "202", "65", "10.8");
    return talk;
  }

  private static void parts(Talk talk, Map<Part, String> names) {
    names.forEach((part, name) -> talk.event(new Event.PartUp(talk.now(), part, name)));
  }

  private static void later(Talk talk, Duration time) {
    talk.event(new Event.Ticked(talk.now().plus(time)));
  }

  private static void bird(Talk talk, String species, String band, String wing, String mass) {
    talk.keys(species + "\n" + band + "\n1\n").keys("+070\n+17" + wing + "\n");
    talk.keys("+21" + mass + "\n++");
  }

  private static View page(String keys) {
    return morning().keys(keys).view();
  }

  static View session() {
    return page("+70");
  }

  static View sessionDown() {
    Talk talk = morning().keys("+70");
    String sentence =
        "No microphone was found: plug one in, or go on by keypad; it is looked for every second.";
    return talk.event(new Event.PartDown(talk.now(), Part.EARS, sentence)).view();
  }

  static View records() {
    return page("+71");
  }

  static View recordsChosen() {
    return page("+712");
  }

  static View record() {
    return page("+711\n");
  }

  static View recordCorrected() {
    return page("+81\n+1766\n+2110.9\n++3\n+76");
  }

  static View recordCorrectedLeafed() {
    return page("+81\n+1766\n+2110.9\n++3\n+76*");
  }

  static View strings() {
    return page("+72");
  }

  static View species() {
    return page("+73");
  }

  static View numbers() {
    return page("+7772");
  }

  static View commands() {
    return page("+74");
  }

  static View commandsLeafed() {
    return page("+74**");
  }

  /** The page of the strings while a bird is held longer than the station's warning. */
  static View heldLong() {
    Talk talk = morning().keys("7270\n").keys("+72");
    later(talk, Duration.ofMinutes(6));
    return talk.view();
  }
}
