package org.calamus.core.summary;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.record.Captures;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;

/**
 * How many birds of a species were caught on a day and since the beginning of its year.
 *
 * @param species the code; empty for birds of which none was given
 * @param day the birds of the day
 * @param season the birds from the first of January to the day, those of the day among them; ages
 *     are stated in calendar years as well, and a station's season ends with the year. A design
 *     decision
 */
public record SpeciesCount(Optional<String> species, Tally day, Tally season) {

  private static final Comparator<SpeciesCount> MOST_FIRST =
      Comparator.comparing((SpeciesCount c) -> -c.day().total())
          .thenComparing(c -> -c.season().total())
          .thenComparing(c -> c.species().orElse("~"));

  /**
   * The species of a day and its season, those with most birds on the day first.
   *
   * @param captures all captures
   * @param day the date at the station
   * @param zone the station's zone
   */
  public static List<SpeciesCount> of(Captures captures, LocalDate day, ZoneId zone) {
    Map<Optional<String>, List<PastCapture>> bySpecies = new HashMap<>();
    for (PastCapture capture : captures.between(day.withDayOfYear(1), day, zone)) {
      if (capture.kind().hasBird()) {
        bySpecies
            .computeIfAbsent(capture.code(FieldId.SPECIES), s -> new ArrayList<>())
            .add(capture);
      }
    }
    List<SpeciesCount> counts = new ArrayList<>();
    bySpecies.forEach(
        (species, season) -> {
          List<PastCapture> today = season.stream().filter(c -> c.day(zone).equals(day)).toList();
          counts.add(new SpeciesCount(species, Tally.of(today), Tally.of(season)));
        });
    counts.sort(MOST_FIRST);
    return List.copyOf(counts);
  }

  /** All species together. */
  public static SpeciesCount all(List<SpeciesCount> counts) {
    Tally day = Tally.NONE;
    Tally season = Tally.NONE;
    for (SpeciesCount count : counts) {
      day = day.plus(count.day);
      season = season.plus(count.season);
    }
    return new SpeciesCount(Optional.empty(), day, season);
  }
}
