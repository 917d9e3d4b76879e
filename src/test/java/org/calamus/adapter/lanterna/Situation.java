package org.calamus.adapter.lanterna;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.form.CodeSet;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Unit;
import org.calamus.core.rule.BandString;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.calamus.support.WholeRecord;

/**
 * The states of a session that look different, each reached by what a bander would do. Most are of
 * the program's own form, those with a scale of the short form.
 */
enum Situation {
  SESSION_START(Situation::begun, talk -> {}),
  ASKING(Situation::awake, talk -> {}),
  SPEAKING(Situation::awake, talk -> talk.keys("7270\n").event(new Event.VoiceBegan(talk.now()))),
  HEARING(
      Situation::awake,
      talk -> talk.keys("7270\n").event(new Event.LevelMeasured(talk.now(), -14, true))),
  KEYING(Situation::withBand, talk -> talk.keys("+1792")),
  VALUE_TAKEN(Situation::withBand, talk -> talk.keys("+1792\n")),
  CHOOSING_CODES(Situation::withBand, talk -> talk.keys("1\n")),
  CODES_AND_PARTS_DOWN(Situation::withBand, talk -> allDown(talk.keys("1\n"))),
  CODES_AND_QUESTION(Situation::withBand, talk -> talk.keys("1\n17\n")),
  CODES_QUESTION_AND_PARTS_DOWN(
      Situation::withBand, talk -> allDown(talk.keys("1\n")).keys("17\n")),
  KEEP(Situation::withBand, talk -> talk.keys("+1729\n")),
  LACKING(
      Situation::withBand,
      talk -> talk.say("hatching year").say("how aged skull").say("next field").keys("+1792\n")),
  CONFIRMED(Situation::withBand, talk -> talk.keys("+1729\n\n")),
  WHICH(Situation::shortForm, talk -> talk.say("weight fifty")),
  SKIPPED(Situation::afterOne, talk -> talk.keys("7270\n604\n")),
  TWICE(Situation::awake, talk -> talk.keys("+013\n123456789\n")),
  ABANDON(Situation::withBand, talk -> talk.keys("+98")),
  END(Situation::withBand, talk -> talk.keys("+99")),
  END_UNSTORED(
      Situation::withBand,
      talk -> {
        talk.event(new Event.StoreFailed(talk.now(), "The disk is full: free some space."));
        talk.keys("+98\n+99");
      }),
  RESUME(Situation::leftBehind, talk -> {}),
  REFUSED(Situation::withBand, talk -> talk.keys("+17920\n")),
  NOT_UNDERSTOOD(Situation::withBand, talk -> talk.say("point point").say("point")),
  NOT_ENTERED(Situation::withBand, talk -> talk.keys("+1792*")),
  PARTS_DOWN(
      Situation::withBand,
      talk -> {
        String ears = "No microphone was found: plug one in, or go on by keypad.";
        String store = "The disk is full: free some space, then go on.";
        talk.event(new Event.PartDown(talk.now(), Part.EARS, ears));
        talk.event(new Event.StoreFailed(talk.now(), store));
      }),
  EARS_LOST(
      Situation::withBand,
      talk -> {
        String lost = "The microphone was unplugged: plug it in again, or go on by keypad.";
        talk.event(new Event.PartDown(talk.now(), Part.EARS, lost)).keys("+1729\n");
      }),
  PAUSED(Situation::awake, talk -> talk.say("console standby")),
  PRESS_TO_TALK(Situation::withBand, talk -> talk.say("console manual listening")),
  MENU(Situation::withBand, talk -> talk.keys("+")),
  HELP(Situation::withBand, talk -> talk.keys("+.")),
  RECAPTURE(Situation::knowing, talk -> talk.keys("+012\n284155601\n")),
  RECAPTURE_WEIGHED(Situation::knowing, talk -> talk.keys("+012\n284155601\n7270\n+2122.3\n")),
  WEIGHING(Situation::shortForm, talk -> talk.keys("284155601\n7270\n").weigh("0.0", "22.3")),
  WEIGHED(
      Situation::shortForm,
      talk -> {
        talk.keys("284155601\n7270\n5\n4\n92\n").weigh("0.0", "0.0", "0.0", "0.0");
        talk.weigh("22.3", "22.3", "22.3", "22.3", "22.3", "22.3", "22.3", "22.3");
      }),
  HELD_LONG(Situation::withBand, talk -> wait(talk, Duration.ofMinutes(6))),
  HELD_OVER(Situation::withBand, talk -> wait(talk, Duration.ofMinutes(11))),
  COMPLETE(Situation::shortForm, talk -> talk.keys("284155601\n7270\n5\n4\n92\n22.3\n")),
  SAVED(Situation::shortForm, talk -> talk.keys("284155601\n7270\n5\n4\n92\n22.3\n\n")),
  REOPENING(Situation::afterOne, talk -> talk.keys("+81")),
  CORRECTING(Situation::afterOne, talk -> talk.keys("+81\n+1793\n")),
  REASON(Situation::afterOne, talk -> talk.keys("+81\n+1793\n\n")),
  NETS(Situation::withBand, talk -> talk.keys("+825.06"));

