package org.calamus.core.dialogue;

import java.util.Optional;
import org.calamus.core.record.PastCapture;
import org.calamus.core.speech.Command;

/** The part of the pages that opens one, and what stands behind a row. */
final class Opening {

  private final Setup setup;
  private final Prompts prompts;
  private final PageContents contents;

  Opening(Setup setup) {
    this.setup = setup;
    this.prompts = new Prompts(setup);
    this.contents = new PageContents(setup);
  }

  /** Opens a page from its first row on. */
  Step page(State state, PageName name) {
    return hindered(state).orElseGet(() -> open(state, name));
  }

  /** Shows a record whole. */
  Step record(State state) {
    return hindered(state).orElseGet(() -> openRecord(state));
  }

  /** Why no page can be shown now; empty where one can. */
  private Optional<Step> hindered(State state) {
    if (state.question().isPresent()) {
      return Optional.of(prompts.miss(state, "answer affirm or negative first"));
    }
    return state.face().keys().isEmpty()
        ? Optional.empty()
        : Optional.of(prompts.notEntered(state));
  }

  private Step open(State state, PageName name) {
    Browsing page = Browsing.atTop(name, contents.of(state, name));
    return Step.of(Pages.showing(state, page).message(ways(page)))
        .then(new Effect.Say(name.spoken()));
  }

  /** Shows the chosen record whole, or else that of the last bird; the day's records lie behind. */
  private Step openRecord(State state) {
    Optional<PageRow.Subject> chosen =
        state
            .face()
            .browsing()
            .flatMap(Browsing::chosen)
            .filter(PageRow.Subject.OfRecord.class::isInstance);
    if (chosen.isPresent()) {
      return named(subject(state, state.face().browsing().orElseThrow(), chosen.get()));
    }
    Optional<PastCapture> last = PageContents.known(state).captures().newestBird();
    if (last.isEmpty()) {
      return Step.of(state.message("There is no saved record to look at.")).say("no saved record");
    }
    Browsing day = Browsing.atTop(PageName.RECORDS, contents.of(state, PageName.RECORDS));
    return named(subject(state, day, new PageRow.Subject.OfRecord(last.get().id())));
  }

  /** Like a page, it is named when it is opened by its phrase. */
  private static Step named(Step opened) {
    return opened.then(new Effect.Say("record history"));
  }

  /** Opens something from where the bander is; of a record the store tells the rest. */
  Step subject(State state, Browsing here, PageRow.Subject subject) {
    Browsing opened = here.opening(subject, contents.of(state, subject));
    String back = way(Command.PAGE_BACK, "back");
    if (opened.record().isEmpty()) {
      return Step.of(Pages.showing(state, opened).message(back));
    }
    String correct = way(Command.AFFIRM, "correct it");
    return Step.of(Pages.showing(state, opened).message(correct + "  " + back))
        .then(new Effect.ReadTrail(opened.record().get()));
  }

  /** How to leave the page, and to see the rest of it, in words and keys. */
  private String ways(Browsing page) {
    String back = way(Command.PAGE_CAPTURE, "back");
    return page.canLeaf(Page.SCREENFUL) ? back + "  " + way(Command.PAGE_ON, "more") : back;
  }

  private String way(Command command, String where) {
    String words = setup.words(command).map(w -> " or \"" + w + "\"").orElse("");
    return Sayable.keys(command) + words + ": " + where + ".";
  }
}
