package org.calamus.benchmark;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * How an utterance reaches the microphone: how loud, and over what noise.
 *
 * <p>Written as {@code clean}, {@code level0.1} (all sound times a tenth), {@code pink15} (pink
 * noise, 15 dB below the speech) or both, {@code pink15,level0.1}.
 *
 * @param name as written
 * @param gain the factor for the sum of speech and noise; what is too loud is clipped
 * @param noise the kind of noise; empty where there is none
 * @param decibels how far the noise lies below the speech, see {@link SpeechLevel}; 0 without noise
 */
record Condition(String name, double gain, Optional<Noise.Kind> noise, double decibels) {

  /** The recordings as they are. */
  static final Condition CLEAN = new Condition("clean", 1, Optional.empty(), 0);

  private static final Pattern PART = Pattern.compile("([a-z]+)([0-9.]*)");

  /** Those that are published. */
  static final List<Condition> ALL =
      Stream.of(
              "clean level0.05 level0.1 level0.3 level3",
              "white20 white15 white10 pink20 pink15 pink10 babble20 babble15 babble10")
          .flatMap(line -> Stream.of(line.split(" ")))
          .map(text -> parse(text).orElseThrow())
          .toList();

  /** Reads a condition; empty where the text is none. */
  static Optional<Condition> parse(String text) {
    Condition read = CLEAN;
    for (String part : text.split(",", -1)) {
      Matcher matcher = PART.matcher(part);
      if (!matcher.matches()) {
        return Optional.empty();
      }
      Optional<Condition> next = read.with(matcher.group(1), matcher.group(2));
      if (next.isEmpty()) {
        return Optional.empty();
      }
      read = next.get();
    }
    return Optional.of(new Condition(text, read.gain, read.noise, read.decibels));
  }

  private Optional<Condition> with(String word, String number) {
    if (word.equals("clean") && number.isEmpty()) {
      return Optional.of(this);
    }
    if (number.isEmpty()) {
      return Optional.empty();
    }
    double amount = Double.parseDouble(number);
    if (word.equals("level")) {
      return Optional.of(new Condition(name, amount, noise, decibels));
    }
    for (Noise.Kind kind : Noise.Kind.values()) {
      if (kind.name().toLowerCase(Locale.ROOT).equals(word)) {
        return Optional.of(new Condition(name, gain, Optional.of(kind), amount));
      }
    }
    return Optional.empty();
  }
}
