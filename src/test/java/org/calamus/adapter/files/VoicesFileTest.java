package org.calamus.adapter.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.calamus.core.hearing.Timbre;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class VoicesFileTest {

  @TempDir Path data;

  private final List<String> troubles = new ArrayList<>();

  private VoicesFile of(String bander) {
    return new VoicesFile(data, bander, troubles::add);
  }

  private static Timbre timbre(double mean) {
    return new Timbre(Collections.nCopies(Timbre.COEFFICIENTS, mean), 700);
  }

  @Test
  void recallsNothingWhereNothingWasKept() {
    assertThat(of("QX").recall("headset")).isEmpty();
  }

  @Test
  void keepsOneOfEachBanderAndMicrophone() {
    of("QX").keep("Headset [plug, \u00fc]", timbre(1.25));
    of("QX").keep("built-in", timbre(2));
    of("ZB").keep("built-in", timbre(3));
    of("QX").keep("built-in", timbre(-4.5));

    assertThat(of("QX").recall("Headset [plug, \u00fc]")).contains(timbre(1.25));
    assertThat(of("QX").recall("built-in")).contains(timbre(-4.5));
    assertThat(of("ZB").recall("built-in")).contains(timbre(3));
    assertThat(of("ZB").recall("Headset [plug, \u00fc]")).isEmpty();
    assertThat(data.toFile().list()).containsExactly("voices.jsonl");
  }

  @Test
  void linesThatWereNotWrittenHereAreLeftOut() throws IOException {
    of("QX").keep("headset", timbre(1));
    Path file = data.resolve("voices.jsonl");
    String line = Files.readString(file);
    Files.writeString(
        file,
        "{\n{}\n"
            + line.replace("QX", "AA").replace("[1.0,", "[")
            + line.replace("QX", "BB").replace("[1.0,", "[\"loud\",")
            + line.replace("QX", "CC").replace("700", "-7")
            + line);

    for (String bander : List.of("AA", "BB", "CC")) {
      assertThat(of(bander).recall("headset")).as(bander).isEmpty();
    }
    assertThat(of("QX").recall("headset")).contains(timbre(1));
  }

  @Test
  void saysOnceThatItCannotBeWritten() throws IOException {
    Files.createDirectories(data.resolve("voices.jsonl.part"));
    VoicesFile file = of("QX");
    file.keep("headset", timbre(1));
    file.keep("headset", timbre(2));

    assertThat(troubles).singleElement().asString().contains("voices.jsonl cannot be written");
  }
}
