package org.calamus.adapter.plain;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.calamus.core.dialogue.Page;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.Pictures;
import org.calamus.core.dialogue.View;
import org.calamus.core.readback.Course;
import org.calamus.core.readback.Strip;
import org.calamus.core.record.FieldId;

/**
 * Tells in words what is new in a view, so far as a reader of lines needs it: parts, cautions,
 * values and where measures fall, saved records, messages, the time in the hand, earlier captures,
 * questions, what is asked, the menu, and pages. Used by one thread at a time.
 */
final class ViewChanges {

  private Optional<View> last = Optional.empty();
  private View.Mode attention = View.Mode.LISTENING;

  /** The lines that tell how the view differs from the one before; the first tells all. */
  List<String> since(View view) {
    List<String> lines = new ArrayList<>();
    addHealth(lines, view);
    addAttention(lines, view);
    addCautions(lines, view);
    addValues(lines, view);
    addPlaces(lines, view);
    addSaved(lines, view);
    if (!view.message().isBlank() && !view.message().equals(before(View::message, ""))) {
      lines.add(view.message());
    }
    addHold(lines, view);
    addHistory(lines, view);
    addQuestion(lines, view);
    if (!view.asked().isBlank() && !view.asked().equals(before(View::asked, ""))) {
      lines.add("asked: " + view.asked());
    }
    addMenu(lines, view);
    addPage(lines, view);
    last = Optional.of(view);
    return lines.stream().map(ViewChanges::inOneLine).toList();
  }

  private <T> T before(Function<View, T> part, T otherwise) {
    return last.map(part).orElse(otherwise);
  }

  private void addHealth(List<String> lines, View view) {
    Map<Part, View.Health> known = new HashMap<>();
    before(View::health, List.<View.Health>of()).forEach(part -> known.put(part.part(), part));
    for (View.Health part : view.health()) {
      boolean isHeardOf = part.isUp() || part.isDown();
      if (isHeardOf && !part.equals(known.get(part.part()))) {
        String state = part.isUp() ? " ok" : " DOWN";
        String sentence = part.sentence().isBlank() ? "" : ": " + part.sentence();
        lines.add(part.part().word() + state + sentence);
      }
    }
  }

  /** Whether the console heeds what is said, when that changes. */
  private void addAttention(List<String> lines, View view) {
    View.Mode mode = view.mode();
    boolean isShut = mode == View.Mode.PAUSED || mode == View.Mode.PRESS_TO_TALK;
    View.Mode now = isShut ? mode : View.Mode.LISTENING;
    // while the console speaks, its mode does not tell
    if (mode != View.Mode.SPEAKING && now != attention) {
      attention = now;
      lines.add("ears " + now.word());
    }
  }

  private void addCautions(List<String> lines, View view) {
    if (!view.cautions().equals(before(View::cautions, List.of()))) {
      view.cautions().forEach(caution -> lines.add("caution: " + caution));
    }
  }

  private void addValues(List<String> lines, View view) {
    Map<FieldId, View.Line> known = new HashMap<>();
    before(View::lines, List.<View.Line>of()).forEach(line -> known.put(line.field(), line));
    boolean isOpened = !view.correcting().equals(before(View::correcting, ""));
    boolean isNewRecord =
        isOpened || view.savedCount() != before(View::savedCount, view.savedCount());
    if (isOpened) {
      lines.add(view.correcting().isEmpty() ? "correction closed" : view.correcting());
    }
    for (View.Line line : view.lines()) {
      View.Line old = known.get(line.field());
      boolean isHeld = isHeld(line);
      boolean wasHeld = old != null && isHeld(old);
      if (isHeld && !line.equals(old)) {
        String taken = line.standing() == View.Standing.CONFIRMED ? "confirmed: " : "taken: ";
        String standing = isOpened && !view.correcting().isEmpty() ? "recorded: " : taken;
        lines.add(standing + line.label() + " " + line.value() + " (" + line.way() + ")");
      } else if (wasHeld && line.value().isBlank() && !isNewRecord) {
        lines.add("emptied: " + line.label());
      }
    }
  }

