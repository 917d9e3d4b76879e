package org.calamus.core.dialogue;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.record.FieldId;
import org.calamus.core.summary.SpeciesCount;

/**
 * The species with the numbers that are struck for them, so that the keypad alone finds one: those
 * caught this season first, the most frequent at the top, then the others in the table's order.
 */
final class NumbersPage {

  private static final int CODE_CELLS = 8;
  private static final int NAME_CELLS = 44;
  private static final int COUNT_CELLS = 5;

  private final Setup setup;

  NumbersPage(Setup setup) {
    this.setup = setup;
  }

  /** Whether the species is asked, so that the list is wanted. */
  boolean isAsked(State state) {
    return Dialogue.askedField(state).filter(FieldId.SPECIES::equals).isPresent()
        && !table().isEmpty();
  }

  PageContent of(State state) {
    List<CodeTable.Row> others = new ArrayList<>(table());
    List<PageRow> caught = new ArrayList<>();
    for (SpeciesCount count : counts(state)) {
      Optional<CodeTable.Row> row =
          others.stream().filter(r -> count.species().equals(Optional.of(r.code()))).findFirst();
      row.ifPresent(r -> caught.add(row(r, birds(count))));
      row.ifPresent(others::remove);
    }
    List<PageRow> rows = new ArrayList<>();
    rows.add(PageRow.title("Strike a number, then Enter: the species is taken."));
    if (!caught.isEmpty()) {
      rows.add(PageRow.title("Caught this year"));
      rows.addAll(caught);
      rows.add(PageRow.title("The others"));
    }
    others.forEach(r -> rows.add(row(r, "")));
    return new PageContent(PageName.NUMBERS.title(), rows);
  }

  private List<CodeTable.Row> table() {
    boolean isCoded =
        setup.form().has(FieldId.SPECIES)
            && setup.form().spec(FieldId.SPECIES).kind() instanceof FieldKind.Coded;
    return isCoded
        ? ((FieldKind.Coded) setup.form().spec(FieldId.SPECIES).kind()).table().rows()
        : List.of();
  }

  /** The species of the season, the most birds first. */
  private List<SpeciesCount> counts(State state) {
    LocalDate day = PageContents.today(setup, state);
    ZoneId zone = setup.station().zone();
    return SpeciesCount.of(PageContents.known(state).captures(), day, zone).stream()
        .sorted(Comparator.comparing(c -> -c.season().total()))
        .toList();
  }

  private static String birds(SpeciesCount count) {
    return PageText.right(count.season().total(), COUNT_CELLS)
        + (count.season().total() == 1 ? " bird" : " birds");
  }

  private static PageRow row(CodeTable.Row row, String birds) {
    String text =
        PageText.padded(row.shown(), CODE_CELLS) + PageText.padded(row.words(), NAME_CELLS) + birds;
    return PageRow.chosenBy(
        row.digits(),
        text.stripTrailing(),
        new PageRow.Subject.OfCode(FieldId.SPECIES, row.code()));
  }
}
