package org.calamus.core.speech;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.BandNumber;

/**
 * What makes a whole value of one that is given in short.
 *
 * @param band the band that last digits complete, such as the next of the string; empty where none
 *     is known
 * @param today the day at the station: a day without its year is the last such day up to then
 */
public record Expected(Optional<BandNumber> band, LocalDate today) {

  /** Checks that both parts are there. */
  public Expected {
    Objects.requireNonNull(band);
    Objects.requireNonNull(today);
  }
}
