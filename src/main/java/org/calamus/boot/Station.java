package org.calamus.boot;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.calamus.adapter.files.DeviceFiles;
import org.calamus.adapter.files.FormFile;
import org.calamus.adapter.files.StationFile;
import org.calamus.adapter.files.TableFiles;
import org.calamus.adapter.files.WordsFolder;
import org.calamus.core.dialogue.Setup;
import org.calamus.core.form.Form;
import org.calamus.core.form.SpeciesTable;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.record.BandNumber;
import org.calamus.core.rule.BandString;
import org.calamus.core.rule.Policy;
import org.calamus.core.rule.Reference;
import org.calamus.core.rule.Rules;
import org.calamus.core.speech.Grammars;
import org.calamus.core.speech.Interpreter;
import org.calamus.core.speech.Vocabulary;
import org.calamus.core.speech.VocabularyCheck;
import org.calamus.port.Forms;
import org.calamus.port.Protocol;
import org.calamus.port.SettingsException;
import org.calamus.port.StationSettings;

/**
 * Everything that people wrote for a session, read and checked.
 *
 * @param settings what the station wrote about itself
 * @param vocabulary all that can be said
 * @param form the fields
 * @param reference the published tables
 * @param devices the descriptions of the instruments, by name
 */
record Station(
    StationSettings settings,
    Vocabulary vocabulary,
    Form form,
    Reference reference,
    Map<String, DeviceDescription> devices) {

  /**
   * Reads the files of a data folder, and the program's own where there is none.
   *
   * @param folders where they are
   * @param wanted what is wanted in place of what the station wrote, before anything rests on it
   */
  static Station read(Folders folders, UnaryOperator<StationSettings> wanted) {
    StationSettings written = new StationFile(folders.station(), ZoneId.systemDefault()).read();
    return of(wanted.apply(written), folders, FormFile.in(Optional.of(folders.tables())));
  }

  /** Completes given settings with the vocabularies, tables and devices of a data folder. */
  static Station of(StationSettings settings, Folders folders, Forms forms) {
    TableFiles tables = new TableFiles(Optional.of(folders.tables()));
    SpeciesTable species = tables.species();
    Reference reference =
        new Reference(species, tables.ageClasses(), tables.ageSeason(), tables.bandSizes());
    StationLists lists = new StationLists(settings);
    Form form =
        forms.read(
            key ->
                switch (key) {
                  case "species" -> species.codes();
                  case "net" -> lists.nets();
                  case "bander", "scribe" -> lists.people(key);
                  default -> tables.codes(key, settings.codes());
                });
    List<String> problems = new ArrayList<>();
    Vocabulary vocabulary =
        new WordsFolder(Optional.of(folders.words())).read().with(lists.forms(), problems);
    problems.addAll(VocabularyCheck.problems(vocabulary, form));
    if (!problems.isEmpty()) {
      throw new SettingsException(problems);
    }
    DeviceFiles files = DeviceFiles.in(folders.devices());
    Map<String, DeviceDescription> devices = new TreeMap<>();
    settings.instruments().forEach(i -> devices.put(i.device(), files.device(i.device())));
    return new Station(settings, vocabulary, form, reference, devices);
  }

  /** What the dialogue works with; devices by the names they have in their descriptions. */
  Setup setup() {
    Map<String, DeviceDescription> byName = new TreeMap<>();
    devices.values().forEach(d -> byName.put(d.name(), d));
    return new Setup(
            form,
            new Rules(form, reference, policy()),
            new Interpreter(vocabulary, form),
            new Grammars(vocabulary.within(form)),
            new Setup.Station(
                settings.place(), settings.bander(), settings.zone(), settings.protocol().scribe()),
            byName)
        .heeding(settings.heed())
        .netting(new StationLists(settings).named());
  }

  private Policy policy() {
    Protocol protocol = settings.protocol();
    return new Policy(
        settings.zone(),
        protocol.warnAfter(),
        protocol.limit(),
        protocol.netsOpenedAt(),
        protocol.strings().stream().map(Station::string).toList());
  }

  private static BandString string(Protocol.Issued issued) {
    return new BandString(
        issued.size(),
        BandNumber.parse(issued.first()).orElseThrow(),
        BandNumber.parse(issued.last()).orElseThrow());
  }
}
