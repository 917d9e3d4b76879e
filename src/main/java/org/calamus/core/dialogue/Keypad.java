package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Provenance;
import org.calamus.core.speech.Command;
import org.calamus.core.speech.Heard;
import org.calamus.core.speech.ValueReader;

/**
 * The part of the dialogue that is struck on a numeric keypad. Digits and Enter fill the field that
 * is asked; minus takes back, star goes on, slash says again, plus opens a menu by number. Letters
 * serve for codes where there is a keyboard.
 */
final class Keypad {

  private static final int LONGEST = 12;
  private static final int LONGEST_REMARK = 300;

  private final Setup setup;
  private final Values values;
  private final Prompts prompts;
  private final Orders orders;
  private final Menu menu;
  private final Remarks remarks;
  private final Heeding heeding;
  private final Errands errands;
  private final Pages pages;

  Keypad(Setup setup, Values values, Orders orders, Remarks remarks) {
    this.setup = setup;
    this.values = values;
    this.prompts = new Prompts(setup);
    this.orders = orders;
    this.menu = new Menu(setup);
    this.remarks = remarks;
    this.heeding = new Heeding(setup);
    this.errands = new Errands(setup);
    this.pages = new Pages(setup);
  }

  /** Takes a key. Any key cuts the voice off. */
  Step struck(State state, Key key, Instant at) {
    Step hushed =
        state.console().isSpeaking() ? Step.of(state).then(new Effect.Hush()) : Step.of(state);
    return hushed.then(s -> uncounted(s, key(s, key, at)));
  }

  /** A key is no miss of the ears: whoever strikes keys is not told to use the keypad. */
  private static Step uncounted(State before, Step step) {
    return step.state().face().misses() > before.face().misses()
        ? new Step(step.state().face(f -> f.withMissed(before.face().missed())), step.effects())
        : step;
  }

  private Step key(State state, Key key, Instant at) {
    boolean isRow = Pages.isShown(state) && !state.face().isMenu() && Pages.isRowKey(key);
    if (isRow) {
      return pages.struck(state, key);
    }
    switch (key.name()) {
      case CHARACTER:
        return state.face().isMenu()
            ? menu.struck(state, key.character(), at)
            : character(state, key.character(), at);
      case ENTER:
        return enter(state, at);
      case BACKSPACE:
        return Step.of(
            state.face(f -> f.isMenu() ? f.withoutMenu() : f.withKeys(shorter(f.keys()))));
      case TALK:
        return talk(state, at);
      case INTERRUPT:
        return Step.of(state).then(new Effect.EndSession());
      default:
        throw new AssertionError(key);
    }
  }

  /** The space bar: a blank in written remarks, the beginning of spoken ones, or the talk key. */
  private Step talk(State state, Instant at) {
    if (Remarks.isListening(state)) {
      return Step.of(state).then(new Effect.FinishUtterance());
    }
    if (!remarks.isAsked(state) || Heeding.isPaused(state)) {
      return heeding.pressed(state, at);
    }
    return state.face().keys().isEmpty()
        ? remarks.listen(state, at)
        : Step.of(state.face(f -> f.withKeys(longer(state, f, ' '))));
  }

  private static String shorter(String keys) {
    return keys.isEmpty() ? "" : keys.substring(0, keys.length() - 1);
  }

  private Step character(State state, char c, Instant at) {
    boolean isEmpty = state.face().keys().isEmpty();
    if (remarks.isAsked(state) && !isEmpty) {
      return Step.of(state.face(f -> f.withKeys(longer(state, f, c))));
    }
    switch (c) {
      case '-':
        return isEmpty ? command(state, c, at) : Step.of(state.face(f -> f.withKeys("")));
      case '*':
      case '/':
        return command(state, c, at);
      case '+':
        return isEmpty ? menu.opened(state) : prompts.notEntered(state);
      default:
        return Step.of(
            accepts(state, c) ? state.face(f -> f.withKeys(longer(state, f, c))) : state);
    }
  }

  private Step command(State state, char c, Instant at) {
    Sayable command = Sayable.struck(String.valueOf(c), state).orElseThrow();
    return orders.order(state, command.command(), Optional.empty(), at);
  }

  private String longer(State state, Face face, char c) {
    boolean isRemark = remarks.isAsked(state);
    String struck = isRemark ? String.valueOf(c) : String.valueOf(c).toUpperCase(Locale.ROOT);
    String keys = face.keys() + struck;
    return keys.length() > (isRemark ? LONGEST_REMARK : LONGEST) ? face.keys() : keys;
  }

  private boolean accepts(State state, char c) {
    if (Errands.isOpen(state)) {
      return Errands.accepts(state, c);
    }
    Optional<FieldSpec> spec = Dialogue.askedField(state).map(setup.form()::spec);
    if (spec.isEmpty()) {
      return false;
    }
    if (spec.get().kind() instanceof FieldKind.Note) {
      return c > ' ';
    }
    boolean isLetter = c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z';
    boolean isDigit = c >= '0' && c <= '9';
    return isDigit
        || isLetter && hasLetters(spec.get().kind())
        || c == '.' && hasPoints(spec.get().kind())
        || c == ' ' && spec.get().kind() instanceof FieldKind.Note;
  }

  private static boolean hasLetters(FieldKind kind) {
    return kind instanceof FieldKind.Coded
        || kind instanceof FieldKind.CodedMany
        || kind instanceof FieldKind.Note;
  }

  /**
   * A point is the decimal sign, and parts several codes. One code has none; a measure that is
   * struck while a code is asked must still be refused as it was struck, 20.3 and not 203.
   */
  private static boolean hasPoints(FieldKind kind) {
    return kind instanceof FieldKind.Measured
        || kind instanceof FieldKind.CodedMany
        || kind instanceof FieldKind.Coded;
  }

  private Step enter(State state, Instant at) {
    String keys = state.face().keys();
    if (state.face().isMenu()) {
      return Step.of(state.face(Face::withoutMenu));
    }
    if (keys.isEmpty() && Remarks.isListening(state)) {
      return remarks.stop(state);
    }
    if (keys.isEmpty()) {
      return orders.order(state, Command.AFFIRM, Optional.empty(), at);
    }
    if (Errands.isOpen(state)) {
      return errands.keyed(state, keys, at);
    }
    Optional<FieldId> field = Dialogue.askedField(state);
    if (field.isEmpty()) {
      return Step.of(state.face(f -> f.withKeys("")));
    }
    Heard heard =
        ValueReader.keyed(
            setup.form().spec(field.get()),
            keys,
            setup.expected(new NextBand(setup).completing(state), at));
    if (heard instanceof Heard.No no) {
      return Step.of(state.face(f -> f.withKeys("").withMessage("Not taken: " + no.hint() + ".")))
          .then(new Effect.Sound(Tone.NOT_UNDERSTOOD));
    }
    Offer offer = new Offer(field.get(), heard, new Provenance(Provenance.Way.KEYED, keys));
    return values.inPlace(state, List.of(offer), at);
  }
}
