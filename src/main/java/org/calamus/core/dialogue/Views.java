package org.calamus.core.dialogue;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.instrument.Weighing;
import org.calamus.core.readback.Phrases;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Reading;

/** Makes the view of a state: every word that the screen shows. */
public final class Views {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  /** What every session begins with. */
  static final List<String> CAUTIONS =
      List.of(
          "The bird's welfare comes first: release a stressed bird unmeasured.",
          "Never force a band. Follow your permit, your scheme's rules and your training;"
              + " where they differ from what Calamus says, they are right.");

  private final Setup setup;
  private final Choices choices;
  private final Conclusions conclusions;
  private final Holding holding;
  private final Drawing drawing;

  /** Views over a session's setup. */
  public Views(Setup setup) {
    this.setup = setup;
    this.choices = new Choices(setup);
    this.conclusions = new Conclusions(setup);
    this.holding = new Holding(setup.rules().policy());
    this.drawing = new Drawing(setup);
  }

  /** The view of a state. */
  public View of(State state) {
    return new View(
        mode(state),
        station(state),
        asked(state),
        state.face().keys().isEmpty() ? state.face().big() : state.face().keys(),
        state.face().keys().isEmpty() ? state.face().bigOf() : "",
        lines(state),
        question(state),
        state.face().message(),
        health(state),
        state.console().decibels(),
        state.console().live().map(l -> live(l.reading()) + unseen(state.console(), l.port())),
        new Hints(setup).of(state),
        nextBand(state),
        holding.held(state),
        state.savedCount(),
        state.recent(),
        state.face().hasCautions() ? CAUTIONS : List.of(),
        choices.of(state),
        conclusions.lines(state),
        holding.hold(state),
        drawing.of(state),
        state.desk().correction().map(c -> "correcting " + Correction.name(c.saved())).orElse(""),
        Pages.view(state));
  }

  /** While a saved record is open its own band seems free: the next one is for no bird then. */
  private String nextBand(State state) {
    return state.isCorrecting()
        ? ""
        : new NextBand(setup).behindBird(state).map(b -> b.text()).orElse("");
  }

  private static View.Mode mode(State state) {
    boolean hears = state.console().isUp(Part.EARS);
    if (state.console().isSpeaking()) {
      return View.Mode.SPEAKING;
    }
    if (hears && Heeding.isPaused(state)) {
      return View.Mode.PAUSED;
    }
    if (hears && !Heeding.wantsEars(state)) {
      return View.Mode.PRESS_TO_TALK;
    }
    if (state.question().isPresent()) {
      return View.Mode.CHECK;
    }
    if (!hears) {
      return View.Mode.KEYPAD;
    }
    return state.console().isHearing() ? View.Mode.HEARING : View.Mode.LISTENING;
  }

  private String station(State state) {
    Setup.Station station = setup.station();
    return String.join(
        "  ",
        station.place(),
        station.bander(),
        TIME.format(state.console().now().atZone(station.zone())));
  }

  private String asked(State state) {
    if (Errands.isOpen(state)) {
      return Errands.asked(state.question().orElseThrow());
    }
    if (Values.isOtherQuestion(state)) {
      return "Affirm or negative?";
    }
    return Dialogue.askedField(state)
        .map(setup.form()::spec)
        .map(FieldSpec::labelWithUnit)
        .orElse(state.isCorrecting() ? "Name a field, or save" : "Save this record?");
  }

  private List<View.Line> lines(State state) {
    List<View.Line> lines = new ArrayList<>();
    for (FieldSpec spec : shown(state)) {
      Optional<Entry> entry = state.record().flatMap(r -> r.entry(spec.id()));
      Optional<Question.Keep> keep = keepFor(state, spec.id());
      Optional<FieldValue> now = keep.map(Question.Keep::value).or(() -> entry.map(Entry::value));
      Optional<Entry> was = Correcting.was(state, spec.id());
      String value = now.map(v -> shown(spec, v, was.map(Entry::value))).orElse("");
      String way =
          keep.map(k -> k.provenance().way().word())
              .or(() -> entry.map(e -> e.provenance().way().word()))
              .orElse("");
      View.Standing standing =
          keep.isPresent() ? View.Standing.IN_QUESTION : standing(state, spec, entry);
      lines.add(new View.Line(spec.id(), spec.label(), value, way, standing));
    }
    return lines;
  }

  /** A value; where it takes the place of a saved one both in short, so that both have room. */
  private String shown(FieldSpec spec, FieldValue now, Optional<FieldValue> was) {
    return was.map(w -> View.Line.corrected(Phrases.brief(spec, now), Phrases.brief(spec, w)))
        .orElseGet(() -> setup.phrases().shown(spec, now));
  }

  private static Optional<Question.Keep> keepFor(State state, FieldId field) {
    return state
        .question()
        .flatMap(
            q ->
                q instanceof Question.Keep keep && keep.field() == field
                    ? Optional.of(keep)
                    : Optional.empty());
  }

  private List<FieldSpec> shown(State state) {
    Form form = setup.form();
    List<FieldSpec> shown =
        state
            .record()
            .map(form::shown)
            .orElseGet(() -> form.asked(CaptureKind.NEW).stream().map(form::spec).toList());
    Optional<FieldSpec> asked =
        Dialogue.askedField(state).map(form::spec).filter(s -> !shown.contains(s));
    return Stream.concat(shown.stream(), asked.stream()).toList();
  }

  private View.Standing standing(State state, FieldSpec spec, Optional<Entry> entry) {
    if (state.question().isEmpty() && state.open().map(spec.id()::equals).orElse(false)) {
      return View.Standing.ASKED;
    }
    if (entry.isPresent()) {
      return entry.get().isConfirmedDoubt() ? View.Standing.CONFIRMED : View.Standing.TAKEN;
    }
    CaptureKind kind = state.record().map(CaptureRecord::kind).orElse(CaptureKind.NEW);
    return setup.form().need(kind, spec.id()).filter(n -> n == Form.Need.REQUIRED).isPresent()
        ? View.Standing.MISSING
        : View.Standing.EMPTY;
  }

  private Optional<String> question(State state) {
    return state.question().map(q -> new Questions(setup).shown(state, q));
  }

  private static List<View.Health> health(State state) {
    List<View.Health> all = new ArrayList<>();
    for (Part part : Part.values()) {
      boolean isUsed = part != Part.KEEPER || state.console().health().containsKey(part);
      if (isUsed) {
        all.add(state.console().health().getOrDefault(part, new View.Health(part, false, "")));
      }
    }
    return all;
  }

  private static String live(Reading reading) {
    String word =
        switch (reading.stability()) {
          case STABLE -> "  stable";
          case MOVING -> "  moving";
          case UNSTATED -> "";
        };
    return reading.amount().toPlainString() + " " + reading.unit().symbol() + word;
  }

  /** Why a load that lies on the pan already will not be taken, and what to do about it. */
  private static String unseen(Console console, String port) {
    boolean isUnseen =
        Optional.ofNullable(console.weighings().get(port))
            .filter(Weighing::isLoadedBeforeSeenEmpty)
            .isPresent();
    return isUnseen ? "  empty it first" : "";
  }
}
