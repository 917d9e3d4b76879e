package org.calamus.adapter.files;

import java.util.Set;
import org.calamus.port.KeepUtterances;

/** Reads what the station file says about keeping what is said. */
final class KeepingSection {

  /** The keys of the station file that are about keeping. */
  static final Set<String> KEYS =
      Set.of("keep-utterances", "utterances-megabytes", "forget-voices");

  private static final int MOST_MEGABYTES = 1_000_000;

  private KeepingSection() {}

  /** Reads it; mistakes are noted in the section. */
  static KeepUtterances read(TomlSection root) {
    int usual = KeepUtterances.usual().mostMegabytes();
    return new KeepUtterances(
        root.truth("keep-utterances"),
        root.wholeOr("utterances-megabytes", 1, MOST_MEGABYTES, usual),
        root.truth("forget-voices"));
  }
}
