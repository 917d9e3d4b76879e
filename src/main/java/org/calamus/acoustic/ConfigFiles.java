package org.calamus.acoustic;

import java.time.Duration;
import java.util.List;
import java.util.Locale;

/** Writes the model's text files: front end, search, normalisation, names of words and phones. */
final class ConfigFiles {

  /** How many frames the normalisation prior stands for in its file; its mean is what counts. */
  private static final double PRIOR_FRAMES = 1e5;

  /** Spread of the coefficients in the prior's file; variances are not normalised. */
  private static final double PRIOR_VARIANCE = 100;

  private ConfigFiles() {}

  /**
   * The front end. Windows of 410 samples, no removal of the mean and the filter bank's edges are
   * those of the tables' training; its filters cannot be had exactly, but after normalisation they
   * differ by a few hundredths of each coefficient's spread.
   */
  static String frontEnd(FeatureParameters features, Settings settings) {
    return String.join(
        "\n",
        "--sample-frequency=16000",
        "--use-energy=false",
        "--num-mel-bins=" + features.filters(),
        "--num-ceps=" + FeatureParameters.COEFFICIENTS,
        "--low-freq=" + features.lowFrequency(),
        "--high-freq=" + features.highFrequency(),
        "--cepstral-lifter=" + features.lifter(),
        "--window-type=hamming",
        "--frame-length=25.625",
        "--remove-dc-offset=false",
        "--dither=" + settings.dither(),
        "");
  }

  static String search(Settings settings) {
    EndpointRules ends = settings.endpoints();
    return String.join(
        "\n",
        "--min-active=" + settings.minActive(),
        "--max-active=" + settings.maxActive(),
        "--beam=" + settings.beam(),
        "--lattice-beam=" + settings.latticeBeam(),
        "--acoustic-scale=" + settings.acousticScale(),
        "--frame-subsampling-factor=1",
        "--frames-per-chunk=" + settings.framesPerChunk(),
        "--endpoint.silence-phones=1:2:3",
        "--endpoint.rule1.min-trailing-silence=" + seconds(ends.nothingSaid()),
        "--endpoint.rule2.min-trailing-silence=" + seconds(ends.sureEnd()),
        "--endpoint.rule3.min-trailing-silence=" + seconds(ends.likelyEnd()),
        "--endpoint.rule4.min-trailing-silence=" + seconds(ends.anyEnd()),
        "--endpoint.rule5.min-utterance-length=" + seconds(ends.longest()),
        "");
  }

  private static String seconds(Duration duration) {
    return Double.toString(duration.toMillis() / 1000.0);
  }

  /** Sums and count, sums of squares and a zero. */
  static String normalisation(Settings settings) {
    StringBuilder sums = new StringBuilder();
    StringBuilder squares = new StringBuilder();
    for (double mean : settings.normalisationPrior()) {
      sums.append(decimal(mean * PRIOR_FRAMES)).append(' ');
      squares.append(decimal((mean * mean + PRIOR_VARIANCE) * PRIOR_FRAMES)).append(' ');
    }
    return " [\n  " + sums + decimal(PRIOR_FRAMES) + "\n  " + squares + decimal(0) + " ]\n";
  }

  private static String decimal(double value) {
    return String.format(Locale.ROOT, "%.3f", value);
  }

  static String words(List<String> words) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < words.size(); i++) {
      text.append(words.get(i)).append(' ').append(i).append('\n');
    }
    return text.toString();
  }

  static String wordBoundaries(KaldiPhones phones) {
    StringBuilder text = new StringBuilder();
    int number = 1;
    for (String boundary : phones.boundaries()) {
      text.append(number++).append(' ').append(boundary).append('\n');
    }
    return text.toString();
  }
}
