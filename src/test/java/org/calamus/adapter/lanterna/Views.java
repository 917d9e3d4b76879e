package org.calamus.adapter.lanterna;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.dialogue.Page;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.Pictures;
import org.calamus.core.dialogue.View;
import org.calamus.core.form.Range;
import org.calamus.core.readback.Course;
import org.calamus.core.readback.Strip;
import org.calamus.core.record.FieldId;

/** Views as the dialogue would make them, for an invented station. */
final class Views {

  private static final String STATION = "Fenwick Marsh   QX   Wed 25 Nov 2026   08:41";

  private static final List<View.Hint> HINTS =
      List.of(
          new View.Hint("digits", "0-9 .", "value"),
          new View.Hint("enter value", "Enter", "take it"),
          new View.Hint("go back", "-", "take back"),
          new View.Hint("skip field", "+", "next"),
          new View.Hint("say again", "*", "repeat"),
          new View.Hint("", "/", "talk"),
          new View.Hint("abandon record", "", "give it up"));

  private static final List<View.Hint> ANSWERS =
      List.of(
          new View.Hint("affirm", "Enter", "yes, 92"),
          new View.Hint("negative", "-", "no, keep asking"),
          new View.Hint("say again", "*", "repeat"));

  private static final List<String> RECENT =
      List.of(
          "2841-55600   BCCH   HY   U   wing 64   mass 10.9   08:32",
          "2841-55599   BCCH   AHY  M   wing 67   mass 11.4   08:29",
          "2841-55598   WBNU   HY   F   wing 87   mass 20.1   08:17",
          "2841-55597   DOWO   SY   F   wing 92   mass 26.0   08:05",
          "2841-55596   BCCH   HY   U   wing 63   mass 10.6   07:58",
          "2841-55595   TUTI   AHY  U   wing 80   mass 21.8   07:44",
          "2841-55594   TUTI   HY   U   wing 78   mass 20.7   07:40");

  private Views() {}

  /** The wing is asked and nothing is keyed yet. */
  static View asking() {
    return new Draft().view();
  }

  /** Two digits of the wing are keyed. */
  static View keying() {
    Draft draft = new Draft();
    draft.big = "92";
    return draft.view();
  }

  /** The band number was just taken, and the species is asked. */
  static View bandTaken() {
    Draft draft = new Draft();
    draft.mode = View.Mode.SPEAKING;
    draft.asked = "Species";
    draft.big = "2841-55601";
    draft.bigOf = "= Band number taken";
    draft.lines =
        List.of(
            taken(FieldId.BAND, "Band", "2841-55601", "keyed"),
            asked(FieldId.SPECIES, "Species"),
            missing(FieldId.AGE, "Age"),
            missing(FieldId.SEX, "Sex"),
            empty(FieldId.WING, "Wing chord, mm"),
            empty(FieldId.MASS, "Mass, g"));
    draft.inHand = Optional.of(Duration.ofSeconds(12));
    return draft.view();
  }

  /** The wing was just taken by voice, and the mass is asked; the scale sends. */
  static View valueTaken() {
    Draft draft = new Draft();
    draft.mode = View.Mode.SPEAKING;
    draft.asked = "Mass, g";
    draft.big = "92";
    draft.bigOf = "= Wing chord, mm taken";
    draft.live = Optional.of("22.3 g");
    draft.lines =
        List.of(
            draft.lines.get(0),
            draft.lines.get(1),
            draft.lines.get(2),
            draft.lines.get(3),
            taken(FieldId.WING, "Wing chord, mm", "92", "said"),
            asked(FieldId.MASS, "Mass, g"));
    return draft.view();
  }

