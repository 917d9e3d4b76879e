package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.core.speech.Utterance;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The recordings of the demonstration through the real ears, with the dialogue's own grammars. */
class DemoRecordingsTest {

  @TempDir private static Path cache;

  private static ModelFolder model;
  private static List<DemoUtterances.Recording> recordings;

  @BeforeAll
  static void build() throws IOException {
    model = Recognition.model(cache);
    recordings = DemoUtterances.all();
  }

  @AfterAll
  static void close() {
    model.close();
  }

  @Test
  void everyRecordingIsHeardAsItWasSaid() throws InterruptedException {
    List<String> heard = hear().stream().map(DemoRecordingsTest::text).toList();
    assertThat(heard).isEqualTo(recordings.stream().map(r -> r.said().words()).toList());
  }

  @Test
  void recordingsAreHeardTheSameEveryTime() throws InterruptedException {
    assertThat(hear()).isEqualTo(hear());
  }

  private static List<List<Utterance>> hear() throws InterruptedException {
    List<Room.Play> plays = new ArrayList<>();
    for (DemoUtterances.Recording recording : recordings) {
      plays.add(new Room.Play(recording.wav(), recording.grammar()));
    }
    return Room.hear(model.path(), VoskEars.Settings.usual(), plays).utterances();
  }

  private static String text(List<Utterance> heard) {
    return heard.stream().map(Utterance::text).collect(Collectors.joining(" | "));
  }
}
