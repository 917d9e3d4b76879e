package org.calamus.core.dialogue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.calamus.core.record.BandNumber;
import org.calamus.core.rule.BandString;
import org.calamus.core.rule.Finding;
import org.calamus.core.summary.StringAccount;

/** The accounts of the band strings, and what does not add up in them. */
final class StringsPage {

  private static final String HEAD =
      columns("size", "first", "last", "used", "lost", "destr", "open", "left", "next");

  private final Setup setup;

  StringsPage(Setup setup) {
    this.setup = setup;
  }

  PageContent of(State state) {
    List<StringAccount> accounts = StringAccount.of(PageContents.known(state).ledger());
    if (accounts.isEmpty()) {
      return new PageContent(
          PageName.STRINGS.title(),
          PageRow.sentence(
              "",
              "No band was used yet and station.toml declares no string: strings are learnt from"
                  + " the first band that is used."));
    }
    List<PageRow> rows = new ArrayList<>(List.of(PageRow.head(HEAD)));
    accounts.stream().filter(a -> !a.isFinished()).forEach(a -> rows.add(row(a)));
    rows.add(PageRow.text(""));
    rows.addAll(
        PageRow.sentence(
            "",
            "destr: destroyed. open: passed over and not accounted for. left: not yet reached."));
    List<Finding> findings =
        setup.rules().dayEnd(PageContents.known(state), PageContents.today(setup, state));
    rows.add(PageRow.title(findings.isEmpty() ? "Everything adds up." : "This does not add up:"));
    findings.forEach(f -> rows.addAll(PageRow.sentence("!", f.shown())));
    List<StringAccount> finished = accounts.stream().filter(StringAccount::isFinished).toList();
    if (!finished.isEmpty()) {
      rows.add(PageRow.title("Used up: " + finished.size()));
      finished.forEach(a -> rows.add(row(a)));
    }
    return new PageContent(PageName.STRINGS.title(), rows);
  }

  private static PageRow row(StringAccount account) {
    BandString string = account.string();
    String text =
        columns(
            string.size().isEmpty() ? "-" : string.size(),
            string.first().text(),
            string.last().text(),
            String.valueOf(account.tally().used()),
            String.valueOf(account.tally().lost()),
            String.valueOf(account.tally().destroyed()),
            String.valueOf(account.unexplainedCount()),
            String.valueOf(account.left()),
            next(account));
    String mark = account.unexplained().isEmpty() ? account.isFinished() ? "=" : "" : "!";
    String more = account.tally().received() + " received";
    return PageRow.chosen(mark, text, more, new PageRow.Subject.OfString(string));
  }

  static String next(StringAccount account) {
    return account.next().map(BandNumber::text).orElse("none");
  }

  private static String columns(
      String size,
      String first,
      String last,
      String used,
      String lost,
      String destroyed,
      String open,
      String left,
      String next) {
    return PageText.padded(size, 5)
        + PageText.padded(first, 12)
        + PageText.padded(last, 12)
        + PageText.padded(used, 5)
        + PageText.padded(lost, 5)
        + PageText.padded(destroyed, 6)
        + PageText.padded(open, 5)
        + PageText.padded(left, 5)
        + next;
  }

  /** One string with its bands that are not on a bird. */
  PageContent opened(State state, BandString string) {
    String title = "Band string " + PageText.range(string);
    return StringAccount.of(PageContents.known(state).ledger()).stream()
        .filter(a -> a.string().first().equals(string.first()))
        .findFirst()
        .map(a -> new PageContent(title, rows(a)))
        .orElseGet(() -> new PageContent(title, List.of(PageRow.title("No longer there."))));
  }

  private static List<PageRow> rows(StringAccount account) {
    List<PageRow> rows = new ArrayList<>();
    add(rows, "Size", account.string().size().isEmpty() ? "not said" : account.string().size());
    add(rows, "Received", String.valueOf(account.tally().received()));
    add(rows, "Used", String.valueOf(account.tally().used()));
    add(rows, "Lost", list(account.lost()));
    add(rows, "Destroyed", list(account.destroyed()));
    String open =
        account.unexplained().stream().map(PageText::range).collect(Collectors.joining(", "));
    add(rows, "Not accounted for", open.isEmpty() ? "none" : open);
    add(rows, "Left", String.valueOf(account.left()));
    add(rows, "Next", next(account));
    if (!account.unexplained().isEmpty()) {
      rows.add(PageRow.text(""));
      rows.addAll(
          PageRow.sentence(
              "!",
              "A band that was passed over stays expected until a record says that it is used,"
                  + " lost or destroyed."));
    }
    return rows;
  }

  private static void add(List<PageRow> rows, String name, String value) {
    rows.addAll(PageRow.named("", name, value, Page.Look.TEXT));
  }

  private static String list(List<BandNumber> bands) {
    return bands.isEmpty()
        ? "none"
        : bands.size()
            + ": "
            + bands.stream().map(BandNumber::text).collect(Collectors.joining(", "));
  }
}
