package org.calamus.support;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.adapter.files.DeviceFiles;
import org.calamus.adapter.files.FormFile;
import org.calamus.adapter.files.TableFiles;
import org.calamus.adapter.files.WordsFolder;
import org.calamus.core.dialogue.Setup;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.Form;
import org.calamus.core.form.SpeciesTable;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.record.BandNumber;
import org.calamus.core.rule.Policy;
import org.calamus.core.rule.Reference;
import org.calamus.core.rule.Rules;
import org.calamus.core.speech.Expected;
import org.calamus.core.speech.Grammars;
import org.calamus.core.speech.Interpreter;
import org.calamus.core.speech.Vocabulary;

/** The invented station Fenwick Marsh, with the program's own tables and vocabularies. */
public final class Fenwick {

  /** The zone of the imaginary station's clocks. */
  public static final ZoneId ZONE = ZoneId.of("UTC");

  /** A day at the station. */
  public static final LocalDate DAY = LocalDate.of(2026, 6, 20);

  private static final TableFiles TABLES = new TableFiles(Optional.empty());
  private static final SpeciesTable SPECIES = TABLES.species();
  private static final Vocabulary VOCABULARY = new WordsFolder(Optional.empty()).read();

  private Fenwick() {}

  /** The station's form. */
  public static Form form() {
    return FormFile.ofDemonstration().read(Fenwick::table);
  }

  private static CodeTable table(String key) {
    return switch (key) {
      case "species" -> SPECIES.codes();
      case "net" -> listed(key, "1", "2", "3", "12");
      case "bander", "scribe" -> listed(key, "QX", "ZB");
      default -> TABLES.codes(key);
    };
  }

  private static CodeTable listed(String name, String... codes) {
    return new CodeTable(
        name,
        Stream.of(codes).map(c -> new CodeTable.Row(c, c.matches("\\d+") ? c : "", c)).toList());
  }

  /** The published tables. */
  public static Reference reference() {
    return new Reference(SPECIES, TABLES.ageClasses(), TABLES.ageSeason(), TABLES.bandSizes());
  }

  /** What makes whole values of those given in short, on {@link #DAY}. */
  public static Expected expected(Optional<BandNumber> band) {
    return new Expected(band, DAY);
  }

  /** What the station decided. */
  public static Policy policy() {
    return new Policy(
        ZONE, Duration.ofMinutes(5), Duration.ofMinutes(10), Optional.empty(), List.of());
  }

  /** What it decided where the nets are opened at a time. */
  public static Policy policy(LocalTime netsOpenedAt) {
    Policy usual = policy();
    return new Policy(
        usual.zone(), usual.warnAfter(), usual.limit(), Optional.of(netsOpenedAt), usual.strings());
  }

  /** The station's species. */
  public static SpeciesTable species() {
    return SPECIES;
  }

  /** All that can be said. */
  public static Vocabulary vocabulary() {
    return VOCABULARY;
  }

  /** The station's balance, one of those that come with the program. */
  public static DeviceDescription balance() {
    return DeviceFiles.carried().device("two-letter-header");
  }

  /** A session's setup with the given instruments. */
  public static Setup setup(DeviceDescription... devices) {
    Form form = form();
    Map<String, DeviceDescription> byName = new java.util.HashMap<>();
    for (DeviceDescription device : devices) {
      byName.put(device.name(), device);
    }
    return new Setup(
        form,
        new Rules(form, reference(), policy()),
        new Interpreter(VOCABULARY, form),
        new Grammars(VOCABULARY.within(form)),
        new Setup.Station("Fenwick Marsh", "QX", ZONE),
        byName);
  }
}
