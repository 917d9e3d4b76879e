package org.calamus.benchmark;

import java.util.List;
import java.util.Locale;

/**
 * The settings of the peer that were swept on the tuning half.
 *
 * @param languageWeight of its first pass; the weights of its second and third are brought along in
 *     the proportion of its defaults
 * @param insertion its word insertion penalty
 * @param silence the probability of silence between words
 * @param filler the probability of its own noises between words
 * @param garbage what the word for all else sounds like
 * @param garbageRun how often that word follows itself in the grammar, for once in ours; with 1 it
 *     never does
 * @param normalisation of the cepstra: {@code live} or {@code batch}
 * @param phrases whether phrases are words to it, as they are to our recogniser
 */
record PeerSettings(
    double languageWeight,
    double insertion,
    double silence,
    double filler,
    Garbage garbage,
    int garbageRun,
    String normalisation,
    Phrasing phrases) {

  /** What the word for all else sounds like. */
  enum Garbage {
    /** There is no such word; only its own noises take up what is none of the words. */
    NONE,
    /** The model's phone for speech that is not understood. */
    SPOKEN_NOISE,
    /** Any phones, one after the other. */
    PHONES
  }

  /** How phrases of several words are given to it. */
  enum Phrasing {
    /** Word by word, so that words of a phrase may be heard alone. */
    APART,
    /** Each as one word, said without a pause. */
    WHOLE,
    /** Each as one word, with or without a pause between its parts. */
    WHOLE_WITH_PAUSES
  }

  /** Its own defaults, and spoken noise as the word for all else. */
  static final PeerSettings DEFAULTS =
      new PeerSettings(6.5, 0.65, 0.005, 1e-8, Garbage.SPOKEN_NOISE, 1, "live", Phrasing.APART);

  /** The best on the tuning half, of all settings that the sweep tries. */
  static final PeerSettings SWEPT =
      DEFAULTS
          .withLanguageWeight(9.1)
          .withInsertion(0.05)
          .withGarbage(Garbage.NONE, 1)
          .withPhrases(Phrasing.WHOLE_WITH_PAUSES);

  /** The words behind the class that did it. */
  static final String FOUND_BY = "Recognition sweep limit=1 clean pink20";

  PeerSettings withLanguageWeight(double weight) {
    return new PeerSettings(
        weight, insertion, silence, filler, garbage, garbageRun, normalisation, phrases);
  }

  PeerSettings withInsertion(double penalty) {
    return new PeerSettings(
        languageWeight, penalty, silence, filler, garbage, garbageRun, normalisation, phrases);
  }

  PeerSettings withFillers(double silenceProbability, double fillerProbability) {
    return new PeerSettings(
        languageWeight,
        insertion,
        silenceProbability,
        fillerProbability,
        garbage,
        garbageRun,
        normalisation,
        phrases);
  }

  PeerSettings withGarbage(Garbage kind, int run) {
    return new PeerSettings(
        languageWeight, insertion, silence, filler, kind, run, normalisation, phrases);
  }

  PeerSettings withNormalisation(String kind) {
    return new PeerSettings(
        languageWeight, insertion, silence, filler, garbage, garbageRun, kind, phrases);
  }

  PeerSettings withPhrases(Phrasing kind) {
    return new PeerSettings(
        languageWeight, insertion, silence, filler, garbage, garbageRun, normalisation, kind);
  }

  /** As options of the program. */
  List<String> options() {
    return List.of(
        "-lw",
        number(languageWeight),
        "-fwdflatlw",
        number(languageWeight * 8.5 / 6.5),
        "-bestpathlw",
        number(languageWeight * 9.5 / 6.5),
        "-wip",
        number(insertion),
        "-silprob",
        number(silence),
        "-fillprob",
        number(filler),
        "-cmn",
        normalisation);
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.4g", value);
  }

  /** For the tables. */
  @Override
  public String toString() {
    return String.join(" ", options())
        + " garbage "
        + garbage.name().toLowerCase(Locale.ROOT).replace('_', ' ')
        + " in a run of "
        + garbageRun
        + ", phrases "
        + phrases.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
