package org.calamus.boot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.calamus.core.effort.Net;
import org.calamus.core.form.CodeTable;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.SpokenForm;
import org.calamus.core.speech.Token;
import org.calamus.port.StationSettings;

/**
 * The code tables that a station makes of its own people and nets, and how they are said.
 *
 * <p>A net and a person is a code, such as {@code 7a} or {@code QX}, which is said in digits and
 * letters; or a code and a spoken form, {@code SP = south pond}, which is said and read back
 * instead. A code that is no number gets one, by which it is struck on a keypad.
 */
final class StationLists {

  private static final int MOST_NETS = 99;

  private final StationSettings settings;

  StationLists(StationSettings settings) {
    this.settings = settings;
  }

  /** The nets; numbers from 1 where the station names none. */
  CodeTable nets() {
    List<String> named = settings.protocol().nets();
    List<String> nets =
        named.isEmpty()
            ? IntStream.rangeClosed(1, MOST_NETS).mapToObj(String::valueOf).toList()
            : named;
    return table("net", nets);
  }

  /** The nets that the station names, with their lengths; none where they are numbered. */
  List<Net> named() {
    return settings.protocol().nets().stream().map(this::net).toList();
  }

  private Net net(String entry) {
    String code = code(entry);
    String said = said(entry);
    return new Net(
        code,
        said.isEmpty() ? code : said,
        settings.protocol().netLengths().getOrDefault(code, Net.USUAL_METRES));
  }

  /** Those who band and write, the session's bander first, then its scribe. */
  CodeTable people(String name) {
    List<String> all = new ArrayList<>();
    List<String> listed = settings.protocol().people();
    Stream.concat(Stream.of(settings.bander()), settings.protocol().scribe().stream())
        .map(one -> listed.stream().filter(p -> code(p).equals(one)).findFirst().orElse(one))
        .forEach(all::add);
    all.addAll(listed);
    return table(name, all);
  }

  private static CodeTable table(String name, List<String> entries) {
    Map<String, CodeTable.Row> rows = new LinkedHashMap<>();
    int number = firstFree(entries);
    for (String entry : entries) {
      String code = code(entry);
      if (rows.containsKey(code)) {
        continue;
      }
      String said = said(entry);
      String digits = isNumber(code) ? code : String.valueOf(number++);
      rows.put(code, new CodeTable.Row(code, digits, said.isEmpty() ? code : said));
    }
    return new CodeTable(name, List.copyOf(rows.values()));
  }

  private static boolean isNumber(String code) {
    return code.matches("\\d{1,6}");
  }

  /**
   * The number by which the first code that is none is struck on a keypad: 1, or the first behind a
   * hundred that no code reaches where codes begin with digits, so that nobody strikes 7 for 7a.
   */
  private static int firstFree(List<String> entries) {
    List<String> codes = entries.stream().map(StationLists::code).toList();
    if (codes.stream().noneMatch(c -> c.matches("\\d.*"))) {
      return 1;
    }
    int most =
        codes.stream().filter(StationLists::isNumber).mapToInt(Integer::parseInt).max().orElse(0);
    return (most / 100 + 1) * 100 + 1;
  }

  /** The spoken forms that the station gives for its nets and people. */
  List<SpokenForm> forms() {
    Set<SpokenForm> forms = new LinkedHashSet<>();
    settings.protocol().nets().forEach(n -> form(Set.of(FieldId.NET), n).forEach(forms::add));
    settings
        .protocol()
        .people()
        .forEach(p -> form(Set.of(FieldId.BANDER, FieldId.SCRIBE), p).forEach(forms::add));
    return List.copyOf(forms);
  }

  private static Stream<SpokenForm> form(Set<FieldId> fields, String entry) {
    String said = said(entry);
    return said.isEmpty()
        ? Stream.empty()
        : Stream.of(
            new SpokenForm(
                Arrays.asList(said.split(" ")),
                new Token.CodeWords(fields, code(entry)),
                new SpokenForm.Section("station", false, false, false),
                "station.toml"));
  }

  private static String code(String entry) {
    return entry.split("=", 2)[0].strip();
  }

  /** The spoken form of an entry; empty where it has none. */
  private static String said(String entry) {
    String[] parts = entry.split("=", 2);
    return parts.length == 1
        ? ""
        : parts[1].strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
  }
}