  /** A wing that is far too short waits for an answer. */
  static View question() {
    Draft draft = new Draft();
    draft.mode = View.Mode.CHECK;
    draft.big = "29";
    draft.bigOf = "? Wing chord, mm in question";
    draft.question =
        Optional.of(
            "Wing chord 29 mm is outside 77 to 100 mm for White-breasted Nuthatch; 92 would fit."
                + " Keep 29 mm?");
    draft.hints = ANSWERS;
    draft.lines =
        List.of(
            draft.lines.get(0),
            draft.lines.get(1),
            draft.lines.get(2),
            draft.lines.get(3),
            new View.Line(FieldId.WING, "Wing chord, mm", "29", "said", View.Standing.IN_QUESTION),
            draft.lines.get(5));
    return draft.view();
  }

  /** A value was refused; the message says why. */
  static View refused() {
    Draft draft = new Draft();
    draft.mode = View.Mode.HEARING;
    draft.decibels = -9;
    draft.message = "Not taken: wing 920 mm. A wing has two or three digits, from 30 to 350.";
    return draft.view();
  }

  /** The ears, the scale and the store are down, and a question is open. */
  static View partsDown() {
    Draft draft = new Draft(question());
    draft.mode = View.Mode.KEYPAD;
    draft.decibels = -96;
    draft.message = "Wing: 29 is in question.";
    draft.health =
        List.of(
            new View.Health(
                Part.EARS, false, "No microphone was found: plug one in, or go on by keypad."),
            new View.Health(Part.VOICE, true, "built-in voice"),
            new View.Health(
                Part.SCALE,
                false,
                "The balance on its port has sent nothing for 30 seconds: switch it on, or unplug"
                    + " and plug its cable, or key the mass."),
            new View.Health(Part.STORE, false, "The disk is full: free some space, then go on."));
    return draft.view();
  }

  /** The same parts down with no question, so that there is room to say all. */
  static View partsDownAlone() {
    Draft draft = new Draft(partsDown());
    draft.question = Optional.empty();
    return draft.view();
  }

  /** The start of a session: cautions, and a record that was left unfinished. */
  static View cautions() {
    Draft draft = new Draft();
    draft.mode = View.Mode.CHECK;
    draft.asked = "Band";
    draft.question =
        Optional.of("Record 2841-55600 was left unfinished. Go on with it? affirm or negative");
    draft.hints = ANSWERS;
    draft.lines = draft.lines.stream().map(Views::emptied).toList();
    draft.inHand = Optional.empty();
    draft.recent = List.of();
    draft.savedCount = 0;
    draft.cautions =
        List.of(
            "Look at what is taken, not only at what is said: a wrong digit sounds like a right"
                + " one.",
            "Limits for wing and mass are guides and not published values for this station.",
            "The bird comes first: let it go when it shows stress, finished or not.");
    return draft.view();
  }

  /** Every standing and way at once. */
  static View standings() {
    Draft draft = new Draft();
    draft.lines =
        List.of(
            taken(FieldId.BAND, "Band", "2841-55601", "keyed"),
            new View.Line(FieldId.SPECIES, "Species", "WBNU", "said", View.Standing.IN_QUESTION),
            missing(FieldId.AGE, "Age"),
            asked(FieldId.SEX, "Sex"),
            empty(FieldId.WING, "Wing chord, mm"),
            new View.Line(FieldId.MASS, "Mass, g", "31.7", "measured", View.Standing.CONFIRMED));
    return draft.view();
  }

  /** The first view with another mode. */
  static View in(View.Mode mode) {
    Draft draft = new Draft();
    draft.mode = mode;
    return draft.view();
  }

  /** The first view with another level. */
  static View at(int decibels) {
    Draft draft = new Draft();
    draft.decibels = decibels;
    return draft.view();
  }

  /** The first view with other words in large. */
  static View big(String text) {
    Draft draft = new Draft();
    draft.big = text;
    return draft.view();
  }

  /** A record of twenty fields, fourteen of them taken; the wing is asked. */
  static View longRecord() {
    Draft draft = new Draft();
    draft.lines = LongRecord.lines();
    return draft.view();
  }

  /** The twenty fields of a record that was just begun. */
  static View longRecordBegun() {
    Draft draft = new Draft();
    draft.asked = "Species";
    draft.lines = LongRecord.begun();
    draft.inHand = Optional.empty();
    return draft.view();
  }

