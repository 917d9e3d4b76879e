package org.calamus.adapter.files;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.calamus.core.record.BandNumber;
import org.calamus.port.Protocol;

/** Reads what the station file says about the station's work. */
final class ProtocolSection {

  /** The keys of the station file that are about the station's work. */
  static final Set<String> KEYS =
      Set.of(
          "nets",
          "net-lengths",
          "people",
          "scribe",
          "warn-after-minutes",
          "limit-minutes",
          "nets-opened",
          "string");

  /** A code and metres, such as {@code SP = 18}; nobody strings a net longer than that. */
  private static final Pattern LENGTH =
      Pattern.compile("(\\S.*?)\\s*=\\s*([1-9]\\d?(?:\\.\\d{1,2})?)");

  private static final int LONGEST_MINUTES = 240;

  private ProtocolSection() {}

  /** Reads it; mistakes are noted in the section. */
  static Protocol read(TomlSection root) {
    Protocol usual = Protocol.usual();
    int warn =
        root.wholeOr("warn-after-minutes", 1, LONGEST_MINUTES, (int) usual.warnAfter().toMinutes());
    int limit = root.wholeOr("limit-minutes", 1, LONGEST_MINUTES, (int) usual.limit().toMinutes());
    if (limit < warn) {
      root.mistake(
          root.has("limit-minutes") ? "limit-minutes" : "warn-after-minutes",
          "The warning must come before the limit: "
              + warn
              + " minutes are more than "
              + limit
              + ".");
      return usual;
    }
    List<String> nets = listed(root, "nets");
    return new Protocol(
        nets,
        listed(root, "people"),
        strings(root),
        Duration.ofMinutes(warn),
        Duration.ofMinutes(limit),
        opened(root),
        lengths(root, nets),
        Optional.of(root.textOr("scribe", "").strip()).filter(s -> !s.isEmpty()));
  }

  /** The lengths of the nets that are not the usual one, in metres, by their codes. */
  private static Map<String, BigDecimal> lengths(TomlSection root, List<String> nets) {
    List<String> codes = nets.stream().map(n -> n.split("=", 2)[0].strip()).toList();
    Map<String, BigDecimal> lengths = new TreeMap<>();
    for (String entry : root.has("net-lengths") ? root.words("net-lengths") : List.<String>of()) {
      Matcher length = LENGTH.matcher(entry.strip());
      if (!length.matches()) {
        root.mistake(
            "net-lengths", "\"" + entry + "\" is not a net and its metres; write it as 'SP = 18'.");
      } else if (!codes.contains(length.group(1))) {
        root.mistake(
            "net-lengths",
            "\"" + length.group(1) + "\" is not among the nets; name it there, too.");
      } else {
        lengths.put(length.group(1), new BigDecimal(length.group(2)));
      }
    }
    return lengths;
  }

  /** Codes, each alone or with a spoken form behind an equals sign. */
  private static List<String> listed(TomlSection root, String key) {
    List<String> entries = root.words(key);
    for (String entry : entries) {
      if (entry.startsWith("=") || entry.endsWith("=")) {
        root.mistake(key, "\"" + entry + "\" is not whole; write it as 'SP = south pond'.");
      }
    }
    return entries;
  }

  private static Optional<LocalTime> opened(TomlSection root) {
    String text = root.textOr("nets-opened", "");
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(LocalTime.parse(text));
    } catch (DateTimeException e) {
      root.mistake("nets-opened", "\"" + text + "\" is no time of day; write it as '06:15'.");
      return Optional.empty();
    }
  }

  private static List<Protocol.Issued> strings(TomlSection root) {
    List<Protocol.Issued> strings = new ArrayList<>();
    if (!root.has("string")) {
      return strings;
    }
    for (TomlSection section : root.sections("string")) {
      section.allowOnly(Set.of("size", "first", "last"));
      String size = section.text("size");
      String first = section.text("first");
      String last = section.text("last");
      Optional<BandNumber> from = BandNumber.parse(first);
      Optional<BandNumber> to = BandNumber.parse(last);
      if (from.isEmpty() || to.isEmpty()) {
        section.mistake(from.isEmpty() ? "first" : "last", "This is not a band number.");
      } else if (!from.get().prefix().equals(to.get().prefix())
          || from.get().compareTo(to.get()) > 0) {
        section.mistake("last", "The last band of a string comes after its first, on one prefix.");
      } else {
        strings.add(new Protocol.Issued(size, from.get().text(), to.get().text()));
      }
    }
    return strings;
  }
}
