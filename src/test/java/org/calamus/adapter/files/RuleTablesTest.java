package org.calamus.adapter.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.CodeTable;
import org.calamus.core.record.BandNumber;
import org.calamus.core.rule.AgeClasses;
import org.calamus.port.SettingsException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RuleTablesTest {

  @TempDir Path folder;

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private TableFiles files() {
    return new TableFiles(Optional.of(folder));
  }

  private static List<String> problems(Runnable reading) {
    List<String> problems = new ArrayList<>();
    assertThatThrownBy(reading::run)
        .isInstanceOfSatisfying(SettingsException.class, e -> problems.addAll(e.problems()));
    return problems;
  }

  @Test
  void everyAgeOfTheAgeTableHasAClassAndADateRow() {
    TableFiles own = new TableFiles(Optional.empty());
    List<String> ages = own.codes("age").rows().stream().map(CodeTable.Row::code).toList();
    assertThat(own.ageClasses().rows()).extracting(AgeClasses.Row::code).containsAll(ages);
    assertThat(own.ageSeason().rows())
        .filteredOn(r -> r.species().isEmpty())
        .extracting(r -> r.code())
        .containsExactlyInAnyOrderElementsOf(ages);
  }

  @Test
  void bandLettersStandForFourDigits() {
    var letters = new TableFiles(Optional.empty()).bandLetters();
    assertThat(letters.prefixes()).hasSize(14);
    assertThat(letters.inFiles(new BandNumber("X", "12345")))
        .contains(new BandNumber("7000", "12345"));
    assertThat(letters.inFiles(new BandNumber("P", "00000")))
        .contains(new BandNumber("9100", "00000"));
    assertThat(letters.inFiles(new BandNumber("X", "1234"))).isEmpty();
    assertThat(letters.isHummingbird(new BandNumber("A", "12345"))).isFalse();
    assertThat(letters.isHummingbird(new BandNumber("2841", "12345"))).isFalse();
  }

  @Test
  void classesNameEveryMistakeWithItsLine() throws IOException {
    Path file =
        write(
            "age-years.tsv",
            "code\tearliest\tlatest\nHY\t0\t0\nHY\t0\t0\nSY\t-1\nTY\tx\t-2\nXY\t0\t-1\nYY\t-\t1\n"
                + "\t-\t0\n");
    assertThat(problems(() -> files().ageClasses()))
        .containsExactly(
            file
                + ":4: a line has 3 columns parted by tabs, and the first names them and begins"
                + " with \"code\".",
            file + ":8: a row needs a code.",
            file + ":3: the code HY stands there twice.",
            file + ":5: the offsets are whole numbers, or \"-\" for the earliest.",
            file + ":6: the earliest is above the latest, or the latest above 0.",
            file + ":7: the earliest is above the latest, or the latest above 0.");
  }

  @Test
  void seasonNamesEveryMistakeWithItsLine() throws IOException {
    String months = "\tok".repeat(12);
    Path file =
        write(
            "age-dates.tsv",
            "code\tspecies\tJan\tFeb\tMar\tApr\tMay\tJun\tJul\tAug\tSep\tOct\tNov\tDec\n"
                + ("HY" + months + "\n")
                + ("HY\tMODO RECR" + months + "\n")
                + ("HY\tMODO" + months + "\n")
                + ("SY\t\tperhaps" + "\tok".repeat(11) + "\n")
                + ("ASY\t\tok/asks/ok" + "\tok".repeat(11) + "\n"));
    assertThat(problems(() -> files().ageSeason()))
        .containsExactly(
            file
                + ":2: a line has 14 columns parted by tabs, and the first names them and begins"
                + " with \"code\".",
            file + ":4: HY MODO stands there twice.",
            file + ":5: \"perhaps\" is not ok, asks or refused, or two of them parted by \"/\".",
            file
                + ":6: \"ok/asks/ok\" is not ok, asks or refused, or two of them parted by \"/\".");
  }

  @Test
  void lettersNameEveryMistakeWithItsLine() throws IOException {
    Path file = write("band-letters.tsv", "code\tprefix\nX\t7000\nX\t8000\nab\t7000\nY\t700\n");
    assertThat(problems(() -> files().bandLetters()))
        .containsExactly(
            file + ":3: the letter X stands there twice.",
            file + ":4: a row is one capital letter and four digits.",
            file + ":5: a row is one capital letter and four digits.");
  }

  @Test
  void anEmptyTableIsSaidToBeSo() throws IOException {
    Path file = write("band-letters.tsv", "# nothing\ncode\tprefix\n");
    assertThat(problems(() -> files().bandLetters()))
        .containsExactly(file + ": the table has no row; add one, or take the file away.");
  }
}