  /** The long record with a value in question. */
  static View longRecordInQuestion() {
    Draft draft = new Draft(question());
    draft.lines =
        longRecord().lines().stream()
            .map(
                line ->
                    line.standing() == View.Standing.ASKED
                        ? new View.Line(
                            line.field(), line.label(), "29", "said", View.Standing.IN_QUESTION)
                        : line)
            .toList();
    return draft.view();
  }

  /** The keypad's menu is open over the long record, which has a number for each field. */
  static View menu() {
    Draft draft = new Draft(longRecord());
    draft.big = "HY";
    draft.bigOf = "= Age taken";
    draft.message = "Two digits open a field; + saves, / lets the bird go.";
    draft.choices = LongRecord.menu();
    return draft.view();
  }

  /** A field with eight codes is asked. */
  static View codes() {
    Draft draft = new Draft(longRecord());
    draft.asked = "Skull";
    draft.big = "M";
    draft.bigOf = "= Sex taken";
    draft.choices = LongRecord.skull();
    return draft.view();
  }

  /** A field with forty codes is asked, and one of them is keyed; there is a message too. */
  static View manyCodes() {
    Draft draft = new Draft(longRecord());
    draft.asked = "Status";
    draft.big = "30";
    draft.message = "Not taken: say the code's three digits.";
    draft.choices = LongRecord.status();
    return draft.view();
  }

  /** A bird that was caught five times before; its age is asked. */
  static View recapture() {
    Draft draft = new Draft(longRecordBegun());
    draft.asked = "Age";
    draft.big = "2841-55598";
    draft.bigOf = "= Band number taken";
    draft.lines = LongRecord.recapture();
    draft.inHand = Optional.of(Duration.ofSeconds(21));
    draft.choices = LongRecord.ages();
    draft.history = LongRecord.history();
    return draft.view();
  }

  /** The same bird when the wing is asked, and there is nothing to choose. */
  static View recaptureAtWing() {
    Draft draft = new Draft(longRecord());
    draft.history = LongRecord.history();
    return draft.view();
  }

  /** The mass of the same bird was just taken: its strip and its mass over time. */
  static View recaptureWeighed() {
    Draft draft = new Draft(recaptureAtWing());
    draft.asked = "Net";
    draft.big = "22.3";
    draft.bigOf = "= Mass, g taken";
    draft.lines = LongRecord.weighed();
    draft.pictures =
        new Pictures(
            List.of(wingStrip("92"), massStrip("22.3")),
            Optional.of(FieldId.MASS),
            Optional.of(course(Optional.of(new BigDecimal("22.3")))),
            true);
    return draft.view();
  }

  /** A wing was just taken that lies between the station's females and males. */
  static View wingPlaced() {
    Draft draft = new Draft(valueTaken());
    draft.pictures = placed("92");
    return draft.view();
  }

  /** The wing in question lies far outside all that is drawn, and with it three more measures. */
  static View questionPlaced() {
    Draft draft = new Draft(longRecordInQuestion());
    draft.pictures = placed("29");
    return draft.view();
  }

  private static Pictures placed(String wing) {
    return new Pictures(
        List.of(wingStrip(wing)), Optional.of(FieldId.WING), Optional.empty(), false);
  }

  private static Strip wingStrip(String amount) {
    return new Strip(
        FieldId.WING,
        "wing",
        new BigDecimal(amount),
        Optional.of(range("77", "100")),
        List.of(
            new Strip.Own("M", 31, amount.equals("29") ? 0 : 12, range("90", "96")),
            new Strip.Own("F", 28, amount.equals("29") ? 0 : 27, range("84", "91"))),
        range("77", "100"));
  }

  private static Strip massStrip(String amount) {
    return new Strip(
        FieldId.MASS,
        "mass",
        new BigDecimal(amount),
        Optional.of(range("15.7", "27.5")),
        List.of(),
        range("15.7", "27.5"));
  }

