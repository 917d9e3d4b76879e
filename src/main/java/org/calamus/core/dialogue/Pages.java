package org.calamus.core.dialogue;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.speech.Command;
import org.calamus.core.speech.Meaning;

/**
 * The part of the dialogue that shows pages beside the capture screen: which one, where on it, and
 * what is opened from it. The bird is more important: whatever is said, measured, asked or refused
 * of one brings the capture screen back.
 */
final class Pages {

  /** What moves on a page and means nothing without one. */
  private static final Set<Command> MOVES =
      EnumSet.range(Command.PAGE_CAPTURE, Command.PAGE_CHOOSE);

  /** What is about the console and leaves the page as it is. */
  private static final Set<Command> STAYS =
      EnumSet.of(Command.STAND_BY, Command.RESUME, Command.TALK_KEY, Command.TALK_OPEN);

  /** What tells of the moment. */
  private static final Set<PageName> OF_MOMENT = EnumSet.of(PageName.SESSION, PageName.EFFORT);

  private static final int LONGEST_NUMBER = 5;
  private static final String NOTHING_TO_CHOOSE = "There is nothing to choose on this page.";

  private final Prompts prompts;
  private final PageContents contents;
  private final Opening opening;
  private final Correcting correcting;

  Pages(Setup setup) {
    this.prompts = new Prompts(setup);
    this.contents = new PageContents(setup);
    this.opening = new Opening(setup);
    this.correcting = new Correcting(setup);
  }

  static boolean isShown(State state) {
    return state.face().browsing().isPresent();
  }

  /** Whether a row of the page can be chosen by its number. */
  static boolean hasNumbers(State state) {
    return state.face().browsing().filter(Browsing::hasNumbers).isPresent();
  }

  /** Whether a saved record is shown whole. */
  static boolean isRecord(State state) {
    return state.face().browsing().flatMap(Browsing::record).isPresent();
  }

  /** Whether a command moves on a page. */
  static boolean isOfPage(Command command) {
    return MOVES.contains(command);
  }

  /** Whether a command is for the pages now: on one, yes opens what is chosen and no leaves it. */
  static boolean isOfPage(State state, Command command) {
    boolean isAnswer = command == Command.AFFIRM || command == Command.NEGATIVE;
    boolean isPage = PageName.shownBy(command).isPresent() || command == Command.PAGE_RECORD;
    return isOfPage(command) || isPage || isAnswer && isShown(state);
  }

  /** Whether a command is about a bird, so that the capture screen must be seen. */
  static boolean isLeaving(Command command) {
    return !STAYS.contains(command);
  }

  /** The state with the capture screen. */
  static State left(State state) {
    return isShown(state) ? state.face(f -> f.withBrowsing(Optional.empty())) : state;
  }

  /** What was said: a value or a field's name leaves the page; so does a miss with a bird. */
  static State heard(State state, Meaning meaning) {
    boolean isOrder = meaning instanceof Meaning.Order;
    boolean isMissWithoutBird = meaning instanceof Meaning.Unclear && state.record().isEmpty();
    return isOrder || isMissWithoutBird ? state : left(state);
  }

  /** Carries out a command for the pages. */
  Step order(State state, Command command) {
    Optional<PageName> name = PageName.shownBy(command);
    if (name.isPresent()) {
      return opening.page(state, name.get());
    }
    if (command == Command.PAGE_RECORD) {
      return opening.record(state);
    }
    if (!isShown(state)) {
      return Step.of(state.message("No page is shown.")).say("no page");
    }
    Browsing here = state.face().browsing().orElseThrow();
    switch (command) {
      case AFFIRM:
        return act(state, here);
      case NEGATIVE:
      case PAGE_CAPTURE:
        return close(state);
      case PAGE_ON:
        return leaf(state, here, Page.SCREENFUL, "These are the last rows.");
      case PAGE_BACK:
        return here.before().isPresent() && !here.canLeaf(-Page.SCREENFUL)
            ? back(state, here.before().get())
            : leaf(state, here, -Page.SCREENFUL, "These are the first rows.");
      case PAGE_CHOOSE:
        return choose(state, here, here.next());
      default:
        throw new AssertionError(command);
    }
  }

  private static Step choose(State state, Browsing here, String number) {
    return here.hasNumbers()
        ? Step.of(showing(state, here.choosing(number)))
        : Step.of(state.message(NOTHING_TO_CHOOSE));
  }

  /** Another place of the pages; a message was about the place before. */
  static State showing(State state, Browsing page) {
    return state.message("").face(f -> f.withBrowsing(Optional.of(page)));
  }

  private Step close(State state) {
    return prompts.prompt(left(state).message(""), "");
  }

  private static Step leaf(State state, Browsing here, int rows, String atEnd) {
    return here.canLeaf(rows)
        ? Step.of(showing(state, here.leafed(rows)))
        : Step.of(state.message(atEnd));
  }