  /** Whether a value is in the record, as one in question is not yet. */
  private static boolean isHeld(View.Line line) {
    return !line.value().isBlank() && line.standing() != View.Standing.IN_QUESTION;
  }

  /**
   * What a drawing shows on another screen: where the measure in work falls, and earlier masses.
   */
  private void addPlaces(List<String> lines, View view) {
    Optional<String> strip = strip(view.pictures());
    Optional<String> masses = masses(view.pictures());
    strip
        .filter(s -> !strip.equals(before(v -> strip(v.pictures()), Optional.empty())))
        .ifPresent(s -> lines.add("placed: " + s));
    masses
        .filter(m -> !masses.equals(before(v -> masses(v.pictures()), Optional.empty())))
        .ifPresent(m -> lines.add("masses: " + m));
  }

  private static Optional<String> strip(Pictures pictures) {
    return pictures.current().map(Strip::sentence);
  }

  private static Optional<String> masses(Pictures pictures) {
    return pictures.masses().filter(any -> pictures.isWeighing()).map(Course::words);
  }

  private void addSaved(List<String> lines, View view) {
    if (view.savedCount() > before(View::savedCount, view.savedCount())) {
      String record = view.recent().isEmpty() ? "" : ": " + view.recent().get(0);
      lines.add("saved " + view.savedCount() + record);
    }
  }

  private void addHold(List<String> lines, View view) {
    boolean isNew = view.hold() != before(View::hold, View.Hold.WITHIN);
    if (isNew && view.hold() == View.Hold.LONG) {
      lines.add("held LONG: in hand " + inHand(view));
    } else if (isNew && view.hold() == View.Hold.OVER) {
      lines.add("held OVER LIMIT: RELEASE: in hand " + inHand(view));
    }
  }

  private static String inHand(View view) {
    Duration time = view.inHand().orElse(Duration.ZERO);
    return String.format(Locale.ROOT, "%d:%02d", time.toMinutes(), time.toSecondsPart());
  }

  private void addHistory(List<String> lines, View view) {
    if (!view.history().equals(before(View::history, List.of()))) {
      view.history().forEach(capture -> lines.add("history: " + capture));
    }
  }

  /** The menu when it opens; the codes of a field would be told at every record anew. */
  private void addMenu(List<String> lines, View view) {
    if (view.hasCommands() && !before(View::hasCommands, false)) {
      lines.add(
          view.choices().stream()
              .map(choice -> choice.keys() + " " + choice.text())
              .collect(Collectors.joining(", ", "menu: ", "")));
    }
  }

  /** A page with all its rows when it opens, the row that is chosen, and the way back. */
  private void addPage(List<String> lines, View view) {
    Optional<Page> old = before(View::page, Optional.empty());
    if (view.page().isEmpty()) {
      if (old.isPresent() && !view.hasCommands()) {
        lines.add("page: capture");
      }
      return;
    }
    Page page = view.page().get();
    boolean isNew = old.filter(o -> o.title().equals(page.title())).isEmpty();
    if (isNew) {
      lines.add("page: " + page.title());
      page.rows().stream().map(ViewChanges::row).filter(row -> !row.isBlank()).forEach(lines::add);
    }
    page.chosen()
        .filter(number -> isNew || !page.chosen().equals(old.flatMap(Page::chosen)))
        .ifPresent(number -> lines.add("chosen: row " + number));
  }

  private static String row(Page.Row row) {
    return Stream.of(row.number(), row.mark(), row.text(), row.more())
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining(" ", "  ", ""));
  }

  private void addQuestion(List<String> lines, View view) {
    boolean isNew = !view.question().equals(before(View::question, Optional.empty()));
    boolean isCheck = view.mode() == View.Mode.CHECK;
    boolean wasCheck = before(View::mode, View.Mode.LISTENING) == View.Mode.CHECK;
    if (view.question().isPresent()) {
      if (isNew) {
        lines.add("CHECK " + view.question().get());
      }
    } else if (isCheck && !wasCheck) {
      lines.add("CHECK");
    }
  }

  private static String inOneLine(String text) {
    return text.replaceAll("\\p{Cntrl}+", " ");
  }
}
