package org.calamus.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.calamus.core.dialogue.Setup;
import org.calamus.core.form.CodeSet;
import org.calamus.core.form.Form;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.BandString;
import org.calamus.core.rule.Known;
import org.calamus.core.speech.Token;
import org.calamus.core.speech.Vocabulary;
import org.calamus.support.Fenwick;
import org.calamus.support.WholeRecord;

/**
 * Moments of a session at a station that uses the program's own form with all its fields and was
 * issued two strings of bands. Each is given by what was said before, all of it heard rightly.
 */
final class Moments {

  private static final List<BandString> STRINGS =
      List.of(
          new BandString("1B", band("2841-55601"), band("2841-55700")),
          new BandString("0", band("2760-10101"), band("2760-10200")));
  private static final Setup SETUP = WholeRecord.setup(CodeSet.LABORATORY, STRINGS);
  private static final Vocabulary VOCABULARY = Fenwick.vocabulary().within(SETUP.form());

  private static final Moment START =
      Moment.atStart(SETUP, Known.of(STRINGS, List.of(), Fenwick.ZONE));
  private static final Map<List<String>, Moment> KNOWN = new ConcurrentHashMap<>();

  private Moments() {}

  private static BandNumber band(String text) {
    return BandNumber.parse(text).orElseThrow();
  }

  /** The station's form. */
  static Form form() {
    return SETUP.form();
  }

  /** All that can be said at the station. */
  static Vocabulary vocabulary() {
    return VOCABULARY;
  }

  /** The moment after something was said from the start of a session. */
  static Moment after(List<String> said) {
    if (said.isEmpty()) {
      return START;
    }
    Moment known = KNOWN.get(said);
    if (known == null) {
      int last = said.size() - 1;
      known = after(said.subList(0, last)).says(said.get(last));
      KNOWN.put(List.copyOf(said), known);
    }
    return known;
  }

  /** What is said until a field of a new bird is asked. */
  static List<String> asking(FieldId field) {
    return asking(field, "song sparrow");
  }

  /** The same with a bird of a species. */
  static List<String> asking(FieldId field, String species) {
    return switch (field) {
      case SPECIES -> List.of();
      case BAND -> List.of(species);
      case AGE -> List.of(species, "six zero one");
      case HOW_AGED -> List.of(species, "six zero one", "second year");
      case SEX -> List.of(species, "six zero one", "second year", "plumage");
      case HOW_SEXED -> List.of(species, "six zero one", "second year", "plumage", "male");
      case OLD_BAND -> List.of("replace band");
      default -> {
        List<String> before = new ArrayList<>(asking(FieldId.HOW_SEXED, species));
        before.add("next field");
        before.add(name(field));
        yield before;
      }
    };
  }

  /** What is said until it is asked why a saved record is corrected. */
  static List<String> askingTheReason() {
    List<String> before = new ArrayList<>(asking(FieldId.HOW_SEXED));
    before.addAll(List.of("plumage", "affirm", "save record", "amend earlier bird", "affirm"));
    before.addAll(List.of("wing five nine", "save record"));
    return before;
  }

  /** Whether a meaning is a reason for a correction. */
  static boolean isReason(Token meaning) {
    return meaning instanceof Token.Order order && order.command().name().startsWith("REASON_");
  }

  /** The first words of the vocabulary that name a field. */
  static String name(FieldId field) {
    return VOCABULARY.forms().stream()
        .filter(f -> names(f.meaning(), field))
        .findFirst()
        .orElseThrow()
        .text();
  }

  /** Whether a meaning is the name of a field. */
  static boolean names(Token meaning, FieldId field) {
    return meaning instanceof Token.Field named && named.field() == field
        || meaning instanceof Token.NameOrCode both && both.name().field() == field;
  }

  /** Whether a meaning is a code of a field in words, and the code. */
  static Optional<String> code(Token meaning, FieldId field) {
    Token.CodeWords words =
        meaning instanceof Token.NameOrCode both
            ? both.words()
            : meaning instanceof Token.CodeWords own ? own : null;
    return Optional.ofNullable(words)
        .filter(w -> w.fields().contains(field))
        .map(Token.CodeWords::code);
  }
}