  private static final List<BandString> STRINGS =
      List.of(new BandString("1B", band("2841-55601"), band("2841-55700")));

  private final Supplier<Talk> from;
  private final Consumer<Talk> done;

  Situation(Supplier<Talk> from, Consumer<Talk> done) {
    this.from = from;
    this.done = done;
  }

  /** The session, new each time. */
  Talk talk() {
    Talk talk = from.get();
    done.accept(talk);
    return talk;
  }

  private static Talk begun() {
    return started(Known.of(STRINGS, List.of(), Fenwick.ZONE));
  }

  private static Talk started(Known known) {
    Talk talk = new Talk(WholeRecord.setup(CodeSet.LABORATORY, STRINGS), known);
    return up(talk.event(new Event.Started(talk.now(), Optional.empty())));
  }

  private static Talk up(Talk talk) {
    Map<Part, String> names =
        Map.of(
            Part.EARS, "USB microphone",
            Part.VOICE, "built-in voice",
            Part.SCALE, "bench balance",
            Part.STORE, "calamus.db");
    names.forEach((part, name) -> talk.event(new Event.PartUp(talk.now(), part, name)));
    return talk.event(new Event.LevelMeasured(talk.now(), -38, false));
  }

  private static Talk awake() {
    return begun().keys("-");
  }

  private static Talk withBand() {
    return begun().keys("7270\n601\n");
  }

  private static Talk afterOne() {
    return withBand().keys("5\n2\n4\n2\n++");
  }

  /** The longest sentences that the parts of the console have. */
  private static Talk allDown(Talk talk) {
    Map<Part, String> sentences = new EnumMap<>(Part.class);
    sentences.put(
        Part.EARS,
        "the microphone USB headset was taken away; plug it in again, or choose another one");
    sentences.put(Part.VOICE, "The voice cannot be heard: look at the screen, or start again.");
    sentences.put(
        Part.SCALE,
        "The scale on /dev/ttyUSB0 was unplugged: plug it in again, or dictate the mass.");
    sentences.forEach((part, text) -> talk.event(new Event.PartDown(talk.now(), part, text)));
    return talk;
  }

  private static Talk shortForm() {
    Talk talk = new Talk(Fenwick.setup(Fenwick.balance()), Known.nothing());
    return up(talk.event(new Event.Started(talk.now(), Optional.empty())));
  }

  private static Talk leftBehind() {
    CaptureRecord left = withBand().record().orElseThrow();
    Talk talk = new Talk(WholeRecord.setup(CodeSet.LABORATORY, STRINGS), Known.nothing());
    talk.event(new Event.Started(talk.now(), Optional.of(left)));
    return up(talk);
  }

  private static Talk knowing() {
    List<PastCapture> saved =
        Stream.of("2025-06-14 91 21.5", "2025-10-02 92 23.4", "2026-05-27 92 22.0")
            .map(text -> text.split(" "))
            .map(Situation::capture)
            .toList();
    return started(Known.of(STRINGS, saved, Fenwick.ZONE));
  }

  private static PastCapture capture(String[] parts) {
    return new PastCapture(
        900 + Long.parseLong(parts[0].substring(5, 7)),
        Instant.parse(parts[0] + "T07:00:00Z"),
        "Fenwick Marsh",
        "QX",
        Map.of(
            FieldId.BAND,
            band("2841-55601"),
            FieldId.SPECIES,
            new FieldValue.Code("WBNU"),
            FieldId.AGE,
            new FieldValue.Code("AHY"),
            FieldId.SEX,
            new FieldValue.Code("M"),
            FieldId.WING,
            measure(parts[1], Unit.MILLIMETRE),
            FieldId.MASS,
            measure(parts[2], Unit.GRAM)),
        Set.of());
  }

  private static FieldValue measure(String amount, Unit unit) {
    return new FieldValue.Measure(new BigDecimal(amount), unit);
  }

  private static BandNumber band(String text) {
    return BandNumber.parse(text).orElseThrow();
  }

  private static void wait(Talk talk, Duration time) {
    talk.event(new Event.Ticked(talk.now().plus(time)));
  }
}
