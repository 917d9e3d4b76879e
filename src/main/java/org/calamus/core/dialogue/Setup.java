package org.calamus.core.dialogue;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.effort.Net;
import org.calamus.core.form.Form;
import org.calamus.core.hearing.PastChecks;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.readback.Phrases;
import org.calamus.core.record.BandNumber;
import org.calamus.core.rule.Rules;
import org.calamus.core.speech.Command;
import org.calamus.core.speech.Expected;
import org.calamus.core.speech.Grammars;
import org.calamus.core.speech.Interpreter;
import org.calamus.core.speech.SpokenForm;
import org.calamus.core.speech.Token;

/**
 * What a session works with; it does not change while the session runs.
 *
 * @param form the fields and their order
 * @param rules the rules
 * @param interpreter makes meaning of words
 * @param grammars what to listen for
 * @param station the place and the people
 * @param devices the instruments, by name
 * @param heed how the station wants to be listened to
 * @param nets the nets that the station names; none where they are numbered
 * @param checks what the checks of microphones concluded; empty where no microphone is listened to
 */
public record Setup(
    Form form,
    Rules rules,
    Interpreter interpreter,
    Grammars grammars,
    Station station,
    Map<String, DeviceDescription> devices,
    Heed heed,
    List<Net> nets,
    Optional<PastChecks> checks) {

  /** Copies the map. */
  public Setup {
    Objects.requireNonNull(form);
    Objects.requireNonNull(rules);
    Objects.requireNonNull(interpreter);
    Objects.requireNonNull(grammars);
    Objects.requireNonNull(station);
    Objects.requireNonNull(heed);
    Objects.requireNonNull(checks);
    devices = Map.copyOf(devices);
    nets = List.copyOf(nets);
  }

  /** A setup of a station that did not say how it wants to be listened to. */
  public Setup(
      Form form,
      Rules rules,
      Interpreter interpreter,
      Grammars grammars,
      Station station,
      Map<String, DeviceDescription> devices) {
    this(
        form,
        rules,
        interpreter,
        grammars,
        station,
        devices,
        Heed.usual(),
        List.of(),
        Optional.empty());
  }

  /** The same, listened to in another way. */
  public Setup heeding(Heed other) {
    return new Setup(form, rules, interpreter, grammars, station, devices, other, nets, checks);
  }

  /** The same with nets that the station names. */
  public Setup netting(List<Net> named) {
    return new Setup(form, rules, interpreter, grammars, station, devices, heed, named, checks);
  }

  /** The same, listening to a microphone; what its checks concluded is told. */
  public Setup hearing(PastChecks past) {
    return new Setup(
        form, rules, interpreter, grammars, station, devices, heed, nets, Optional.of(past));
  }

  /** The words of a command, as the vocabulary has them first; empty where it has none. */
  Optional<String> words(Command command) {
    return grammars.vocabulary().forms().stream()
        .filter(f -> f.meaning() instanceof Token.Order order && order.command() == command)
        .map(SpokenForm::text)
        .findFirst();
  }

  /**
   * What makes whole values of those given in short.
   *
   * @param band the band that last digits complete; empty where none is known
   * @param at when they are given
   */
  Expected expected(Optional<BandNumber> band, Instant at) {
    return new Expected(band, at.atZone(station.zone()).toLocalDate());
  }

  /** The words for values. */
  public Phrases phrases() {
    return new Phrases(form);
  }

  /**
   * Where and by whom.
   *
   * @param place the station's name
   * @param bander the bander's initials
   * @param zone the station's time zone, for the screen; records are kept in UTC
   * @param scribe the initials of who writes; empty where nobody does besides the bander
   */
  public record Station(String place, String bander, ZoneId zone, Optional<String> scribe) {

    /** A station where the bander writes. */
    public Station(String place, String bander, ZoneId zone) {
      this(place, bander, zone, Optional.empty());
    }
  }
}
