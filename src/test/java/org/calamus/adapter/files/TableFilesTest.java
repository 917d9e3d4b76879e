package org.calamus.adapter.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.CodeTable;
import org.calamus.port.SettingsException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TableFilesTest {

  private static final String SPECIES_HEADER =
      "code\tnumber\tname\tscientific\tband sizes\twing low\twing high\tmass low\tmass high\n";

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
    assertThat(own.species().species()).hasSizeGreaterThan(40);
    assertThat(own.codes("age").rows()).hasSize(8);
    assertThat(own.codes("sex").rows()).hasSize(3);
    assertThat(own.species().species())
        .allSatisfy(s -> assertThat(s.wing()).isPresent())
        .allSatisfy(s -> assertThat(s.mass()).isPresent());
  }

  @Test
  void codesTakesTheUsersTableWithByteOrderMarkAndCarriageReturns() throws IOException {
    write(
        "sex.tsv", "\uFEFF# ours\r\ncode\tdigits\twords\r\n\r\nM\t4\tmale\r\nX\t\tnot looked\r\n");
    assertThat(files().codes("sex").rows())
        .containsExactly(
            new CodeTable.Row("M", "4", "male"), new CodeTable.Row("X", "", "not looked"));
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
                + ":1: the first line names the 3 or 7 columns, parted by tabs, and begins with"
                + " \"code\".");
  }

  @Test
  void codesSaysWhenATableIsEmpty() throws IOException {
    Path file = write("sex.tsv", "# nothing yet\ncode\tdigits\twords\n");
    assertThat(problems(() -> files().codes("sex")))
        .containsExactly(file + ": the table has no row; add one, or take the file away.");
  }

  @Test
  void speciesNamesEveryRangeThatIsNone() throws IOException {
    Path file =
        write(
            "species.tsv",
            SPECIES_HEADER
                + "AAAA\t1\tA bird\tAvis una\t0\t80\t90\t\t\n"
                + "BBBB\t2\tB bird\tAvis altera\t0\t90\t80\t10\t\n"
                + "CCCC\t3\tC bird\tAvis tertia\t0\tx\t80\t10\t20\n");
    assertThat(problems(() -> files().species()))
        .containsExactly(
            file + ":3: \"90\" to \"80\" is no range; give two numbers or none.",
            file + ":3: \"10\" to \"\" is no range; give two numbers or none.",
            file + ":4: \"x\" to \"80\" is no range; give two numbers or none.");
  }

  @Test
  void speciesLeavesAnEmptyRangeOut() throws IOException {
    write("species.tsv", SPECIES_HEADER + "AAAA\t\tA bird\tAvis una\t0\t\t\t10\t20.5\n");
    assertThat(files().species().byCode("AAAA"))
        .hasValueSatisfying(
            s -> {
              assertThat(s.wing()).isEmpty();
              assertThat(s.mass().orElseThrow().text()).isEqualTo("10 to 20.5");
            });
  }
}
