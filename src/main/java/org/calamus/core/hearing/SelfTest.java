package org.calamus.core.hearing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.Form;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Expected;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Grammars;
import org.calamus.core.speech.Interpreter;
import org.calamus.core.speech.Meaning;
import org.calamus.core.speech.SpokenForm;
import org.calamus.core.speech.Token;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Vocabulary;
import org.calamus.core.speech.Word;

/**
 * What is asked in the self-test: every digit, number words, a species by its name and in letters,
 * ages, a correction and commands, each while the field is asked for which it would be said. What a
 * station's form or vocabulary does not have is left out.
 *
 * @param form the station's form
 * @param interpreter makes meaning of what is heard
 * @param grammars what is listened for
 */
public record SelfTest(Form form, Interpreter interpreter, Grammars grammars) {

  private static final String SPECIES = "white breasted nuthatch";

  private static final List<Probe> USUAL =
      List.of(
          new Probe("two eight four one, five five, six zero one", Optional.of(FieldId.BAND)),
          new Probe("sierra oscar sierra papa", Optional.of(FieldId.SPECIES)),
          new Probe("second year", Optional.of(FieldId.AGE)),
          new Probe("hatching year, sex unknown", Optional.of(FieldId.AGE)),
          new Probe("ninety three", Optional.of(FieldId.WING)),
          new Probe("correction, nine two", Optional.of(FieldId.MASS)),
          new Probe("two seven point three", Optional.of(FieldId.MASS)),
          new Probe("next field", Optional.of(FieldId.MASS)),
          new Probe("save record", Optional.empty()));

  /** No probe is a value in short; the day is that of nothing. */
  private static final Expected NOTHING_EXPECTED = new Expected(Optional.empty(), LocalDate.EPOCH);

  /** A self-test of a vocabulary. */
  public SelfTest(Form form, Vocabulary vocabulary) {
    this(form, new Interpreter(vocabulary, form), new Grammars(vocabulary.within(form)));
  }

  /** What is asked, in order: ten, where the station has all of it. */
  public List<Probe> probes() {
    List<Probe> probes = new ArrayList<>(USUAL.stream().filter(this::isSayable).toList());
    species().ifPresent(p -> probes.add(Math.min(1, probes.size()), p));
    return probes;
  }

  /** What the console would be listening for. */
  public Grammar grammar(Probe probe) {
    return grammars.asking(probe.field().map(form::spec));
  }

  /** Compares what was heard with what was asked for, by what they mean. */
  public Answer answer(Probe probe, Utterance heard) {
    if (heard.words().stream().allMatch(w -> w.text().equals(Word.UNKNOWN))) {
      return new Answer.NotHeard();
    }
    return meaning(probe, heard).equals(meaning(probe, probe.meant()))
        ? new Answer.Right()
        : new Answer.HeardAs(heard.text());
  }

  private Meaning meaning(Probe probe, Utterance utterance) {
    return interpreter.interpret(utterance, probe.field(), probe.field(), NOTHING_EXPECTED);
  }

  private boolean isSayable(Probe probe) {
    return probe.field().map(form::has).orElse(true)
        && !(meaning(probe, probe.meant()) instanceof Meaning.Unclear);
  }

  /** The usual species, or the first of a vocabulary that does not have it. */
  private Optional<Probe> species() {
    Probe usual = new Probe(SPECIES, Optional.of(FieldId.SPECIES));
    if (isSayable(usual)) {
      return Optional.of(usual);
    }
    return interpreter.vocabulary().forms().stream()
        .filter(SelfTest::isSpecies)
        .map(f -> new Probe(f.text(), Optional.of(FieldId.SPECIES)))
        .filter(this::isSayable)
        .findFirst();
  }

  private static boolean isSpecies(SpokenForm form) {
    return form.meaning() instanceof Token.CodeWords words
        && words.fields().contains(FieldId.SPECIES);
  }
}
