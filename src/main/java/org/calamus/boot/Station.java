package org.calamus.boot;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.calamus.adapter.files.DeviceFiles;
import org.calamus.adapter.files.StationFile;
import org.calamus.adapter.files.TableFiles;
import org.calamus.adapter.files.WordsFolder;
import org.calamus.core.dialogue.Setup;
import org.calamus.core.form.Form;
import org.calamus.core.form.LandbirdForm;
import org.calamus.core.form.SpeciesTable;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.rule.Rules;
import org.calamus.core.speech.Grammars;
import org.calamus.core.speech.Interpreter;
import org.calamus.core.speech.Vocabulary;
import org.calamus.core.speech.VocabularyCheck;
import org.calamus.port.SettingsException;
import org.calamus.port.StationSettings;
import org.calamus.port.StationSettings.InstrumentAt;

/**
 * Everything that people wrote for a session, read and checked.
 *
 * @param settings what the station wrote about itself
 * @param vocabulary all that can be said
 * @param form the fields
 * @param species the species
 * @param devices the descriptions of the instruments, by name
 */
record Station(
    StationSettings settings,
    Vocabulary vocabulary,
    Form form,
    SpeciesTable species,
    Map<String, DeviceDescription> devices) {

  /**
   * Reads the files of a data folder, and the program's own where there is none.
   *
   * @param folders where they are
   * @param instruments instruments named on the command line; where there is one, those of the
   *     station's file are left out
   */
  static Station read(Folders folders, List<InstrumentAt> instruments) {
    StationSettings written = new StationFile(folders.station(), ZoneId.systemDefault()).read();
    List<InstrumentAt> used = instruments.isEmpty() ? written.instruments() : instruments;
    return of(
        new StationSettings(
            written.place(),
            written.bander(),
            written.zone(),
            written.microphone(),
            written.voiceCommand(),
            used),
        folders);
  }

  /** Completes given settings with the vocabularies, tables and devices of a data folder. */
  static Station of(StationSettings settings, Folders folders) {
    TableFiles tables = new TableFiles(Optional.of(folders.tables()));
    SpeciesTable species = tables.species();
    Form form = LandbirdForm.of(species, tables.codes("age"), tables.codes("sex"));
    Vocabulary vocabulary = new WordsFolder(Optional.of(folders.words())).read();
    List<String> problems = VocabularyCheck.problems(vocabulary, form);
    if (!problems.isEmpty()) {
      throw new SettingsException(problems);
    }
    DeviceFiles files = DeviceFiles.in(folders.devices());
    Map<String, DeviceDescription> devices = new TreeMap<>();
    settings.instruments().forEach(i -> devices.put(i.device(), files.device(i.device())));
    return new Station(settings, vocabulary, form, species, devices);
  }

  /** The same station with another place and bander where they are given. */
  Station called(Optional<String> place, Optional<String> bander) {
    StationSettings renamed =
        new StationSettings(
            place.orElse(settings.place()),
            bander.orElse(settings.bander()),
            settings.zone(),
            settings.microphone(),
            settings.voiceCommand(),
            settings.instruments());
    return new Station(renamed, vocabulary, form, species, devices);
  }

  /** What the dialogue works with; devices by the names they have in their descriptions. */
  Setup setup() {
    Map<String, DeviceDescription> byName = new TreeMap<>();
    devices.values().forEach(d -> byName.put(d.name(), d));
    return new Setup(
        form,
        new Rules(form, species),
        new Interpreter(vocabulary, form),
        new Grammars(vocabulary),
        new Setup.Station(settings.place(), settings.bander(), settings.zone()),
        byName);
  }
}
