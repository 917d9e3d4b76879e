package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.Finding.Severity;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md} lists every rule, once, with its severity and its source. */
class RulesDocumentTest {

  private static final Path DOCUMENT = Path.of("docs", "rules.md");

  /** A row of a table of rules. */
  private record Row(String id, String severity, String looksAt, String checks, String source) {

    static Optional<Row> of(String line) {
      String[] cells = line.split("\\|", -1);
      return cells.length == 7 && cells[1].strip().startsWith("`")
          ? Optional.of(
              new Row(
                  cells[1].strip().replace("`", ""),
                  cells[2].strip(),
                  cells[3].strip(),
                  cells[4].strip(),
                  cells[5].strip()))
          : Optional.empty();
    }

    String line() {
      return "| `" + id + "` | " + severity + " | " + looksAt + " | " + checks + " | " + source
          + " |";
    }
  }

  private static List<Row> written() throws IOException {
    return Files.readAllLines(DOCUMENT, StandardCharsets.UTF_8).stream()
        .flatMap(line -> Row.of(line).stream())
        .toList();
  }

  /** The rows as the rules themselves tell them; what is checked must be written by hand. */
  private static List<Row> told() {
    List<Row> rows = new ArrayList<>();
    for (Rule rule : Rules.all()) {
      boolean isAny = rule.watched().size() == FieldId.values().length;
      String watched = isAny ? "any field" : keys(rule.watched().stream());
      String looksAt =
          keys(rule.inputs().stream()) + (watched.isEmpty() ? "" : " (" + watched + ")");
      rows.add(new Row(rule.id(), "severity?", looksAt.strip(), "what?", rule.source()));
    }
    for (String line : BandAccounts.CATALOGUE) {
      String[] parts = line.split(": ", 2);
      rows.add(new Row(parts[0], "severity?", "all records", "what?", parts[1]));
    }
    return rows;
  }

  private static String keys(Stream<FieldId> fields) {
    return fields.sorted().map(FieldId::key).collect(Collectors.joining(", "));
  }

  @Test
  void listsEveryRuleWithItsFieldsAndItsSource() throws IOException {
    List<String> written = written().stream().map(r -> r.id() + r.looksAt() + r.source()).toList();
    String missing =
        told().stream()
            .filter(r -> !written.contains(r.id() + r.looksAt() + r.source()))
            .map(Row::line)
            .collect(Collectors.joining("\n"));
    assertThat(missing).as("lines missing in %s, or with another source", DOCUMENT).isEmpty();
  }

  @Test
  void listsNoRuleThatIsNotThere() throws IOException {
    List<String> ids = told().stream().map(Row::id).toList();
    assertThat(written()).extracting(Row::id).doesNotHaveDuplicates().isSubsetOf(ids);
  }

  /** {@code age.date} refuses on some dates and asks on others. */
  @Test
  void saysTheSeverityThatTheEdgesShow() throws IOException {
    List<String> written = written().stream().map(r -> r.id() + " " + r.severity()).toList();
    Map<Severity, String> words =
        Map.of(Severity.REFUSED, "refuses", Severity.ASKS, "asks", Severity.NOTES, "notes");
    assertThat(written)
        .containsAll(
            Stream.of(BandRulesTest.edges(), HistoryRulesTest.edges(), SessionRulesTest.edges())
                .flatMap(edges -> edges)
                .map(e -> e.rule() + " " + words.get(e.severity()))
                .toList())
        .containsAll(
            RuleEdges.all().stream()
                .filter(e -> !e.rule().equals("age.date"))
                .map(e -> e.rule() + " " + words.get(e.severity()))
                .toList());
  }

  @Test
  void saysOfEachWhatItDoesAndWhatItChecks() throws IOException {
    assertThat(written())
        .isNotEmpty()
        .allSatisfy(
            row -> {
              assertThat(row.severity()).isIn("refuses", "asks", "notes");
              assertThat(row.checks()).isNotBlank().isNotEqualTo("what?");
            });
  }
}
