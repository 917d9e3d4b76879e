package org.calamus.boot;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.calamus.core.form.CodeTable;
import org.calamus.port.StationSettings;

/** The code tables that a station makes of its own people and nets. */
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
    return new CodeTable("net", nets.stream().map(StationLists::row).toList());
  }

  /** Those who band and write, the session's bander first. */
  CodeTable people(String name) {
    Set<String> initials = new LinkedHashSet<>();
    initials.add(settings.bander());
    initials.addAll(settings.protocol().people());
    return new CodeTable(name, initials.stream().map(StationLists::row).toList());
  }

  private static CodeTable.Row row(String name) {
    return new CodeTable.Row(name, name.matches("\\d+") ? name : "", name);
  }
}
