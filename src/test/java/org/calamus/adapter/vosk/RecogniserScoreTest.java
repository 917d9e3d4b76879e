package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.calamus.acoustic.Cepstra;
import org.calamus.acoustic.FstFile;
import org.calamus.acoustic.KaldiNetwork;
import org.calamus.acoustic.ModelBuilder;
import org.calamus.acoustic.ModelFiles;
import org.calamus.acoustic.SampleTables;
import org.calamus.acoustic.Settings;
import org.calamus.acoustic.WordToBuild;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vosk.Model;
import org.vosk.Recognizer;

/**
 * The recogniser does not show its scores frame by frame, but gives that of the best path. Two
 * recordings of the same words pay the same to the grammar, so the difference of their scores is
 * that of sound and graph alone, which can be computed here.
 */
class RecogniserScoreTest {

  private static final List<String> WORDS = List.of("wing", "ninety", "two");

  /** What the recogniser multiplies graph costs with before it compares alternatives. */
  private static final double GRAPH_WEIGHT = 0.9;

  private final Settings settings = Settings.standard().withDither(0);

  @TempDir private Path folder;

  @Test
  void recogniserFindsTheBestPathsScore() throws IOException {
    ModelFiles files =
        ModelBuilder.build(SampleTables.tables(), SampleTables.dictionary(), words(), settings);
    new CacheFolders(folder).replace("any", files.files());
    double recognised;
    try (Model model = VoskLibrary.load(new CacheFolders(folder).of("any"))) {
      recognised = score(model, "wing-slt.wav") - score(model, "wing-awb.wav");
    }
    double computed = best(files, "wing-slt.wav") - best(files, "wing-awb.wav");
    assertThat(recognised).isCloseTo(computed, within(Math.abs(computed) * 1e-4));
  }

  /** Synthetic voices pause in digital silence; a microphone never does. */
  private static byte[] withRoomNoise(byte[] wav) {
    Random random = new Random(1);
    ByteBuffer buffer = ByteBuffer.wrap(wav.clone()).order(ByteOrder.LITTLE_ENDIAN);
    for (int at = 44; at < wav.length; at += 2) {
      buffer.putShort(at, (short) (buffer.getShort(at) + Math.round(16 * random.nextGaussian())));
    }
    return buffer.array();
  }

  private static List<WordToBuild> words() {
    return SampleTables.words().stream().filter(word -> WORDS.contains(word.word())).toList();
  }

  private static double score(Model model, String recording) throws IOException {
    try (Recognizer recogniser =
        new Recognizer(model, 16000, TestAudio.grammar(List.of(String.join(" ", WORDS))))) {
      recogniser.setMaxAlternatives(1);
      byte[] wav = withRoomNoise(TestAudio.wav(recording));
      byte[] samples = Arrays.copyOfRange(wav, 44, wav.length);
      recogniser.acceptWaveForm(samples, samples.length);
      String result = recogniser.getFinalResult();
      assertThat(TestAudio.text(result)).isEqualTo(String.join(" ", WORDS));
      Matcher score = Pattern.compile("\"confidence\" : ([-0-9.]+)").matcher(result);
      assertThat(score.find()).as(result).isTrue();
      return Double.parseDouble(score.group(1));
    }
  }

  private double best(ModelFiles files, String recording) throws IOException {
    List<String> names =
        new String(files.files().get("graph/words.txt"), StandardCharsets.UTF_8)
            .lines()
            .map(line -> line.split(" ")[0])
            .toList();
    double[] prior = settings.normalisationPrior().stream().mapToDouble(v -> v).toArray();
    double[][] frames =
        Cepstra.normalised(Cepstra.samples(withRoomNoise(TestAudio.wav(recording))), prior);
    BestPath.Score score =
        BestPath.find(
            FstFile.read(files.files().get("graph/HCLr.fst")),
            new KaldiNetwork(files.files().get("am/final.mdl")),
            WORDS.stream().mapToInt(names::indexOf).toArray(),
            settings.acousticScale(),
            frames);
    return -(GRAPH_WEIGHT * score.graph() + settings.acousticScale() * score.sound());
  }
}
