package org.calamus.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.calamus.core.rule.Known;
import org.calamus.core.speech.Grammar;
import org.calamus.support.Fenwick;

/** The recordings of the demonstration, each at its moment of the invented evening. */
final class DemoUtterances {

  private static final Path SPEECH = Path.of("demo-data", "speech");

  private DemoUtterances() {}

  /**
   * A recording and what is said in it.
   *
   * @param wav the recording
   * @param said what is said, after all that was said before
   */
  record Recording(Path wav, Said said) {
    /** What is listened for at that moment; the demonstration has the short form. */
    Grammar grammar() {
      Moment moment = Moment.atStart(Fenwick.setup(), Known.nothing());
      for (String words : said.before()) {
        moment = moment.says(words);
      }
      return moment.grammar();
    }
  }

  /** All in their order; what the scale sends is put in words. */
  static List<Recording> all() throws IOException {
    List<Recording> all = new ArrayList<>();
    List<String> before = new ArrayList<>();
    for (String line : Files.readAllLines(SPEECH.resolve("utterances.tsv"))) {
      String[] parts = line.split("\t");
      String words = parts[1].replace(",", "");
      if (parts[0].equals("07-save") || parts[0].equals("19-save")) {
        before.add(parts[0].equals("07-save") ? "two two point three" : "three zero point one");
      }
      all.add(
          new Recording(
              SPEECH.resolve(parts[0] + ".wav"), new Said("demonstration", before, words, words)));
      before.add(words);
    }
    return all;
  }
}
