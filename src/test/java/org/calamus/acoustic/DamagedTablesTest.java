package org.calamus.acoustic;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DamagedTablesTest {

  private static void assertNamed(String table, UnaryOperator<byte[]> damage, String what) {
    AcousticTables whole = SampleTables.tables();
    AcousticTables damaged =
        new AcousticTables(
            table.equals("mdef") ? damage.apply(whole.mdef()) : whole.mdef(),
            table.equals("means") ? damage.apply(whole.means()) : whole.means(),
            table.equals("variances") ? damage.apply(whole.variances()) : whole.variances(),
            table.equals("transition_matrices")
                ? damage.apply(whole.transitionMatrices())
                : whole.transitionMatrices(),
            table.equals("sendump") ? damage.apply(whole.sendump()) : whole.sendump(),
            table.equals("feat.params") ? damage.apply(whole.featParams()) : whole.featParams());
    List<WordToBuild> words = List.of(WordToBuild.plain("wing", "a.words:1"));
    assertThatThrownBy(
            () ->
                ModelBuilder.build(damaged, SampleTables.dictionary(), words, Settings.standard()))
        .isExactlyInstanceOf(AcousticException.class)
        .hasMessageContaining("The acoustic table \"" + table + "\"")
        .hasMessageContaining(what)
        .hasMessageEndingWith("it is damaged or of another kind.");
  }

  @ParameterizedTest
  @ValueSource(strings = {"mdef", "means", "variances", "transition_matrices", "sendump"})
  void truncatedTableIsNamed(String table) {
    for (int part = 0; part < 20; part++) {
      double share = part / 20.0;
      assertNamed(table, all -> Arrays.copyOf(all, (int) (all.length * share)), "");
    }
    assertNamed(table, all -> Arrays.copyOf(all, all.length - 1), "ends at byte");
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          mdef,                0,  is not a binary model definition
          mdef,                4,  has an unknown version
          means,               0,  does not begin with an s3 header
          means,               41, lacks the byte order mark
          means,               45, has not one codebook for each phone
          variances,           49, has another number of streams
          transition_matrices, 49, has matrices of another size
          transition_matrices, 60, does not have the checksum it gives
          means,           500000, does not have the checksum it gives
          sendump,             3,  bytes of title
          """)
  void changedByteIsNoticed(String table, int at, String what) {
    assertNamed(
        table,
        all -> {
          byte[] changed = all.clone();
          changed[at] ^= 0x55;
          return changed;
        },
        what);
  }

  @Test
  void valuesThatAreNoNumbersAreNoticed() {
    assertNamed(
        "means",
        all -> {
          byte[] changed = all.clone();
          Arrays.fill(changed, 1000, 1004, (byte) 0xff);
          return changed;
        },
        "holds something that is not a number");
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          -model ptm, -model cont, instead of "-model ptm"
          -feat 1s_c_d_dd, '',     instead of "-feat 1s_c_d_dd"
          -nfilt 25, -nfilt many,  has no whole number for "-nfilt"
          """)
  void otherFeaturesAreRefused(String old, String replacement, String what) {
    assertNamed(
        "feat.params",
        all ->
            new String(all, StandardCharsets.UTF_8)
                .replace(old, replacement)
                .getBytes(StandardCharsets.UTF_8),
        what);
  }
}
