package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.calamus.core.instrument.Weighing;
import org.calamus.core.record.Reading;

/**
 * What the dialogue knows of the console's parts and of the time.
 *
 * @param health the parts heard of so far
 * @param isSpeaking whether the voice speaks
 * @param isHearing whether somebody speaks to the microphone
 * @param decibels the level at the microphone
 * @param live the last reading of a scale, and of which
 * @param weighings how far each scale has settled, by its port
 * @param waiting a settled mass that waits until a question is answered
 * @param warned how far the bander was warned that the bird is held too long
 * @param memo the name of the remarks being taken down; empty where none are
 * @param attention whether what is said is for the console
 * @param now the time of the last event
 * @param instruments the health of each instrument heard of so far, by its port
 */
record Console(
    Map<Part, View.Health> health,
    boolean isSpeaking,
    boolean isHearing,
    int decibels,
    Optional<Live> live,
    Map<String, Weighing> weighings,
    Optional<Offer> waiting,
    View.Hold warned,
    Optional<String> memo,
    Attention attention,
    Instant now,
    Map<String, View.Health> instruments) {

  private static final int SILENCE = -96;

  /**
   * What an instrument sent last.
   *
   * @param port which instrument
   * @param reading its reading
   */
  record Live(String port, Reading reading) {}

  Console {
    Map<Part, View.Health> copy = new EnumMap<>(Part.class);
    copy.putAll(health);
    health = Collections.unmodifiableMap(copy);
    weighings = Map.copyOf(weighings);
    instruments = Map.copyOf(instruments);
  }

  static Console atStart() {
    return new Console(
        new EnumMap<>(Part.class),
        false,
        false,
        SILENCE,
        Optional.empty(),
        Map.of(),
        Optional.empty(),
        View.Hold.WITHIN,
        Optional.empty(),
        Attention.atStart(),
        Instant.EPOCH,
        Map.of());
  }

  Console withHealth(View.Health part) {
    Map<Part, View.Health> changed = new EnumMap<>(Part.class);
    changed.putAll(health);
    changed.put(part.part(), part);
    return new Console(
        changed,
        isSpeaking,
        isHearing,
        decibels,
        live,
        weighings,
        waiting,
        warned,
        memo,
        attention,
        now,
        instruments);
  }

  /**
   * With what is known of one of several instruments: as long as any is down the part is, with the
   * sentence of that one.
   */
  Console withInstrument(String port, View.Health part) {
    Map<String, View.Health> all = new TreeMap<>(instruments);
    all.put(port, part);
    View.Health shown =
        part.isUp() ? all.values().stream().filter(h -> !h.isUp()).findFirst().orElse(part) : part;
    return new Console(
            health,
            isSpeaking,
            isHearing,
            decibels,
            live,
            weighings,
            waiting,
            warned,
            memo,
            attention,
            now,
            all)
        .withHealth(shown);
  }

  /** Whether a part works; not so where none was heard of. */
  boolean isUp(Part part) {
    return isUp(part, Optional.empty());
  }

  /**
   * Whether a part works, or that one of several instruments does; not so where none was heard of.
   */
  boolean isUp(Part part, Optional<String> port) {
    return Optional.ofNullable(port.map(instruments::get).orElseGet(() -> health.get(part)))
        .map(View.Health::isUp)
        .orElse(false);
  }

  /** Whether the store has failed and not worked since. */
  boolean isStoreDown() {
    return health.containsKey(Part.STORE) && !health.get(Part.STORE).isUp();
  }

  Console withSpeaking(boolean speaks) {
    return new Console(
        health,
        speaks,
        isHearing,
        decibels,
        live,
        weighings,
        waiting,
        warned,
        memo,
        attention,
        now,
        instruments);
  }

  Console withLevel(int level, boolean hears) {
    return new Console(
        health,
        isSpeaking,
        hears,
        level,
        live,
        weighings,
        waiting,
        warned,
        memo,
        attention,
        now,
        instruments);
  }

  Console withReading(String port, Reading reading, Weighing weighing) {
    Map<String, Weighing> changed = new HashMap<>(weighings);
    changed.put(port, weighing);
    return new Console(
        health,
        isSpeaking,
        isHearing,
        decibels,
        Optional.of(new Live(port, reading)),
        changed,
        waiting,
        warned,
        memo,
        attention,
        now,
        instruments);
  }

  /** An instrument went away: what it had sent is forgotten, of all where it is not said which. */
  Console withoutReading(Optional<String> port) {
    Map<String, Weighing> left = new HashMap<>(weighings);
    port.ifPresentOrElse(left::remove, left::clear);
    return new Console(
        health,
        isSpeaking,
        isHearing,
        decibels,
        live.filter(l -> left.containsKey(l.port())),
        left,
        waiting,
        warned,
        memo,
        attention,
        now,
        instruments);
  }

  Console withWaiting(Optional<Offer> offer) {
    return new Console(
        health,
        isSpeaking,
        isHearing,
        decibels,
        live,
        weighings,
        offer,
        warned,
        memo,
        attention,
        now,
        instruments);
  }

  Console at(Instant time) {
    return new Console(
        health,
        isSpeaking,
        isHearing,
        decibels,
        live,
        weighings,
        waiting,
        warned,
        memo,
        attention,
        time,
        instruments);
  }

  Console withWarned(View.Hold hold) {
    return new Console(
        health,
        isSpeaking,
        isHearing,
        decibels,
        live,
        weighings,
        waiting,
        hold,
        memo,
        attention,
        now,
        instruments);
  }

  Console withMemo(Optional<String> name) {
    return new Console(
        health,
        isSpeaking,
        isHearing,
        decibels,
        live,
        weighings,
        waiting,
        warned,
        name,
        attention,
        now,
        instruments);
  }

  Console attending(UnaryOperator<Attention> change) {
    return new Console(
        health,
        isSpeaking,
        isHearing,
        decibels,
        live,
        weighings,
        waiting,
        warned,
        memo,
        change.apply(attention),
        now,
        instruments);
  }
}
