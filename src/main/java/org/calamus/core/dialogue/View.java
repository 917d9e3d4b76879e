package org.calamus.core.dialogue;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.FieldId;

/**
 * All that a screen shows, already in words. A screen only lays it out.
 *
 * @param mode what the console is doing, one meaning at a time
 * @param station the station, the bander and the station's local date and time
 * @param asked what is asked now, such as {@code Wing chord, mm}
 * @param big the value just taken, or the keys struck so far; short, may be empty
 * @param bigOf what the large text is, such as {@code = Wing chord, mm taken}; empty where it is
 *     what is being struck for the field that is asked
 * @param lines one line a field, in the form's order
 * @param question the open question with its reason, where there is one
 * @param message the last message, one sentence; may be empty
 * @param health one mark for every part of the console, always in the same order
 * @param decibels the level at the microphone, -96 to 0
 * @param live what the scale shows now, where it sends
 * @param hints what may be said or pressed now
 * @param nextBand the next band of the string; empty where none is known
 * @param inHand how long the bird has been in the hand; empty where no record is open
 * @param savedCount the records saved in this session
 * @param recent the last saved records, newest first, one line each
 * @param cautions lines shown once, at the start of a session
 * @param choices what can be chosen by number now: the menu, or the codes of the field that is
 *     asked; empty where there is nothing to choose
 * @param history what is known of the bird whose band was read, newest capture first; one line each
 * @param hold how the time in the hand stands against the station's limit
 * @param pictures where the measures of the bird fall, for the eye
 * @param correcting which saved record is open, such as {@code correcting 2841-55601}; empty where
 *     the record is that of a bird in the hand, or none is open
 * @param page the page that is shown in place of the record; empty on the capture screen
 */
public record View(
    Mode mode,
    String station,
    String asked,
    String big,
    String bigOf,
    List<Line> lines,
    Optional<String> question,
    String message,
    List<Health> health,
    int decibels,
    Optional<String> live,
    List<Hint> hints,
    String nextBand,
    Optional<Duration> inHand,
    int savedCount,
    List<String> recent,
    List<String> cautions,
    List<Choice> choices,
    List<String> history,
    Hold hold,
    Pictures pictures,
    String correcting,
    Optional<Page> page) {

  /** Copies the lists. */
  public View {
    Objects.requireNonNull(mode);
    lines = List.copyOf(lines);
    health = List.copyOf(health);
    hints = List.copyOf(hints);
    recent = List.copyOf(recent);
    cautions = List.copyOf(cautions);
    choices = List.copyOf(choices);
    history = List.copyOf(history);
    Objects.requireNonNull(pictures);
  }

  /** The same view with another level at the microphone. */
  public View withDecibels(int level) {
    return new View(
        mode,
        station,
        asked,
        big,
        bigOf,
        lines,
        question,
        message,
        health,
        level,
        live,
        hints,
        nextBand,
        inHand,
        savedCount,
        recent,
        cautions,
        choices,
        history,
        hold,
        pictures,
        correcting,
        page);
  }

  /** Whether commands are among the choices, as in the keypad's menu, and not codes alone. */
  public boolean hasCommands() {
    return choices.stream().anyMatch(choice -> !choice.keys().chars().allMatch(Character::isDigit));
  }

  /** What the console is doing. */
  public enum Mode {
    /** The microphone is not there, or is switched off: the keypad works. */
    KEYPAD,
    /** The ears are open and it is quiet. */
    LISTENING,
    /** Somebody is speaking. */
    HEARING,
    /** The console speaks; the ears are shut. */
    SPEAKING,
    /** A question waits for its answer. */
    CHECK,
    /** Nothing that is said is acted on until the bander lets the console go on. */
    PAUSED,
    /** The ears are shut until the talk key is pressed. */
    PRESS_TO_TALK;

    /** The word or words shown. */
    public String word() {
      return name().replace('_', ' ');
    }
  }

  /** How the time in the hand stands. */
  public enum Hold {
    /** No bird, or within the time. */
    WITHIN,
    /** Longer than the station's warning. */
    LONG,
    /** Longer than the station's limit. */
    OVER
  }

  /**
   * Something to choose by number.
   *
   * @param keys what to strike
   * @param meaning what it stands for
   * @param reason why it cannot be chosen now, in a word or two; empty where it can
   */
  public record Choice(String keys, String meaning, String reason) {

    /** Something that can be chosen. */
    public Choice(String keys, String meaning) {
      this(keys, meaning, "");
    }

    /** What it stands for, with the reason why it cannot be chosen. */
    public String text() {
      return reason.isEmpty() ? meaning : meaning + " (" + reason + ")";
    }
  }

  /**
   * A field of the record.
   *
   * @param field the field
   * @param label its name on the screen
   * @param value its value in words and digits; empty where there is none
   * @param way {@code said}, {@code keyed} or {@code measured}; empty where there is no value
   * @param standing how it stands
   */
  public record Line(FieldId field, String label, String value, String way, Standing standing) {

    private static final String WAS = ", was ";

    /** A value that takes the place of a saved one, with that behind it. */
    static String corrected(String now, String before) {
      return now + WAS + before;
    }

    /** The value without what it was before a correction; remarks are what they are. */
    public String now() {
      int was = field == FieldId.NOTE ? -1 : value.indexOf(WAS);
      return was < 0 ? value : value.substring(0, was);
    }
  }

  /** How a field stands. */
  public enum Standing {
    /** No value, and not required. */
    EMPTY,
    /** No value, and the record cannot be saved without. */
    MISSING,
    /** Being asked now. */
    ASKED,
    /** Has a value that no rule doubted. */
    TAKEN,
    /** Has a value that a rule doubted and the bander confirmed. */
    CONFIRMED,
    /** Has a value given that waits for the answer to a question. */
    IN_QUESTION
  }

  /**
   * The health of a part.
   *
   * @param part the part
   * @param isUp whether it works
   * @param sentence the device's name where it works; what is wrong and what to do where not; empty
   *     for a part that nothing has been heard of, such as a scale where none is named
   */
  public record Health(Part part, boolean isUp, String sentence) {

    /** Whether the part does not work although it should. */
    public boolean isDown() {
      return !isUp && !sentence.isBlank();
    }
  }

  /**
   * Something that can be said or pressed now.
   *
   * @param words what to say; empty where it has no word
   * @param keys what to press; empty where it has no key
   * @param meaning what it does; empty where the words say it
   */
  public record Hint(String words, String keys, String meaning) {}
}
