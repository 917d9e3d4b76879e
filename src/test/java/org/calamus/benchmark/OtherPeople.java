package org.calamus.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.calamus.support.Fenwick;

/**
 * Recordings of real people that took no part in any tuning, from Debian packages: a reader of a
 * novel (pocketsphinx-testdata), names of letters and short words (klettres-data), names of things
 * (ktuberling-data). None of it is for the console; words of the vocabulary are left out.
 */
final class OtherPeople implements Speaker.Mouth {

  private static final Path READER = Path.of("/usr/share/pocketsphinx/test/data/librivox");
  private static final List<Path> WORDS =
      List.of(
          Path.of("/usr/share/klettres/en/alpha"),
          Path.of("/usr/share/klettres/en/syllab"),
          Path.of("/usr/share/klettres/en_GB/alpha"),
          Path.of("/usr/share/klettres/en_GB/syllab"),
          Path.of("/usr/share/ktuberling/sounds/en"));

  /** Whole sentences of the reader. */
  static List<String> sentences() throws IOException {
    return Recordings.in(READER);
  }

  /** Single words and letters. */
  static List<String> words() throws IOException {
    Set<String> known = new HashSet<>();
    Fenwick.vocabulary().forms().forEach(f -> known.addAll(f.words()));
    List<String> all = new ArrayList<>();
    for (Path folder : WORDS) {
      for (String file : Recordings.in(folder)) {
        String name = Path.of(file).getFileName().toString().replace(".ogg", "");
        if (!known.contains(name.replaceAll(".*_", "").toLowerCase(Locale.ROOT))) {
          all.add(file);
        }
      }
    }
    return all;
  }

  @Override
  public boolean isThere() {
    return Files.isDirectory(READER) || WORDS.stream().anyMatch(Files::isDirectory);
  }

  @Override
  public boolean canSay(Said said) {
    return said.isChatter() && List.of("reader", "words").contains(said.set());
  }

  @Override
  public void say(Said said, Path wav) throws IOException, InterruptedException {
    Recordings.convert(Path.of(said.spoken()), wav);
  }
}
