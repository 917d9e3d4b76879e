package org.calamus.core.speech;

import java.time.Month;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.record.FieldId;

/**
 * Reads a vocabulary file: {@code section} lines, lines {@code words = meaning}, lines {@code word
 * / pronunciation}, and comments behind {@code #}.
 *
 * <p>Meanings: {@code digit N}, {@code number N}, {@code tens N}, {@code hundred}, {@code
 * hundred-and}, {@code hundred-hours}, {@code ordinal N}, {@code month N}, {@code point}, {@code
 * letter X}, {@code field NAME}, {@code code FIELD CODE} (the field {@code *} is the one asked;
 * several are parted by commas), {@code command NAME}, {@code nothing}. A meaning may be followed
 * by {@code / phones} where the form is one word.
 *
 * <p>A form has one meaning in all files, but for a name of a field that is also a code of certain
 * fields: it is the code while one of those is asked, and else the name; and for a letter that is
 * also a month, while a date is asked.
 */
public final class WordsFile {

  private static final Set<String> PHONES =
      Arrays.stream(
              ("AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T"
                      + " TH UH UW V W Y Z ZH")
                  .split(" "))
          .collect(Collectors.toUnmodifiableSet());

  private static final Set<String> FLAGS = Set.of("joined", "short", "written");

  /** How many words follow the first word of a meaning. */
  private static final Map<String, Integer> ARGUMENTS =
      Map.of(
          "digit", 1, "number", 1, "tens", 1, "ordinal", 1, "month", 1, "letter", 1, "field", 1,
          "code", 2, "command", 1);

  private WordsFile() {}

  /**
   * What a file holds.
   *
   * @param forms its spoken forms
   * @param pronunciations its pronunciations by word
   * @param pronouncedAt where they stand
   * @param problems one sentence for each line that cannot be read, beginning with file and line
   */
  public record Contents(
      List<SpokenForm> forms,
      Map<String, List<String>> pronunciations,
      Map<String, String> pronouncedAt,
      List<String> problems) {}

