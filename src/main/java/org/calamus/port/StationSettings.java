package org.calamus.port;

import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.dialogue.Heed;
import org.calamus.core.form.CodeSet;

/**
 * What a station wrote down about itself.
 *
 * @param place its name, as it stands in the records
 * @param bander the bander's initials
 * @param zone its time zone
 * @param microphone a part of the microphone's name; empty for the system's own choice
 * @param voiceCommand a command that speaks its last argument; empty for the built-in voice
 * @param instruments the instruments and their ports
 * @param protocol what it decided about its work
 * @param codes whose codes it uses
 * @param heed how it wants to be listened to
 * @param keeping whether it keeps what is said
 * @param tones whether and how loud the short tones sound
 */
public record StationSettings(
    String place,
    String bander,
    ZoneId zone,
    Optional<String> microphone,
    Optional<String> voiceCommand,
    List<InstrumentAt> instruments,
    Protocol protocol,
    CodeSet codes,
    Heed heed,
    KeepUtterances keeping,
    ToneSettings tones) {

  /** Copies the list. */
  public StationSettings {
    Objects.requireNonNull(place);
    Objects.requireNonNull(bander);
    Objects.requireNonNull(zone);
    Objects.requireNonNull(protocol);
    Objects.requireNonNull(codes);
    Objects.requireNonNull(heed);
    Objects.requireNonNull(keeping);
    Objects.requireNonNull(tones);
    instruments = List.copyOf(instruments);
  }

  /** Settings of a station that decided nothing about its work. */
  public StationSettings(
      String place,
      String bander,
      ZoneId zone,
      Optional<String> microphone,
      Optional<String> voiceCommand,
      List<InstrumentAt> instruments) {
    this(place, bander, zone, microphone, voiceCommand, instruments, Protocol.usual());
  }

  /** Settings of a station that uses the Laboratory's codes. */
  public StationSettings(
      String place,
      String bander,
      ZoneId zone,
      Optional<String> microphone,
      Optional<String> voiceCommand,
      List<InstrumentAt> instruments,
      Protocol protocol) {
    this(
        place,
        bander,
        zone,
        microphone,
        voiceCommand,
        instruments,
        protocol,
        CodeSet.LABORATORY,
        Heed.usual(),
        KeepUtterances.usual(),
        ToneSettings.usual());
  }

  /** The same with the codes of another set. */
  public StationSettings withCodes(CodeSet other) {
    return new StationSettings(
        place,
        bander,
        zone,
        microphone,
        voiceCommand,
        instruments,
        protocol,
        other,
        heed,
        keeping,
        tones);
  }

  /** The same, listened to in another way. */
  public StationSettings heeding(Heed other) {
    return new StationSettings(
        place,
        bander,
        zone,
        microphone,
        voiceCommand,
        instruments,
        protocol,
        codes,
        other,
        keeping,
        tones);
  }

  /** The same with other instruments. */
  public StationSettings withInstruments(List<InstrumentAt> used) {
    return new StationSettings(
        place, bander, zone, microphone, voiceCommand, used, protocol, codes, heed, keeping, tones);
  }

  /** The same with other tones. */
  public StationSettings sounding(ToneSettings other) {
    return new StationSettings(
        place,
        bander,
        zone,
        microphone,
        voiceCommand,
        instruments,
        protocol,
        codes,
        heed,
        keeping,
        other);
  }

  /** The same with another protocol. */
  public StationSettings withProtocol(Protocol other) {
    return new StationSettings(
        place,
        bander,
        zone,
        microphone,
        voiceCommand,
        instruments,
        other,
        codes,
        heed,
        keeping,
        tones);
  }

  /** The same with another place and bander. */
  public StationSettings called(String otherPlace, String otherBander) {
    return new StationSettings(
        otherPlace,
        otherBander,
        zone,
        microphone,
        voiceCommand,
        instruments,
        protocol,
        codes,
        heed,
        keeping,
        tones);
  }

  /**
   * An instrument at a port.
   *
   * @param port the port's path or name, such as {@code /dev/ttyUSB0} or {@code COM3}
   * @param device the name of its description in {@code devices/}
   */
  public record InstrumentAt(String port, String device) {}
}
