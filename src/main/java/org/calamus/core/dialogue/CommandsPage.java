package org.calamus.core.dialogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.calamus.core.form.FieldSpec;

/**
 * What can be said and struck: made of the tables that the dialogue itself goes by, as the state is
 * when the capture screen is shown again.
 */
final class CommandsPage {

  private static final int KEY_CELLS = 8;
  private static final int WORD_CELLS = 27;

  private final Setup setup;

  CommandsPage(Setup setup) {
    this.setup = setup;
  }

  PageContent of(State state) {
    State capture = Pages.left(state);
    List<PageRow> rows = new ArrayList<>();
    Dialogue.askedField(capture)
        .map(setup.form()::spec)
        .ifPresent(spec -> rows.addAll(asked(spec, capture)));
    rows.add(PageRow.title("Commands"));
    rows.add(PageRow.head(columns("keys", "words", "what it does")));
    for (Sayable sayable : Sayable.ALL) {
      if (!Pages.isOfPage(sayable.command()) && sayable.isShown(capture)) {
        rows.add(command(sayable, sayable.unavailable(capture)));
      }
    }
    rows.add(PageRow.text(columns("+ /", "released", "the bird goes, values stay")));
    rows.add(PageRow.text(columns("space", "", "opens the ears, ends an utterance")));
    rows.add(PageRow.title("On a page"));
    rows.add(PageRow.text(columns("digits", "", "choose a row by its number")));
    rows.add(PageRow.text(columns("Enter", "affirm", "opens it; a record: corrects it")));
    Sayable.ALL.stream()
        .filter(s -> Pages.isOfPage(s.command()))
        .forEach(s -> rows.add(command(s, "")));
    rows.addAll(fields());
    return new PageContent(PageName.COMMANDS.title(), rows);
  }

  private PageRow command(Sayable sayable, String reason) {
    String meaning = sayable.meaning() + (reason.isEmpty() ? "" : " (" + reason + ")");
    String words = setup.words(sayable.command()).orElse("");
    return PageRow.text(columns(keys(sayable.keys()), words, meaning));
  }

  /** Signs beside each other are struck one after the other: parted, they are read more easily. */
  private static String keys(String keys) {
    return keys.startsWith("+") ? ("+ " + keys.substring(1)).strip() : keys;
  }

  private List<PageRow> asked(FieldSpec spec, State capture) {
    List<PageRow> rows = new ArrayList<>();
    rows.add(PageRow.title("Asked now: " + spec.labelWithUnit()));
    rows.add(
        PageRow.text("say " + new Prompts(setup).howToSay(spec) + "; or strike it, then Enter"));
    List<View.Choice> codes = new Choices(setup).codes(spec);
    codes.forEach(c -> rows.add(PageRow.text(columns(c.keys(), c.meaning(), ""))));
    return rows;
  }

  private List<PageRow> fields() {
    List<PageRow> rows = new ArrayList<>();
    rows.add(PageRow.title("Fields: two digits behind +, or the field's name"));
    List<FieldSpec> all = setup.form().fields();
    for (int i = 0; i < all.size(); i++) {
      String number = String.format(Locale.ROOT, "+ %02d", i + 1);
      rows.add(PageRow.text(columns(number, all.get(i).spoken(), all.get(i).labelWithUnit())));
    }
    return rows;
  }

  private static String columns(String keys, String words, String meaning) {
    return (PageText.padded(keys, KEY_CELLS) + PageText.padded(words, WORD_CELLS) + meaning)
        .stripTrailing();
  }
}
