package org.calamus.adapter.lanterna;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.calamus.core.dialogue.View;
import org.calamus.core.record.FieldId;

/** A form with twenty fields, and what can be chosen in it, as the dialogue would give it. */
final class LongRecord {

  private static final List<FieldId> FIELDS =
      List.of(
          FieldId.SPECIES,
          FieldId.BAND,
          FieldId.AGE,
          FieldId.HOW_AGED,
          FieldId.SEX,
          FieldId.HOW_SEXED,
          FieldId.SKULL,
          FieldId.FAT,
          FieldId.CLOACAL_PROTUBERANCE,
          FieldId.BROOD_PATCH,
          FieldId.BODY_MOULT,
          FieldId.FLIGHT_MOULT,
          FieldId.FEATHER_WEAR,
          FieldId.JUVENAL_PLUMAGE,
          FieldId.WING,
          FieldId.NET,
          FieldId.MASS,
          FieldId.BAND_SIZE,
          FieldId.TIME,
          FieldId.KIND);

  private static final List<String> LABELS =
      List.of(
          "Species",
          "Band number",
          "Age",
          "How aged",
          "Sex",
          "How sexed",
          "Skull",
          "Fat",
          "Cloacal protuberance",
          "Brood patch",
          "Body moult",
          "Flight-feather moult",
          "Flight-feather wear",
          "Juvenal plumage",
          "Wing chord",
          "Net",
          "Mass",
          "Band size",
          "Capture time",
          "Kind of capture");

  private static final List<String> VALUES =
      List.of(
          "WBNU White-breasted Nuthatch",
          "2841-55601",
          "HY hatching year",
          "MR moulting flight feathers, SK skull",
          "M male",
          "PL plumage",
          "3 half",
          "1 trace",
          "0 none",
          "0 none",
          "2 light",
          "N no moult",
          "1 slight",
          "N none");

  private LongRecord() {}

  static List<View.Line> lines() {
    List<View.Line> lines = new ArrayList<>();
    for (int i = 0; i < FIELDS.size(); i++) {
      lines.add(line(i));
    }
    lines.set(2, line(2, "HY hatching year", "keyed", View.Standing.CONFIRMED));
    lines.set(VALUES.size(), line(VALUES.size(), "", "", View.Standing.ASKED));
    lines.set(17, line(17, "1B", "concluded", View.Standing.TAKEN));
    return lines;
  }

  static List<View.Line> begun() {
    List<View.Line> lines = new ArrayList<>();
    for (int i = 0; i < FIELDS.size(); i++) {
      boolean isNeeded = List.of(1, 2, 4).contains(i);
      View.Standing standing = isNeeded ? View.Standing.MISSING : View.Standing.EMPTY;
      lines.add(line(i, "", "", i == 0 ? View.Standing.ASKED : standing));
    }
    return lines;
  }

  static List<View.Line> recapture() {
    List<View.Line> lines = begun();
    lines.set(0, line(0, VALUES.get(0), "said", View.Standing.TAKEN));
    lines.set(1, line(1, "2841-55598", "keyed", View.Standing.TAKEN));
    lines.set(2, line(2, "", "", View.Standing.ASKED));
    lines.set(19, line(19, "R recapture", "concluded", View.Standing.TAKEN));
    return lines;
  }

  static List<View.Line> weighed() {
    List<View.Line> lines = lines();
    lines.set(14, line(14, "92 mm", "keyed", View.Standing.TAKEN));
    lines.set(15, line(15, "", "", View.Standing.ASKED));
    lines.set(16, line(16, "22.3 g", "measured", View.Standing.TAKEN));
    lines.set(19, line(19, "R recapture", "concluded", View.Standing.TAKEN));
    return lines;
  }

  private static View.Line line(int i) {
    return i < VALUES.size()
        ? line(i, VALUES.get(i), i % 3 == 0 ? "keyed" : "said", View.Standing.TAKEN)
        : line(i, "", "", View.Standing.EMPTY);
  }

  private static View.Line line(int i, String value, String way, View.Standing standing) {
    return new View.Line(FIELDS.get(i), LABELS.get(i), value, way, standing);
  }

  static List<View.Choice> menu() {
    List<View.Choice> menu = new ArrayList<>();
    for (String label : LABELS) {
      String number = String.format(Locale.ROOT, "%02d", menu.size() + 1);
      menu.add(new View.Choice(number, label));
    }
    for (String label :
        List.of(
            "Old band number",
            "Tail",
            "Tarsus",
            "Exposed culmen",
            "Status",
            "Release",
            "Disposition",
            "Remarks",
            "Leg gauge",
            "Bander")) {
      String number = String.format(Locale.ROOT, "%02d", menu.size() + 1);
      menu.add(new View.Choice(number, label));
    }
    menu.add(new View.Choice("+", "save record"));
    menu.add(new View.Choice("/", "let the bird go"));
    menu.add(new View.Choice("*", "read back"));
    menu.add(new View.Choice("-", "erase"));
    menu.add(new View.Choice("98", "abandon record"));
    menu.add(new View.Choice("99", "end session"));
    return menu;
  }

  static List<View.Choice> skull() {
    return List.of(
        new View.Choice("0", "none"),
        new View.Choice("1", "trace"),
        new View.Choice("2", "less than a third"),
        new View.Choice("3", "half"),
        new View.Choice("4", "greater than two thirds"),
        new View.Choice("5", "almost complete, more than 95 %"),
        new View.Choice("6", "full"),
        new View.Choice("8", "not visible"),
        new View.Choice("", "not asked for by number"));
  }

  static List<View.Choice> ages() {
    return List.of(
        new View.Choice("0", "unknown"),
        new View.Choice("4", "local"),
        new View.Choice("2", "hatching year"),
        new View.Choice("1", "after hatching year"),
        new View.Choice("5", "second year"),
        new View.Choice("6", "after second year"),
        new View.Choice("7", "third year"),
        new View.Choice("8", "after third year"));
  }

  static List<View.Choice> status() {
    List<View.Choice> status = new ArrayList<>();
    for (String state : List.of("normal wild bird", "sick, exhausted, injured")) {
      for (String part :
          List.of(
              "metal band only",
              "colored leg band",
              "neck collar",
              "two metal bands",
              "another metal band as well",
              "temporary marker, paint or dye",
              "mouth swab",
              "blood sample",
              "blood sample and marker",
              "wing or other tag")) {
        status.add(new View.Choice(Integer.toString(300 + status.size()), state + "; " + part));
      }
    }
    IntStream.range(500, 520)
        .forEach(n -> status.add(new View.Choice(Integer.toString(n), "another of the codes")));
    return status;
  }

  static List<String> history() {
    return List.of(
        "2026-09-30 QX  R  WBNU  HY  M  wing 91 mm  mass 21.9 g  net 4",
        "2026-09-12 QX  R  WBNU  HY  M  wing 91 mm  mass 21.2 g  net 4",
        "2026-08-29 QX  R  WBNU  HY  M  wing 90 mm  mass 20.8 g  net 7",
        "2026-08-15 QX  R  WBNU  HY  U  wing 90 mm  mass 20.6 g  net 4",
        "2026-07-27 QX  N  WBNU  HY  U  wing 88 mm  mass 20.1 g  net 2");
  }
}
