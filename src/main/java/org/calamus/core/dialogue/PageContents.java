package org.calamus.core.dialogue;

import java.time.LocalDate;
import java.util.Optional;
import org.calamus.core.rule.Known;

/** Makes what the pages say. */
final class PageContents {

  private final SessionPage session;
  private final RecordsPage records;
  private final RecordPage record;
  private final StringsPage strings;
  private final SpeciesPage species;
  private final EffortPage effort;
  private final CommandsPage commands;

  PageContents(Setup setup) {
    this.session = new SessionPage(setup);
    this.records = new RecordsPage(setup);
    this.record = new RecordPage(setup);
    this.strings = new StringsPage(setup);
    this.species = new SpeciesPage(setup);
    this.effort = new EffortPage(setup);
    this.commands = new CommandsPage(setup);
  }

  /** What a page says now. */
  PageContent of(State state, PageName name) {
    switch (name) {
      case SESSION:
        return session.of(state);
      case RECORDS:
        return records.of(state);
      case STRINGS:
        return strings.of(state);
      case SPECIES:
        return species.of(state);
      case EFFORT:
        return effort.of(state);
      case COMMANDS:
        return commands.of(state);
      default:
        throw new AssertionError(name);
    }
  }

  /** What a place of the pages says now. */
  PageContent of(State state, Browsing here) {
    Optional<Long> shown = here.record();
    if (shown.isPresent()) {
      return record.of(state, shown.get(), here.trail());
    }
    return here.opened().map(o -> of(state, o)).orElseGet(() -> of(state, here.name()));
  }

  /** What is opened from a row. */
  PageContent of(State state, PageRow.Subject subject) {
    if (subject instanceof PageRow.Subject.OfRecord of) {
      return record.of(state, of.id(), Optional.empty());
    }
    if (subject instanceof PageRow.Subject.OfString string) {
      return strings.opened(state, string.string());
    }
    if (subject instanceof PageRow.Subject.OfSpecies of) {
      return records.ofSpecies(state, of.code());
    }
    throw new AssertionError(subject);
  }

  /** What all saved records tell, one that is being corrected among them as it was saved. */
  static Known known(State state) {
    return state.desk().correction().map(Correction::known).orElseGet(state::known);
  }

  /** The date at the station. */
  static LocalDate today(Setup setup, State state) {
    return state.console().now().atZone(setup.station().zone()).toLocalDate();
  }
}
