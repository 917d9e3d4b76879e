package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Month;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.support.Outside;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Days and months through the real ears, said by the one real speaker: a day of each month of the
 * tuning half, words of her prompts in a row.
 */
class SpokenDatesTest {

  @TempDir private static Path folder;

  @Test
  void aRealSpeakersDatesAreTakenAtOnceAndNoneWrongly() throws Exception {
    Outside.program("ffmpeg");
    List<Path> prompts = RecordedPrompts.folders();
    if (prompts.isEmpty()) {
      throw Outside.missing("a speaker's prompts (asterisk-core-sounds-en-g722)");
    }
    Speaker person =
        new Speaker("person", Half.TUNING, "person", new RecordedPrompts(prompts.get(0)));
    List<Said> dates =
        UtteranceSets.of(Half.TUNING).stream()
            .filter(s -> s.set().equals("capture date"))
            .filter(person::canSay)
            .toList();
    Set<Month> months =
        dates.stream()
            .flatMap(s -> List.of(Month.values()).stream().filter(m -> isIn(m, s)))
            .collect(Collectors.toSet());
    assertThat(months).as("months that are said").hasSizeGreaterThanOrEqualTo(10);
    Judge judge = new Judge();
    List<Verdict> verdicts = new ArrayList<>();
    try (ModelFolder model = Recognition.model(folder.resolve("model"))) {
      Hearing hearing =
          new Hearing(
              model.path(),
              folder.resolve("audio"),
              Half.TUNING,
              Optional.empty(),
              judge,
              Optional.empty());
      hearing
          .hear(Condition.CLEAN, dates.stream().map(s -> new Turn(person, s)).toList())
          .forEach(t -> verdicts.add(t.ours().verdict()));
    }
    assertThat(verdicts).hasSameSizeAs(dates).doesNotContain(Verdict.WRONG);
    // all of them, when this was written; the floor lies a little under it
    assertThat(verdicts.stream().filter(Verdict.RIGHT::equals).count())
        .isGreaterThanOrEqualTo(dates.size() - 1L);
  }

  private static boolean isIn(Month month, Said said) {
    return List.of(said.words().toUpperCase(java.util.Locale.ROOT).split(" "))
        .contains(month.name());
  }
}
