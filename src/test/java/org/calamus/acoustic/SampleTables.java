package org.calamus.acoustic;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The shipped tables and a small vocabulary, for tests. */
public final class SampleTables {

  /** Words said without a pause between them. */
  public static final String NUMBERS =
      "oh zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen"
          + " fifteen sixteen seventeen eighteen nineteen twenty thirty forty fifty sixty seventy"
          + " eighty ninety hundred point";

  /** Words for letters, said without a pause between them. */
  public static final String SPELLING =
      "alpha bravo charlie delta echo foxtrot golf hotel india juliet kilo lima mike november oscar"
          + " papa quebec romeo sierra tango uniform victor whiskey x-ray yankee zulu";

  /** Other words of a console. */
  public static final String COMMANDS =
      "wing weight fat species age sex tail bill save cancel correct undo repeat next back skip help"
          + " stop record read again clear letter capital number minus male female unknown adult"
          + " juvenile hatching year after second third notes station net robin sparrow thrush"
          + " warbler wren";

  private static final AcousticTables TABLES =
      new AcousticTables(
          resource("en-us/mdef"),
          resource("en-us/means"),
          resource("en-us/variances"),
          resource("en-us/transition_matrices"),
          resource("en-us/sendump"),
          resource("en-us/feat.params"));
  private static final String DICTIONARY =
      new String(resource("cmudict-en-us.dict"), StandardCharsets.UTF_8);

  private SampleTables() {}

  /** Returns the shipped tables. */
  public static AcousticTables tables() {
    return TABLES;
  }

  /** Returns the shipped dictionary. */
  public static String dictionary() {
    return DICTIONARY;
  }

  /** Returns the numbers as one chain, the spelling words as another, and the commands. */
  public static List<WordToBuild> words() {
    List<WordToBuild> words = new ArrayList<>();
    for (String word : NUMBERS.split(" ")) {
      words.add(WordToBuild.chained(word, "numbers", "numbers.words:1"));
    }
    for (String word : SPELLING.split(" ")) {
      words.add(WordToBuild.chained(word, "spelling", "spelling.words:1"));
    }
    for (String word : COMMANDS.split(" ")) {
      words.add(
          word.equals("juvenile")
              ? new WordToBuild(
                  word, List.of("JH UW V AH N AH L"), Optional.empty(), "commands.words:2")
              : WordToBuild.plain(word, "commands.words:1"));
    }
    return words;
  }

  private static byte[] resource(String name) {
    try (InputStream in = SampleTables.class.getResourceAsStream("/acoustic/" + name)) {
      if (in == null) {
        throw new AssertionError("no resource /acoustic/" + name);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
