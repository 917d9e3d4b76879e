package org.calamus.adapter.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.Species;
import org.calamus.core.form.SpeciesTable;
import org.calamus.core.record.FieldId;
import org.calamus.port.SettingsException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TableFilesTest {

  private static final String SPECIES_HEADER =
      "code\tnumber\tname\tscientific\tband sizes\twing\twing F\twing M\ttail\ttarsus\tculmen"
          + "\tmass\tmass F\tmass M\tplumage\tbrood patch\tsources\tnotes\n";

  private static final Optional<String> FEMALE = Optional.of("F");
  private static final Optional<String> MALE = Optional.of("M");

  @TempDir Path folder;

  private TableFiles files() {
    return new TableFiles(Optional.of(folder));
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private List<String> problems(Runnable reading) {
    List<String> problems = new java.util.ArrayList<>();
    assertThatThrownBy(reading::run)
        .isInstanceOfSatisfying(SettingsException.class, e -> problems.addAll(e.problems()));
    return problems;
  }

  @Test
  void theProgramsOwnTablesCanBeRead() {
    TableFiles own = new TableFiles(Optional.empty());
    assertThat(own.species().species()).hasSizeGreaterThan(180);
    assertThat(own.codes("age").rows()).hasSize(8);
    assertThat(own.codes("sex").rows()).hasSize(3);
  }

  @Test
  void codesTakesTheUsersTableWithByteOrderMarkAndCarriageReturns() throws IOException {
    write(
        "sex.tsv", "\uFEFF# ours\r\ncode\tdigits\twords\r\n\r\nM\t4\tmale\r\nX\t\tnot looked\r\n");
    assertThat(files().codes("sex").rows())
        .containsExactly(
            new CodeTable.Row("M", "4", "male"), new CodeTable.Row("X", "", "not looked"));
  }

  private static final String DEAD = "the bird would be reported dead";

  private List<String> costs(String table) {
    return files().codes(table).rows().stream().map(CodeTable.Row::cost).toList();
  }

  @Test
  void theProgramsOwnTablesSayWhatADeathWouldCostAndNothingElse() {
    assertThat(costs("release")).containsExactly("", "", "", DEAD);
    assertThat(costs("disposition")).startsWith(DEAD, "").containsOnlyOnce(DEAD);
    assertThat(costs("status")).containsOnly("");
  }

  @Test
  void aUsersTableWithoutCostsKeepsOurs() throws IOException {
    write("release.tsv", "code\tdigits\twords\nRELEASED\t1\tfree\ndied\t2\tdead\n");
    assertThat(costs("release")).containsExactly("", DEAD);
  }

  @Test
  void aUsersTableWithCostsHasItsOwn() throws IOException {
    String between = "\t\t\t\t\t";
    write(
        "release.tsv",
        "code\tdigits\twords\tlaboratory\teuring\teuring digits\teuring words\tcost\n"
            + ("DIED\t1\tdied" + between + "\n")
            + ("KEPT\t2\tkept" + between + "the bird would be missed\n"));
    assertThat(costs("release")).containsExactly("", "the bird would be missed");
  }

  @Test
  void codesNamesEveryMistakeWithItsLine() throws IOException {
    Path file =
        write(
            "sex.tsv",
            "# ours\ncode\tdigits\twords\nM\t4\tmale\nF 5 female\nf\t5\tfemale\tx\n\t6\tnone\n"
                + "U\t0\t\nm\t7\tmale\nN\t4\tneither\n");
    assertThat(problems(() -> files().codes("sex")))
        .containsExactly(
            file + ":4: 1 columns parted by tabs, and not 3.",
            file + ":5: 4 columns parted by tabs, and not 3.",
            file + ":6: a row needs a code and a name.",
            file + ":7: a row needs a code and a name.",
            file + ":8: the code m stands already at " + file + ":3.",
            file + ":9: the number 4 stands already at " + file + ":3.");
  }

  @Test
  void codesDoesNotTakeTheFirstRowForAHeader() throws IOException {
    Path file = write("sex.tsv", "M\t4\tmale\nF\t5\tfemale\n");
    assertThat(problems(() -> files().codes("sex")))
        .containsExactly(
            file
                + ":1: the first line names the 3 or 7 or 8 columns, parted by tabs, and begins with"
                + " \"code\".");
  }

  @Test
  void codesSaysWhenATableIsEmpty() throws IOException {
    Path file = write("sex.tsv", "# nothing yet\ncode\tdigits\twords\n");
    assertThat(problems(() -> files().codes("sex")))
        .containsExactly(file + ": the table has no row; add one, or take the file away.");
  }

  @Test
  void speciesReadsEveryColumn() throws IOException {
    write(
        "species.tsv",
        SPECIES_HEADER
            + "AAAA\t1\tA bird\tAvis una\tF 1A; M 2, 1A\t80-100.5\t80-90\t90-100.5\t40-50"
            + "\t20.1-30\t10-12\t10-40\t\t20-40\tall ages\tmale partial\twing A\tlook twice\n");
    Species species = files().species().byCode("AAAA").orElseThrow();
    assertThat(species.number()).isEqualTo("1");
    assertThat(species.name()).isEqualTo("A bird");
    assertThat(species.scientific()).isEqualTo("Avis una");
    assertThat(species.bandSizes(FEMALE)).containsExactly("1A");
    assertThat(species.bandSizes(MALE)).containsExactly("2", "1A");
    assertThat(species.bandSizes(Optional.of("U"))).containsExactly("1A", "2");
    assertThat(species.bandSizes(Optional.empty())).containsExactly("1A", "2");
    assertThat(species.isOnlySize()).isFalse();
    assertThat(text(species, FieldId.WING, FEMALE)).isEqualTo("80 to 90");
    assertThat(text(species, FieldId.WING, MALE)).isEqualTo("90 to 100.5");
    assertThat(text(species, FieldId.WING, Optional.of("U"))).isEqualTo("80 to 100.5");
    assertThat(text(species, FieldId.TAIL, MALE)).isEqualTo("40 to 50");
    assertThat(text(species, FieldId.TARSUS, MALE)).isEqualTo("20.1 to 30");
    assertThat(text(species, FieldId.CULMEN, Optional.empty())).isEqualTo("10 to 12");
    assertThat(text(species, FieldId.MASS, FEMALE)).isEqualTo("10 to 40");
    assertThat(text(species, FieldId.MASS, MALE)).isEqualTo("20 to 40");
    assertThat(species.range(FieldId.AGE, MALE)).isEmpty();
    assertThat(species.plumage()).isEqualTo(Species.Plumage.ALL_AGES);
    assertThat(species.broodPatch()).isEqualTo(Species.BroodPatch.MALE_PARTIAL);
    assertThat(species.sources()).isEqualTo("wing A");
    assertThat(species.notes()).isEqualTo("look twice");
  }

  @Test
  void speciesLeavesOutWhatIsNotKnown() throws IOException {
    write("species.tsv", SPECIES_HEADER + row("AAAA", "", "A bird", "", "", ""));
    Species species = files().species().byCode("AAAA").orElseThrow();
    assertThat(species.bandSizes(MALE)).isEmpty();
    assertThat(species.isOnlySize()).isFalse();
    for (FieldId field : FieldId.values()) {
      assertThat(species.range(field, MALE)).as(field.key()).isEmpty();
    }
    assertThat(species.plumage()).isEqualTo(Species.Plumage.UNKNOWN);
    assertThat(species.broodPatch()).isEqualTo(Species.BroodPatch.UNKNOWN);
  }

  @Test
  void speciesKnowsASizeThatIsTheOnlyOne() throws IOException {
    write("species.tsv", SPECIES_HEADER + row("AAAA", "", "A bird", "0A only", "", ""));
    Species species = files().species().byCode("AAAA").orElseThrow();
    assertThat(species.bandSizes(FEMALE)).containsExactly("0A");
    assertThat(species.isOnlySize()).isTrue();
  }

  @Test
  void speciesNamesEveryRangeThatIsNone() throws IOException {
    Path file =
        write(
            "species.tsv",
            SPECIES_HEADER
                + row("AAAA", "1", "A bird", "0", "90-80", "")
                + row("BBBB", "2", "B bird", "0", "80-90", "10-")
                + row("CCCC", "3", "C bird", "0", "x-80", "10 to 20"));
    String advice =
        "\" is no range; give the lower and the upper end as in \"77-100\", or nothing.";
    assertThat(problems(() -> files().species()))
        .containsExactly(
            file + ":2: \"90-80" + advice,
            file + ":3: \"10-" + advice,
            file + ":4: \"x-80" + advice,
            file + ":4: \"10 to 20" + advice);
  }

  @Test
  void speciesNamesBandSizesThatCannotBeRead() throws IOException {
    Path file =
        write(
            "species.tsv",
            SPECIES_HEADER
                + row("AAAA", "1", "A bird", "1B,", "", "")
                + row("BBBB", "2", "B bird", "F 1; 2", "", "")
                + row("CCCC", "3", "C bird", "M 1; M 2", "", "")
                + row("DDDD", "4", "D bird", "only", "", ""));
    String advice =
        "\" are no band sizes; give them as in \"1B, 1\", \"0A only\" or \"F 1A; M 2\".";
    assertThat(problems(() -> files().species()))
        .containsExactly(
            file + ":2: \"1B," + advice,
            file + ":3: \"F 1; 2" + advice,
            file + ":4: \"M 1; M 2" + advice,
            file + ":5: \"only" + advice);
  }

  @Test
  void speciesNamesAPlumageAndABroodPatchThatAreNone() throws IOException {
    Path file =
        write(
            "species.tsv",
            SPECIES_HEADER + "AAAA\t1\tA bird" + "\t".repeat(12) + "some\tmale\t\t\n");
    assertThat(problems(() -> files().species()))
        .containsExactly(
            file + ":2: \"some\" is no plumage; give one of adults, all ages, no, or nothing.",
            file
                + ":2: \"male\" is no brood patch; give one of female, both, male partial, neither,"
                + " or nothing.");
  }

  @Test
  void ownSpeciesTakeThePlaceOfRowsOfTheSameCodeAndAddOthers() throws IOException {
    SpeciesTable carried = new TableFiles(Optional.empty()).species();
    write(
        "own-species.tsv",
        SPECIES_HEADER
            + row("wbnu", "7270", "White-breasted Nuthatch", "1B", "80-95", "")
            + row("ZZZZ", "9999", "Marsh Thing", "0A", "40-50", "5-9"));
    SpeciesTable table = files().species();
    assertThat(table.species()).hasSize(carried.species().size() + 1);
    assertThat(table.byCode("WBNU")).isEmpty();
    Species nuthatch = table.byCode("wbnu").orElseThrow();
    assertThat(text(nuthatch, FieldId.WING, MALE)).isEqualTo("80 to 95");
    assertThat(nuthatch.range(FieldId.MASS, MALE)).isEmpty();
    assertThat(table.byCode("ZZZZ").orElseThrow().bandSizes(MALE)).containsExactly("0A");
    assertThat(table.byCode("HOWR")).isEqualTo(carried.byCode("HOWR"));
  }

  @Test
  void ownSpeciesAlsoAddToTheUsersOwnTable() throws IOException {
    write("species.tsv", SPECIES_HEADER + row("AAAA", "1", "A bird", "0", "", ""));
    write("own-species.tsv", SPECIES_HEADER + row("BBBB", "2", "B bird", "0", "", ""));
    assertThat(files().species().species())
        .extracting(Species::code)
        .containsExactly("AAAA", "BBBB");
  }

  @Test
  void ownSpeciesMayNotTakeTheNumberOrNameOfAnother() throws IOException {
    Path others = write("species.tsv", SPECIES_HEADER + row("AAAA", "1", "A bird", "0", "", ""));
    Path own =
        write(
            "own-species.tsv",
            SPECIES_HEADER
                + row("BBBB", "1", "B bird", "0", "", "")
                + row("CCCC", "3", "a Bird", "0", "", ""));
    assertThat(problems(() -> files().species()))
        .containsExactly(
            own + ":2: the number 1 stands already at " + others + ":2.",
            own + ":3: the name a Bird stands already at " + others + ":2.");
  }

  @Test
  void ownSpeciesAreNamedWithTheirFileWhereTheyCannotBeRead() throws IOException {
    Path own = write("own-species.tsv", "code\tname\nZZZZ\tMarsh Thing\n");
    assertThat(problems(() -> files().species()))
        .containsExactly(
            own
                + ":1: the first line names the 18 columns, parted by tabs, and begins with"
                + " \"code\".",
            own + ":2: 2 columns parted by tabs, and not 18.");
  }

  private static String row(
      String code, String number, String name, String sizes, String wing, String mass) {
    return String.join("\t", code, number, name, "Avis", sizes, wing)
        + "\t".repeat(6)
        + mass
        + "\t".repeat(6)
        + "\n";
  }

  private static String text(Species species, FieldId field, Optional<String> sex) {
    return species.range(field, sex).orElseThrow().text();
  }
}
