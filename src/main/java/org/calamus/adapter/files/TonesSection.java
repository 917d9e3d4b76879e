package org.calamus.adapter.files;

import java.util.Set;
import org.calamus.port.ToneSettings;

/** Reads what the station file says about the short tones. */
final class TonesSection {

  /** The keys of the station file that are about tones. */
  static final Set<String> KEYS = Set.of("tones", "tone-volume");

  private TonesSection() {}

  /** Reads it; mistakes are noted in the section. */
  static ToneSettings read(TomlSection root) {
    ToneSettings usual = ToneSettings.usual();
    boolean isOn = root.has("tones") ? root.truth("tones") : usual.isOn();
    return new ToneSettings(isOn, root.wholeOr("tone-volume", 1, 100, usual.percent()));
  }
}