  private static Course course(Optional<BigDecimal> now) {
    return new Course(
        List.of(
            new Course.Point(LocalDate.of(2025, 6, 14), new BigDecimal("21.5")),
            new Course.Point(LocalDate.of(2025, 10, 2), new BigDecimal("23.4")),
            new Course.Point(LocalDate.of(2026, 7, 27), new BigDecimal("22.0"))),
        now,
        "g",
        range("15.7", "27.5"));
  }

  private static Range range(String least, String most) {
    return new Range(new BigDecimal(least), new BigDecimal(most));
  }

  /** A bird that is held longer than the station's warning, or its limit. */
  static View held(View.Hold hold, Duration time) {
    Draft draft = new Draft();
    draft.hold = hold;
    draft.inHand = Optional.of(time);
    return draft.view();
  }

  private static View.Line taken(FieldId field, String label, String value, String way) {
    return new View.Line(field, label, value, way, View.Standing.TAKEN);
  }

  private static View.Line asked(FieldId field, String label) {
    return new View.Line(field, label, "", "", View.Standing.ASKED);
  }

  private static View.Line missing(FieldId field, String label) {
    return new View.Line(field, label, "", "", View.Standing.MISSING);
  }

  private static View.Line empty(FieldId field, String label) {
    return new View.Line(field, label, "", "", View.Standing.EMPTY);
  }

  private static View.Line emptied(View.Line line) {
    return missing(line.field(), line.label());
  }

  /** A view in the making. */
  private static final class Draft {
    private View.Mode mode = View.Mode.LISTENING;
    private String asked = "Wing chord, mm";
    private String big = "";
    private String bigOf = "";
    private List<View.Line> lines =
        new ArrayList<>(
            List.of(
                taken(FieldId.BAND, "Band", "2841-55601", "keyed"),
                taken(FieldId.SPECIES, "Species", "WBNU White-breasted Nuthatch", "said"),
                taken(FieldId.AGE, "Age", "SY second year", "said"),
                taken(FieldId.SEX, "Sex", "M male", "keyed"),
                Views.asked(FieldId.WING, "Wing chord, mm"),
                empty(FieldId.MASS, "Mass, g")));
    private Optional<String> question = Optional.empty();
    private String message = "";
    private List<View.Health> health =
        List.of(
            new View.Health(Part.EARS, true, "USB microphone"),
            new View.Health(Part.VOICE, true, "built-in voice"),
            new View.Health(Part.SCALE, true, "bench balance"),
            new View.Health(Part.STORE, true, "captures.db"));
    private int decibels = -38;
    private Optional<String> live = Optional.empty();
    private List<View.Hint> hints = HINTS;
    private Optional<Duration> inHand = Optional.of(Duration.ofSeconds(94));
    private int savedCount = 14;
    private List<String> recent = RECENT;
    private List<String> cautions = List.of();
    private List<View.Choice> choices = List.of();
    private List<String> history = List.of();
    private View.Hold hold = View.Hold.WITHIN;
    private Pictures pictures = Pictures.none();
    private Optional<Page> page = Optional.empty();

    private Draft() {}

    private Draft(View view) {
      mode = view.mode();
      asked = view.asked();
      big = view.big();
      bigOf = view.bigOf();
      lines = view.lines();
      question = view.question();
      message = view.message();
      health = view.health();
      decibels = view.decibels();
      live = view.live();
      hints = view.hints();
      inHand = view.inHand();
      savedCount = view.savedCount();
      recent = view.recent();
      cautions = view.cautions();
      choices = view.choices();
      history = view.history();
      hold = view.hold();
      pictures = view.pictures();
      page = view.page();
    }

    private View view() {
      return new View(
          mode,
          STATION,
          asked,
          big,
          bigOf,
          lines,
          question,
          message,
          health,
          decibels,
          live,
          hints,
          "2841-55602",
          inHand,
          savedCount,
          recent,
          cautions,
          choices,
          history,
          hold,
          pictures,
          "",
          page);
    }
  }
}
