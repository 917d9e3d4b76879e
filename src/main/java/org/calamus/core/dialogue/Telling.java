package org.calamus.core.dialogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.readback.Phrases;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;

/** The part of the dialogue that tells what there is and changes nothing. */
final class Telling {

  /** What one phrase may hold, since the ears are shut while it is said. */
  private static final int GROUP = 4;

  private final Setup setup;
  private final Form form;
  private final Phrases phrases;
  private final Prompts prompts;

  Telling(Setup setup) {
    this.setup = setup;
    this.form = setup.form();
    this.phrases = setup.phrases();
    this.prompts = new Prompts(setup);
  }

  /** Says the last phrase again; asked once more, the same in other words. */
  Step repeat(State state) {
    Face face = state.face();
    if (face.lastSaid().isEmpty()) {
      return prompts.prompt(state, "");
    }
    boolean isFirst = face.told().repeats() % 2 == 0;
    String phrase = isFirst ? face.lastSaid() : otherwise(state);
    return Step.of(state.face(f -> f.withRepeats(f.told().repeats() + 1)))
        .then(new Effect.Say(phrase));
  }

  /** Where the bander stands, in other words than those just said. */
  private String otherwise(State state) {
    if (state.question().isPresent()) {
      return question(state.question().get());
    }
    String last =
        state
            .lastGiven()
            .map(f -> "last was " + field(state, f) + ". ")
            .orElse(state.record().isEmpty() ? "no bird begun. " : "");
    String next =
        state
            .open()
            .map(f -> "now " + form.spec(f).label().toLowerCase(java.util.Locale.ROOT))
            .orElse("now save record");
    return last + next;
  }

  private String question(Question question) {
    if (question instanceof Question.Keep keep) {
      return phrases.spokenWithName(form.spec(keep.field()), keep.value())
          + " is in question. affirm keeps it, negative drops it";
    }
    if (question instanceof Question.Which which) {
      return "two numbers sound alike. " + Twins.answers(which);
    }
    if (Errands.isErrand(question)) {
      return "a question is open. " + Errands.answers(question);
    }
    return BandQuestions.isBand(question)
        ? "the band is in question. " + BandQuestions.answers(question)
        : "a question is open. " + fitting(question);
  }

  private static String fitting(Question question) {
    if (question instanceof Question.Lacking) {
      return "affirm goes on without, negative asks for it. or give the next value";
    }
    if (question instanceof Question.Resume resume && resume.saved().isPresent()) {
      return "affirm carries the correction on, negative gives it up";
    }
    if (question instanceof Question.Resume) {
      return "affirm carries the bird on, negative sets it aside";
    }
    return question instanceof Question.Abandon
        ? "affirm gives the record up, negative keeps it"
        : "affirm ends the session, negative goes on";
  }

  /**
   * Reads the record back, a few values at a time; the next are said when the voice has been silent
   * for a moment, unless something was said or struck meanwhile.
   */
  Step readBack(State state, Optional<FieldId> field) {
    if (state.record().isEmpty()) {
      return Step.of(state).say("no bird begun");
    }
    if (field.isPresent()) {
      return Step.of(state).say(field(state, field.get()));
    }
    CaptureRecord record = state.record().get();
    List<String> groups = new ArrayList<>();
    List<String> group = new ArrayList<>();
    for (FieldSpec spec : form.fields()) {
      record.value(spec.id()).ifPresent(v -> group.add(phrases.spokenWithName(spec, v)));
      if (group.size() == GROUP) {
        groups.add(String.join(". ", group));
        group.clear();
      }
    }
    if (!group.isEmpty()) {
      groups.add(String.join(". ", group));
    }
    if (groups.isEmpty()) {
      return Step.of(state).say("nothing yet");
    }
    return Step.of(state.face(f -> f.withRest(groups))).then(this::group);
  }

  private Step group(State state) {
    List<String> groups = state.face().told().rest();
    return Step.of(state.face(f -> f.withRest(groups.subList(1, groups.size()))))
        .say(groups.get(0));
  }

  /** A second has passed: goes on reading back where nobody spoke. */
  Step ticked(State state) {
    Console console = state.console();
    Face.Told told = state.face().told();
    boolean isVoiceUp = console.isUp(Part.VOICE);
    boolean isDue =
        !told.rest().isEmpty()
            && !console.isSpeaking()
            && !console.isHearing()
            && (told.isSaid() || !isVoiceUp);
    return isDue ? group(state) : Step.of(state);
  }

  private String field(State state, FieldId field) {
    FieldSpec spec = form.spec(field);
    Optional<FieldValue> value = state.record().flatMap(r -> r.value(field));
    return value.map(v -> phrases.spokenWithName(spec, v)).orElse(spec.spoken() + " has no value");
  }

  /** Says which required fields have no value, and how many of the others that are asked. */
  Step missing(State state, CaptureRecord record) {
    List<FieldSpec> required = form.missing(record);
    List<FieldSpec> asked =
        form.asked(record.kind()).stream()
            .map(form::spec)
            .filter(s -> record.entry(s.id()).isEmpty() && !required.contains(s))
            .toList();
    String names = required.stream().map(FieldSpec::spoken).collect(Collectors.joining(", "));
    String first = required.isEmpty() ? "nothing required is missing" : "missing " + names;
    String more = Spoken.digits(String.valueOf(asked.size())) + " more asked";
    return Step.of(
            state.message((shown("Missing: ", required) + shown("Not given: ", asked)).strip()))
        .say(asked.isEmpty() ? first : first + ". " + more);
  }

  private static String shown(String title, List<FieldSpec> fields) {
    return fields.isEmpty()
        ? ""
        : fields.stream().map(FieldSpec::label).collect(Collectors.joining(", ", title, ". "));
  }

  /** Says what fits now; the screen lists the rest. */
  Step help(State state) {
    return Step.of(state.face(Face::withHelp)).say(help(state, Dialogue.askedField(state)));
  }

  private String help(State state, Optional<FieldId> asked) {
    if (state.question().isPresent()) {
      Question question = state.question().get();
      if (Errands.isErrand(question)) {
        return Errands.answers(question) + ". negative drops the question";
      }
      if (BandQuestions.isBand(question) || question instanceof Question.Which) {
        return Questions.answers(question) + ". negative drops it";
      }
      return question instanceof Question.Keep
          ? "affirm keeps it, negative drops it. or give another value"
          : fitting(question);
    }
    return asked
        .map(f -> prompts.howToSay(form.spec(f)) + ". next field leaves it")
        .orElse("save record. or the name of a field");
  }
}
