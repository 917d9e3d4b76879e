package org.calamus.core.dialogue;

/**
 * The open question in words, as the screen shows it as long as it is open.
 *
 * @param setup the session
 */
record Questions(Setup setup) {

  /** What answers a question, as said. */
  static String answers(Question question) {
    if (question instanceof Question.Which which) {
      return Twins.answers(which);
    }
    if (Errands.isErrand(question)) {
      return Errands.answers(question);
    }
    return BandQuestions.isBand(question)
        ? BandQuestions.answers(question)
        : "say affirm or negative";
  }

  /** One sentence or two; how to answer stands in the hints. */
  String shown(State state, Question question) {
    if (question instanceof Question.Keep keep) {
      return keep.doubts().get(0).shown() + " " + new Doubts(setup).shown(state, keep);
    }
    if (question instanceof Question.Which which) {
      return new Twins(setup).shown(which);
    }
    if (question instanceof Question.Skipped skipped) {
      return BandQuestions.shown(skipped);
    }
    if (question instanceof Question.Twice) {
      return "A band from elsewhere is read twice: read it from the bird once more.";
    }
    if (Errands.isErrand(question)) {
      return Errands.shown(question);
    }
    if (question instanceof Question.Resume resume && resume.saved().isPresent()) {
      return "An unfinished correction of "
          + Correction.name(resume.saved().get())
          + " was found. Affirm carries it on, negative gives it up: the record stays as it was"
          + " saved.";
    }
    if (question instanceof Question.Resume resume) {
      String filled = setup.phrases().filled(resume.record());
      return "An unfinished bird was found"
          + (filled.isEmpty() ? ", without any value" : ": " + filled)
          + ". Affirm carries it on, negative sets it aside.";
    }
    if (question instanceof Question.Abandon && state.isCorrecting()) {
      return "Give this correction up? The record stays as it was saved.";
    }
    if (question instanceof Question.End && state.record().isEmpty()) {
      return "Still open: nets "
          + String.join(", ", state.desk().nets().open())
          + ". End the session? They count on until they are closed.";
    }
    if (question instanceof Question.End && state.isCorrecting()) {
      return "End the session? The correction is not saved; it is offered again at the next start.";
    }
    if (question instanceof Question.Abandon) {
      return "Abandon this record? Its journal is kept.";
    }
    if (question instanceof Question.End) {
      return "End the session? The unfinished bird is kept for the next start.";
    }
    if (question instanceof Question.EndUnstored) {
      return "Not everything is stored, and what is not is lost at the end. End the session?";
    }
    throw new AssertionError(question);
  }
}
