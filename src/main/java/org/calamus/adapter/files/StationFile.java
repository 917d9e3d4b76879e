package org.calamus.adapter.files;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.form.CodeSet;
import org.calamus.port.SettingsException;
import org.calamus.port.StationSettings;
import org.calamus.port.Stations;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * The file {@code station.toml} in the data folder.
 *
 * <pre>{@code
 * place = 'Fenwick Marsh'
 * bander = 'QX'
 * zone = 'America/New_York'      # where left out, the computer's
 * microphone = 'headset'         # a part of its name; where left out, the system's choice
 * codes = 'euring'               # or 'laboratory', as where it is left out
 * voice = 'flite -voice slt -t'  # where left out, the built-in voice
 *
 * nets = ['1', '7a', 'SP = south pond']  # a code, and how it is said; where left out, 1 to 99
 * net-lengths = ['SP = 18']      # in metres, of nets that are not 12 m long
 * people = ['QX', 'ZB']          # who bands and who writes
 * scribe = 'ZB'                  # who writes, where it is not the bander
 * warn-after-minutes = 5         # a bird in the hand
 * limit-minutes = 10
 * nets-opened = '06:15'
 * talk = 'key'                   # or 'open', as where it is left out
 * bystanders = true              # other people talk beside the table: the talk key
 * tones = false                  # the short tones; where left out, they sound
 * tone-volume = 60               # percent
 * pause-after-minutes = 5        # without a bird; 0 where it never pauses by itself
 * keep-utterances = true         # what is said is kept; where left out, it is not
 * utterances-megabytes = 500     # how much of it
 * forget-voices = true           # nothing is learnt of the banders' voices
 *
 * [[string]]                     # a string of bands on hand
 * size = '1B'
 * first = '2841-55601'
 * last = '2841-55700'
 *
 * [[instrument]]
 * port = '/dev/ttyUSB0'
 * device = 'two-letter-header'
 * }</pre>
 */
public final class StationFile implements Stations {

  private static final Set<String> KEYS =
      Set.of("place", "bander", "zone", "microphone", "voice", "codes", "instrument");

  private final Path file;
  private final ZoneId usualZone;

  /**
   * Over a file that need not exist.
   *
   * @param file the file
   * @param usualZone the zone where the file names none
   */
  public StationFile(Path file, ZoneId usualZone) {
    this.file = file;
    this.usualZone = usualZone;
  }

  @Override
  public StationSettings read() {
    if (!Files.exists(file)) {
      return new StationSettings(
          "station", "-", usualZone, Optional.empty(), Optional.empty(), List.of());
    }
    String text = String.join("\n", TextSource.lines(file));
    TomlParseResult toml = Toml.parse(text);
    List<String> problems = new ArrayList<>();
    toml.errors()
        .forEach(e -> problems.add(at(e.position()) + e.getMessage() + "; correct the line."));
    if (problems.isEmpty()) {
      StationSettings settings = settings(toml, problems);
      if (problems.isEmpty()) {
        return settings;
      }
    }
    throw new SettingsException(problems);
  }

  private StationSettings settings(TomlParseResult toml, List<String> problems) {
    for (String key : toml.keySet()) {
      if (!KEYS.contains(key) && !isOfSection(key)) {
        problems.add(
            at(toml.inputPositionOf(List.of(key)))
                + "\""
                + key
                + "\" is no setting; see the user guide.");
      }
    }
    TomlSection root = TomlSection.root(file.toString(), toml, problems);
    return new StationSettings(
        text(toml, "place", problems).orElse("station"),
        text(toml, "bander", problems).orElse("-"),
        zone(toml, problems),
        text(toml, "microphone", problems),
        text(toml, "voice", problems),
        instruments(toml, problems),
        ProtocolSection.read(root),
        codes(toml, problems),
        HeedSection.read(root),
        KeepingSection.read(root),
        TonesSection.read(root));
  }

  private static boolean isOfSection(String key) {
    return ProtocolSection.KEYS.contains(key)
        || HeedSection.KEYS.contains(key)
        || KeepingSection.KEYS.contains(key)
        || TonesSection.KEYS.contains(key);
  }

  private CodeSet codes(TomlTable toml, List<String> problems) {
    Optional<String> name = text(toml, "codes", problems);
    Optional<CodeSet> set = name.flatMap(CodeSet::ofKey);
    if (name.isPresent() && set.isEmpty()) {
      problems.add(
          at(toml.inputPositionOf("codes"))
              + "\""
              + name.get()
              + "\" is no code set; write laboratory or euring.");
    }
    return set.orElse(CodeSet.LABORATORY);
  }

  private Optional<String> text(TomlTable table, String key, List<String> problems) {
    Object value = table.get(List.of(key));
    if (value == null) {
      return Optional.empty();
    }
    if (value instanceof String text && !text.isBlank()) {
      return Optional.of(text.strip());
    }
    problems.add(at(table.inputPositionOf(List.of(key))) + key + " must be a text in quotes.");
    return Optional.empty();
  }

  private ZoneId zone(TomlTable toml, List<String> problems) {
    Optional<String> name = text(toml, "zone", problems);
    if (name.isEmpty()) {
      return usualZone;
    }
    try {
      return ZoneId.of(name.get());
    } catch (DateTimeException e) {
      problems.add(
          at(toml.inputPositionOf("zone"))
              + "\""
              + name.get()
              + "\" is no time zone; write it as America/New_York.");
      return usualZone;
    }
  }

  private List<StationSettings.InstrumentAt> instruments(TomlTable toml, List<String> problems) {
    List<StationSettings.InstrumentAt> found = new ArrayList<>();
    Object value = toml.get(List.of("instrument"));
    if (value == null) {
      return found;
    }
    if (!(value instanceof TomlArray all)) {
      problems.add(
          at(toml.inputPositionOf("instrument"))
              + "an instrument begins with a line [[instrument]], in double brackets.");
      return found;
    }
    for (int i = 0; i < all.size(); i++) {
      if (!(all.get(i) instanceof TomlTable one)) {
        problems.add(at(all.inputPositionOf(i)) + "an instrument has a port and a device.");
        continue;
      }
      instrument(one, at(all.inputPositionOf(i)), problems).ifPresent(found::add);
    }
    return found;
  }

  private Optional<StationSettings.InstrumentAt> instrument(
      TomlTable one, String where, List<String> problems) {
    for (String key : one.keySet()) {
      if (!key.equals("port") && !key.equals("device")) {
        problems.add(
            at(one.inputPositionOf(List.of(key)))
                + "\""
                + key
                + "\" is no setting of an instrument; it has a port and a device.");
      }
    }
    if (!one.contains(List.of("port")) || !one.contains(List.of("device"))) {
      problems.add(where + "an instrument needs a port and a device.");
    }
    Optional<String> port = text(one, "port", problems);
    Optional<String> device = text(one, "device", problems);
    return port.flatMap(p -> device.map(d -> new StationSettings.InstrumentAt(p, d)));
  }

  private String at(TomlPosition position) {
    return position == null ? file + ": " : file + ":" + position.line() + ": ";
  }
}
