package org.calamus.benchmark;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.core.dialogue.Effect;
import org.calamus.core.dialogue.Event;
import org.calamus.core.form.CodeSet;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.rule.BandString;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.calamus.support.WholeRecord;

/**
 * How many keys of a numeric keypad a record takes, beside the characters that come to stand in it:
 * those of the values as they are stored, a band number with its hyphen, a code in its letters.
 */
public final class Keystrokes {

  private static final List<BandString> STRINGS =
      List.of(new BandString("1B", band("2841-55601"), band("2841-55700")));

  private Keystrokes() {}

  /**
   * A record and what it took.
   *
   * @param name what it was
   * @param keys the keys struck
   * @param given the characters of the values that were struck
   * @param stored the characters of all values in the record
   * @param fields how many values were struck
   */
  public record Cost(String name, int keys, int given, int stored, int fields) {}

  /** The session of a bird with its measures, and those of the other kinds of capture. */
  public static List<Cost> costs() {
    return List.of(
        cost("new, required fields alone", "", "7270\n601\n5\n*4\n++"),
        cost(
            "new, all sixteen fields asked",
            "",
            "7270\n601\n5\n2\n4\n2\n6\n1\n0\n0\n0\n0\n1\n92\n12\n22.3\n\n"),
        cost(
            "recapture, wing and mass",
            "7270\n601\n5\n*4\n++",
            "+02284155601\n7270\n5\n*4\n*+1792\n+2122.3\n++"),
        cost("foreign band", "", "+013\n123456789\n123456789\n5810\n1\n*0\n++"),
        cost("replaced", "7270\n601\n5\n*4\n++", "+014\n284155601\n7270\n602\n5\n*4\n++"),
        cost("without a band", "", "+016\n6190\n++"),
        cost("band lost", "", "+017\n601\n++"));
  }

  private static Cost cost(String name, String before, String keys) {
    Talk talk =
        new Talk(
            WholeRecord.setup(CodeSet.LABORATORY, STRINGS),
            Known.of(STRINGS, List.of(), Fenwick.ZONE));
    talk.event(new Event.Started(talk.now(), Optional.empty())).keys(before);
    int saved = talk.saved();
    talk.keys(keys);
    if (talk.saved() != saved + 1) {
      throw new AssertionError(name + " was not saved: " + talk.view().message());
    }
    CaptureRecord record = lastSaved(talk);
    int given = 0;
    int stored = 0;
    int fields = 0;
    for (var entry : record.entries().values()) {
      int characters = entry.value().text().length();
      boolean isStruck = entry.provenance().way().word().equals("keyed");
      stored += characters;
      given += isStruck ? characters : 0;
      fields += isStruck ? 1 : 0;
    }
    return new Cost(name, keys.length(), given, stored, fields);
  }

  private static CaptureRecord lastSaved(Talk talk) {
    List<CaptureRecord> saved = new ArrayList<>();
    for (Effect effect : talk.effects()) {
      if (effect instanceof Effect.SaveRecord save) {
        saved.add(save.record());
      }
    }
    return saved.get(saved.size() - 1);
  }

  private static BandNumber band(String text) {
    return BandNumber.parse(text).orElseThrow();
  }

  /** Prints the table. */
  public static void main(String[] args) {
    print(System.out);
  }

  static void print(PrintStream out) {
    out.printf(
        Locale.ROOT,
        "%-32s %6s %7s %11s %13s%n",
        "record",
        "keys",
        "fields",
        "characters",
        "keys/field");
    for (Cost cost : costs()) {
      out.printf(
          Locale.ROOT,
          "%-32s %6d %7d %11d %13.1f%n",
          cost.name(),
          cost.keys(),
          cost.fields(),
          cost.stored(),
          (double) cost.keys() / cost.fields());
    }
  }
}
