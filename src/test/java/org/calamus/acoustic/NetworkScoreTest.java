package org.calamus.acoustic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class NetworkScoreTest {

  /** Half a nat above the floor, so that rounding cannot put a score on the other side. */
  private static final double JUST_ABOVE = NetworkWriter.LOG_FLOOR + 0.5;

  private static final double STREAM_SCALE = Math.log(NetworkWriter.SCALE);

  private final PhoneTable phones = new PhoneTable(SampleTables.tables().mdef());
  private final PdfLayout layout = layout();
  private final MixtureModel mixtures = new MixtureModel(SampleTables.tables());
  private final KaldiNetwork network =
      new KaldiNetwork(
          ModelBuilder.build(
                  SampleTables.tables(),
                  SampleTables.dictionary(),
                  SampleTables.words(),
                  Settings.standard())
              .files()
              .get("am/final.mdl"));

  private PdfLayout layout() {
    Lexicon lexicon = Lexicon.of(SampleTables.words(), SampleTables.dictionary(), phones);
    TransitionMatrices transitions =
        new TransitionMatrices(SampleTables.tables().transitionMatrices());
    return new PdfLayout(
        new GraphBuilder(phones, transitions, new KaldiPhones(phones), Settings.standard())
            .build(lexicon, 6, 4),
        phones);
  }

  @Test
  void outputsAreTheMixturesLogLikelihoodsUpToTheFramesConstant() throws IOException {
    double[][] frames = frames("digits-slt.wav");
    int compared = 0;
    int senones = 0;
    double worst = 0;
    for (int t = 0; t < frames.length; t += 7) {
      float[] outputs = network.outputs(frames, t);
      Expected expected = new Expected(MixtureModel.streams(frames, t));
      for (int book : layout.books()) {
        for (int senone : layout.senonesOf(book)) {
          senones++;
          if (expected.aboveFloor(book, senone)) {
            double off = outputs[layout.pdf(senone)] - expected.output(book, senone);
            worst = Math.max(worst, Math.abs(off));
            compared++;
          }
        }
      }
    }
    assertThat(worst).isLessThan(1e-3);
    assertThat(compared).isGreaterThan(senones / 2);
  }

  @Test
  void mixturesAgreeWithAnotherComputation() throws IOException {
    double[][] frames = frames("digits-slt.wav");
    try (InputStream in =
        NetworkScoreTest.class.getResourceAsStream("/acoustic/reference-scores.txt")) {
      List<String> lines =
          new String(in.readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .filter(line -> !line.startsWith("#"))
              .toList();
      assertThat(lines).hasSize(112);
      for (String line : lines) {
        String[] parts = line.split(" ");
        int senone = Integer.parseInt(parts[1]);
        int book = Integer.parseInt(parts[2]);
        double[][] streams = MixtureModel.streams(frames, Integer.parseInt(parts[0]));
        double sum = 0;
        for (int stream = 0; stream < 3; stream++) {
          double[] logs = mixtures.logDensities(book, stream, streams[stream]);
          sum += MixtureModel.logMixture(mixtures.weights(senone, stream), logs);
        }
        assertThat(phones.codebook(senone)).as(line).isEqualTo(book);
        assertThat(sum).as(line).isCloseTo(Double.parseDouble(parts[3]), within(2e-3));
      }
    }
  }

  private static double[][] frames(String name) throws IOException {
    try (InputStream in = NetworkScoreTest.class.getResourceAsStream("/acoustic/" + name)) {
      double[] prior =
          Settings.standard().normalisationPrior().stream().mapToDouble(v -> v).toArray();
      return Cepstra.normalised(Cepstra.samples(in.readAllBytes()), prior);
    }
  }

  /** What a frame's outputs should be, from the mixtures themselves. */
  private final class Expected {

    private final double[][][] logs;
    private final double[] summedPeaks;
    private double divisors;

    Expected(double[][] streams) {
      int books = phones.basePhoneCount();
      logs = new double[3][books][];
      summedPeaks = new double[books];
      for (int stream = 0; stream < 3; stream++) {
        double divisor = 0;
        for (int book : layout.books()) {
          double[] densities = mixtures.logDensities(book, stream, streams[stream]);
          logs[stream][book] = densities;
          double peak = max(densities);
          summedPeaks[book] += peak;
          for (double density : densities) {
            divisor += Math.exp(density - peak);
          }
        }
        divisors += Math.log(divisor);
      }
    }

    private static double max(double[] values) {
      return Arrays.stream(values).max().orElseThrow();
    }

    double logLikelihood(int book, int senone) {
      double sum = 0;
      for (int stream : List.of(0, 1, 2)) {
        sum += MixtureModel.logMixture(mixtures.weights(senone, stream), logs[stream][book]);
      }
      return sum;
    }

    /** One is what the normalising component adds: the sign beside the logarithm. */
    double output(int book, int senone) {
      return logLikelihood(book, senone) - divisors + 3 * STREAM_SCALE + 1;
    }

    boolean aboveFloor(int book, int senone) {
      return output(book, senone) - 1 - summedPeaks[book] > JUST_ABOVE;
    }
  }
}