  /**
   * Reads the lines of a file.
   *
   * @param file its name, for messages
   * @param lines its lines
   */
  public static Contents read(String file, List<String> lines) {
    Contents contents =
        new Contents(
            new ArrayList<>(), new LinkedHashMap<>(), new LinkedHashMap<>(), new ArrayList<>());
    SpokenForm.Section section = SpokenForm.Section.NONE;
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).replaceFirst("#.*", "").strip();
      String where = file + ":" + (i + 1);
      if (line.matches("section(\\s[^=]*)?")) {
        section = section(line, where, contents);
      } else if (!line.isEmpty()) {
        readLine(line, section, where, contents);
      }
    }
    return contents;
  }

  /**
   * Puts the contents of several files together and looks for forms with two meanings.
   *
   * @param files the contents
   * @param problems where the problems go
   */
  public static Vocabulary join(List<Contents> files, List<String> problems) {
    List<SpokenForm> forms = new ArrayList<>();
    Map<String, List<String>> pronunciations = new LinkedHashMap<>();
    Map<String, String> pronouncedAt = new LinkedHashMap<>();
    Map<String, SpokenForm> byText = new LinkedHashMap<>();
    for (Contents file : files) {
      problems.addAll(file.problems());
      pronouncedAt.putAll(file.pronouncedAt());
      file.pronunciations()
          .forEach((w, p) -> pronunciations.computeIfAbsent(w, x -> new ArrayList<>()).addAll(p));
      for (SpokenForm form : file.forms()) {
        SpokenForm before = byText.putIfAbsent(form.text(), form);
        Optional<Token> both =
            Optional.ofNullable(before).flatMap(b -> together(b.meaning(), form.meaning()));
        if (before == null) {
          forms.add(form);
        } else if (both.isPresent()) {
          // how it is said without a pause is known where either is
          SpokenForm joined = (form.section().isJoined() ? form : before).meaning(both.get());
          byText.put(form.text(), joined);
          forms.set(forms.indexOf(before), joined);
        } else if (!before.meaning().equals(form.meaning())) {
          problems.add(
              form.where()
                  + ": \""
                  + form.text()
                  + "\" already has another meaning at "
                  + before.where()
                  + "; change one of the two.");
        }
      }
    }
    return new Vocabulary(forms, pronunciations, pronouncedAt);
  }

  /**
   * The two meanings as one, where one is a name and the other a code of certain fields, or one a
   * letter and the other a month.
   */
  private static Optional<Token> together(Token before, Token next) {
    if (before instanceof Token.NameOrCode both
        && (both.name().equals(next) || both.words().equals(next))) {
      return Optional.of(both);
    }
    if (before instanceof Token.Letter letter && next instanceof Token.MonthName month) {
      return Optional.of(new Token.LetterOrMonth(letter, month));
    }
    if (before instanceof Token.MonthName && next instanceof Token.Letter) {
      return together(next, before);
    }
    if (before instanceof Token.Field name && next instanceof Token.CodeWords words) {
      return words.fields().isEmpty()
          ? Optional.empty()
          : Optional.of(new Token.NameOrCode(name, words));
    }
    return before instanceof Token.CodeWords && next instanceof Token.Field
        ? together(next, before)
        : Optional.empty();
  }

  private static SpokenForm.Section section(String line, String where, Contents contents) {
    List<String> parts = List.of(line.split("\\s+"));
    if (parts.size() == 1) {
      contents.problems().add(where + ": a section needs a name.");
      return SpokenForm.Section.NONE;
    }
    List<String> flags = parts.subList(2, parts.size());
    for (String flag : flags) {
      if (!FLAGS.contains(flag)) {
        contents
            .problems()
            .add(where + ": \"" + flag + "\" is no kind of section; use joined, short or written.");
      }
    }
    return new SpokenForm.Section(
        parts.get(1), flags.contains("joined"), flags.contains("short"), flags.contains("written"));
  }

  private static void readLine(
      String line, SpokenForm.Section section, String where, Contents contents) {
    String[] halves = line.split("/", 2);
    String[] sides = halves[0].split("=", 2);
    List<String> words =
        Arrays.stream(sides[0].strip().toLowerCase(Locale.ROOT).split("\\s+"))
            .filter(w -> !w.isEmpty())
            .toList();
    if (words.isEmpty()) {
      contents.problems().add(where + ": there is no word before the sign.");
      return;
    }
    if (halves.length == 2) {
      pronunciation(words, halves[1].strip(), where, contents);
    }
    if (sides.length == 2) {
      Optional<Token> meaning = meaning(sides[1].strip());
      meaning.ifPresentOrElse(
          m -> contents.forms().add(new SpokenForm(words, m, section, where)),
          () ->
              contents
                  .problems()
                  .add(where + ": \"" + sides[1].strip() + "\" is no meaning that Calamus knows."));
    } else if (halves.length == 1) {
      contents.problems().add(where + ": a line is  words = meaning  or  word / phones.");
    }
  }

  private static void pronunciation(
      List<String> words, String phones, String where, Contents contents) {
    List<String> unknown =
        Arrays.stream(phones.split("\\s+")).filter(p -> !PHONES.contains(p)).toList();
    if (words.size() != 1) {
      contents.problems().add(where + ": a pronunciation stands behind one word, not several.");
    } else if (phones.isEmpty()) {
      contents.problems().add(where + ": there are no phones behind the slash.");
    } else if (!unknown.isEmpty()) {
      contents
          .problems()
          .add(where + ": \"" + String.join(" ", unknown) + "\" is no phone of the model.");
    } else {
      contents
          .pronunciations()
          .computeIfAbsent(words.get(0), w -> new ArrayList<>())
          .add(String.join(" ", phones.split("\\s+")));
      contents.pronouncedAt().putIfAbsent(words.get(0), where);
    }
  }

  private static Optional<Token> meaning(String text) {
    List<String> parts = List.of(text.split("\\s+"));
    String argument = parts.size() > 1 ? parts.get(1) : "";
    if (parts.size() != 1 + ARGUMENTS.getOrDefault(parts.get(0), 0)) {
      return Optional.empty();
    }
    return switch (parts.get(0)) {
      case "digit" -> number(argument, 0, 9).map(Token.Digit::new);
      case "number" -> number(argument, 10, 19).map(Token.Teen::new);
      case "tens" -> number(argument, 20, 90).filter(n -> n % 10 == 0).map(Token.Tens::new);
      case "ordinal" -> number(argument, 1, 30).map(Token.Ordinal::new);
      case "month" -> number(argument, 1, 12).map(Month::of).map(Token.MonthName::new);
      case "hundred" -> Optional.of(new Token.Hundred());
      case "hundred-and" -> Optional.of(new Token.HundredAnd());
      case "hundred-hours" -> Optional.of(new Token.HundredHours());
      case "point" -> Optional.of(new Token.Point());
      case "letter" ->
          argument.matches("[A-Z]")
              ? Optional.of(new Token.Letter(argument.charAt(0)))
              : Optional.empty();
      case "field" -> FieldId.ofKey(argument).map(Token.Field::new);
      case "code" -> code(argument, parts.get(2));
      case "command" -> Command.named(argument).map(Token.Order::new);
      case "nothing" -> Optional.of(new Token.Nothing());
      default -> Optional.empty();
    };
  }

  private static Optional<Integer> number(String text, int least, int most) {
    if (!text.matches("\\d{1,2}")) {
      return Optional.empty();
    }
    return Optional.of(Integer.parseInt(text)).filter(n -> n >= least && n <= most);
  }

  private static Optional<Token> code(String field, String code) {
    if (field.equals("*")) {
      return Optional.of(new Token.CodeWords(Set.of(), code));
    }
    List<Optional<FieldId>> fields =
        Arrays.stream(field.split(",", -1)).map(FieldId::ofKey).toList();
    return fields.stream().allMatch(Optional::isPresent)
        ? Optional.of(
            new Token.CodeWords(
                fields.stream().map(Optional::orElseThrow).collect(Collectors.toSet()), code))
        : Optional.empty();
  }
}
