package org.calamus.core.form;

import java.util.List;
import java.util.Optional;

/**
 * The species that the station knows.
 *
 * @param species in the table's order
 */
public record SpeciesTable(List<Species> species) {

  /** Copies the list. */
  public SpeciesTable {
    species = List.copyOf(species);
  }

  /** The species of a code. */
  public Optional<Species> byCode(String code) {
    return species.stream().filter(s -> s.code().equals(code)).findFirst();
  }

  /** The table as the codes of a field. */
  public CodeTable codes() {
    return new CodeTable(
        "species",
        species.stream().map(s -> new CodeTable.Row(s.code(), s.number(), s.name())).toList());
  }
}
