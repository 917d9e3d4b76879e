package org.calamus.acoustic;

import java.util.List;

/**
 * The numbers that balance sound against words, and how hard the recogniser searches.
 *
 * <p>The standard values were found by sweeps over read-aloud strings of digits, numbers, spelling
 * words and commands: one real speaker's recordings and several synthetic voices. The optimum is
 * flat, but the first five move together: change one and the others must be swept again.
 *
 * @param acousticScale weight of the sounds' log likelihoods against the graph's costs. Mixture
 *     scores of neighbouring frames are far from independent, so much less than 1
 * @param wordCost cost of each word; negative is a bonus, which balances the many sounds of a
 *     spoken number against swallowing its shorter words
 * @param silenceProbability chance of a pause before a word
 * @param phrasePauseProbability chance of a pause between the words of a phrase
 * @param phrasePhoneCost cost of each phone of a phrase, so that other talk is "[unk]" rather than
 *     a phrase that is a little like it. On the tuning half 0.2 cost no phrase in quiet but of
 *     espeak-ng's voices, and 0.6 one in fifty
 * @param transitionScale weight of the tables' transition probabilities
 * @param unknownPhoneCost extra cost of each phone of "[unk]" above an even choice of phones. One
 *     more lets four times as many false words through, one less halves them but costs right words
 * @param beam how much worse than the best a path may become before it is dropped
 * @param latticeBeam how much worse than the best a rival may be to count in the confidence
 * @param minActive paths always kept
 * @param maxActive paths kept at most
 * @param framesPerChunk frames the network computes at a time
 * @param dither noise that the recogniser adds to each sample, drawn anew in each run. 0 gives the
 *     same scores in every run; then whoever feeds it must see to it that there is no digital
 *     silence, which looks like nothing the tables have seen: with it no utterance at all is heard
 * @param normalisationPrior mean of the features before anything was heard, 13 coefficients, in the
 *     recogniser's feature domain: averaged over many recordings. The tables' own starting value is
 *     in the domain of another front end (constant offset of 27 in the first coefficient), and with
 *     it most utterances fail. The first coefficient follows loudness: 76 to 84 were all good
 * @param endpoints when an utterance is over
 */
public record Settings(
    double acousticScale,
    double wordCost,
    double silenceProbability,
    double phrasePauseProbability,
    double phrasePhoneCost,
    double transitionScale,
    double unknownPhoneCost,
    double beam,
    double latticeBeam,
    int minActive,
    int maxActive,
    int framesPerChunk,
    double dither,
    List<Double> normalisationPrior,
    EndpointRules endpoints) {

  /** Checks the ranges that the model's arithmetic depends on. */
  public Settings {
    normalisationPrior = List.copyOf(normalisationPrior);
    if (normalisationPrior.size() != FeatureParameters.COEFFICIENTS) {
      throw new IllegalArgumentException("13 coefficients expected: " + normalisationPrior);
    }
    requireProbability(silenceProbability);
    requireProbability(phrasePauseProbability);
  }

  private static void requireProbability(double chance) {
    if (!(chance > 0 && chance < 1)) {
      throw new IllegalArgumentException("not a probability: " + chance);
    }
  }

  /** The values found by the sweeps. */
  public static Settings standard() {
    return new Settings(
        0.12,
        -1.0,
        0.8,
        0.3,
        0.2,
        0.5,
        0.0,
        13.0,
        5.0,
        200,
        3000,
        20,
        0.0,
        List.of(
            79.0, -10.67, -0.26, 7.09, -5.53, -0.53, -3.65, -3.87, -2.49, -2.0, -1.37, -1.42, 0.6),
        EndpointRules.standard());
  }

  /** The same with another dither. */
  public Settings withDither(double noise) {
    return new Settings(
        acousticScale,
        wordCost,
        silenceProbability,
        phrasePauseProbability,
        phrasePhoneCost,
        transitionScale,
        unknownPhoneCost,
        beam,
        latticeBeam,
        minActive,
        maxActive,
        framesPerChunk,
        noise,
        normalisationPrior,
        endpoints);
  }
}