  /** Whether a key chooses or opens a row; the other keys of a page are commands of the table. */
  static boolean isRowKey(Key key) {
    return switch (key.name()) {
      case ENTER, BACKSPACE -> true;
      case CHARACTER -> "+-*/".indexOf(key.character()) < 0;
      case TALK, INTERRUPT -> false;
    };
  }

  /** A key that chooses or opens a row. */
  Step struck(State state, Key key) {
    Browsing here = state.face().browsing().orElseThrow();
    switch (key.name()) {
      case ENTER:
        return act(state, here);
      case BACKSPACE:
        String digits = here.digits();
        return Step.of(
            showing(state, here.choosing(digits.substring(0, Math.max(0, digits.length() - 1)))));
      default:
        if (Sayable.keys(Command.PAGE_CHOOSE).equals(String.valueOf(key.character()))) {
          return order(state, Command.PAGE_CHOOSE);
        }
        boolean isDigit = key.character() >= '0' && key.character() <= '9';
        return isDigit ? digit(state, here, key.character()) : Step.of(state);
    }
  }

  /** One more digit; where no row has that number the digit begins another. */
  private static Step digit(State state, Browsing here, char c) {
    if (!here.hasNumbers()) {
      return Step.of(state.message(NOTHING_TO_CHOOSE));
    }
    String longer = here.digits() + c;
    String digits = here.has(longer) || longer.length() == 1 ? longer : String.valueOf(c);
    if (here.has(digits)) {
      return Step.of(showing(state, here.choosing(digits)));
    }
    String shown = longer.length() > LONGEST_NUMBER ? digits : longer;
    return Step.of(showing(state, here.choosing("")).message("There is no row " + shown + " here."))
        .then(new Effect.Sound(Tone.NOT_UNDERSTOOD));
  }

  /** Enter: opens what the chosen row stands for; a record that is shown whole is corrected. */
  private Step act(State state, Browsing here) {
    if (here.chosen().isPresent()) {
      return opening.subject(state, here, here.chosen().get());
    }
    if (here.record().isPresent()) {
      return correcting.reopen(left(state).message(""), here.record().get());
    }
    return Step.of(
        state.message(
            here.hasNumbers() ? "Strike the number of a row, then Enter." : NOTHING_TO_CHOOSE));
  }

  /** The store has told what a record has gone through: shown where that record still is. */
  Step told(State state, Event.TrailRead read) {
    Optional<Browsing> here =
        state.face().browsing().filter(b -> b.record().equals(Optional.of(read.id())));
    if (here.isEmpty() || read.trail().isEmpty()) {
      return Step.of(state);
    }
    Browsing told = here.get().telling(read.trail().get());
    Browsing now = told.saying(contents.of(state, told));
    return Step.of(state.face(f -> f.withBrowsing(Optional.of(now))));
  }

  /** Back to where something was opened, as it is now. */
  private Step back(State state, Browsing before) {
    return Step.of(showing(state, before.saying(contents.of(state, before))));
  }

  /**
   * What an event leaves of the page: nothing where it touched the bird in the hand, opened a
   * question, or failed; else what the page says now.
   */
  Step checked(State before, Event event, Step step) {
    State after = step.state();
    if (!isShown(after)) {
      return step;
    }
    boolean isOfBird =
        !before.record().equals(after.record())
            || !before.console().waiting().equals(after.console().waiting())
            || after.question().isPresent();
    boolean hasFailed = event instanceof Event.StoreFailed || event instanceof Event.MemoFailed;
    return isOfBird || hasFailed
        ? new Step(left(after), step.effects())
        : new Step(refreshed(before, event, after), step.effects());
  }

  /** The session and the nets are of the moment; the others change with the saved records alone. */
  private State refreshed(State before, Event event, State after) {
    Browsing here = after.face().browsing().orElseThrow();
    boolean isOfMoment = OF_MOMENT.contains(here.name()) && here.opened().isEmpty();
    boolean isDue =
        event instanceof Event.Ticked
            || event instanceof Event.PartUp
            || event instanceof Event.PartDown;
    boolean isStale = after.known() != before.known() || isOfMoment && isDue;
    if (!isStale) {
      return after;
    }
    Browsing now = here.saying(contents.of(after, here));
    return after.face(f -> f.withBrowsing(Optional.of(now)));
  }

  /** The page as a screen shows it; none while the keypad's menu is open over it. */
  static Optional<Page> view(State state) {
    return state.face().isMenu() ? Optional.empty() : state.face().browsing().map(Pages::view);
  }

  private static Page view(Browsing page) {
    return new Page(
        page.title(),
        page.rows().stream().map(PageRow::shown).toList(),
        page.first(),
        page.chosen().map(subject -> page.digits()));
  }
}
