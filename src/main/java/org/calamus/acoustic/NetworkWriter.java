package org.calamus.acoustic;

import static org.calamus.acoustic.FeatureParameters.COEFFICIENTS;
import static org.calamus.acoustic.FeatureParameters.STREAMS;
import static org.calamus.acoustic.Gaussians.DENSITIES;

import java.util.Arrays;
import java.util.List;

/**
 * Writes a Gaussian mixture model as a network of fixed components.
 *
 * <p>Seven frames of cepstra give three streams, all by one fixed affine step: the coefficients,
 * their differences, and the differences of those. In each stream:
 *
 * <ol>
 *   <li>the coefficients and their squares give the log density of every Gaussian (affine);
 *   <li>the greatest of each codebook, its peak, is taken off its densities, which keeps the next
 *       step from running out of the range of a float;
 *   <li>a softmax over all codebooks: its divisor is the same for all outputs of a frame, so it
 *       makes no difference to which words are best;
 *   <li>a block for each codebook mixes densities with each senone's weights.
 * </ol>
 *
 * <p>The product of the three streams' mixtures is each output's likelihood. There is no logarithm
 * among the components, but the normalising one can give, for each block, the log of the value it
 * divides by. With blocks of one value it gives that value's sign and the log of its size; their
 * sum is the log likelihood plus one. The summed peaks are then added back.
 *
 * <p>Weights are scaled by a million in each stream, so that the product stays above the floor of
 * the normalising component (a square of 2^-66, about 1e-10) and its square within a float. What
 * lies further below the codebook's peak is cut off there: see {@link #LOG_FLOOR}.
 */
final class NetworkWriter {

  /** Frames read on each side of the one scored. */
  static final int CONTEXT = 3;

  /** Factor on the mixture weights of each stream. */
  static final double SCALE = 1e6;

  /**
   * The lowest value the product's logarithm can take: that of the normalising component's floor.
   * Scores are right only where the scaled product lies above it.
   */
  static final double LOG_FLOOR = -33 * Math.log(2);

  // weight of each frame of the window in each stream
  private static final int[][] DIFFERENCES = {
    {0, 0, 0, 1, 0, 0, 0}, {0, -1, 0, 0, 0, 1, 0}, {1, 0, -1, 0, -1, 0, 1}
  };
  private static final int FEATURES = STREAMS * COEFFICIENTS;
  private static final float LEARNING_RATE = 0.001f;

  private final KaldiBytes out;
  private final PdfLayout layout;
  private final int densities;

  NetworkWriter(KaldiBytes out, PdfLayout layout) {
    this.out = out;
    this.layout = layout;
    this.densities = layout.books().size() * DENSITIES;
  }

  /** Writes the network; its outputs have no priors, being likelihoods already. */
  void write(Gaussians means, Gaussians variances, MixtureWeights weights) {
    int buckets = layout.buckets().size();
    int components = 6 + 3 * STREAMS + (STREAMS + 1) * buckets;
    out.token("<Nnet3>").text("\n" + NetworkPlan.of(layout) + "\n");
    out.token("<NumComponents>").number(components);
    differences();
    product("square", 2 * FEATURES, FEATURES);
    spread();
    for (int k = 0; k < buckets; k++) {
      lift(k);
    }
    product("prod", STREAMS * layout.size(), layout.size());
    logarithm();
    for (int stream = 0; stream < STREAMS; stream++) {
      gaussians(stream, means, variances);
      peak(stream);
      softmax(stream);
      for (int k = 0; k < buckets; k++) {
        mixtures(stream, k, weights);
      }
    }
    out.token("</Nnet3>");
    out.token("<LeftContext>").number(CONTEXT).token("<RightContext>").number(CONTEXT);
    out.token("<Priors>").vector(new float[0]);
  }

  private void begin(String name, String kind) {
    out.token("<ComponentName>").token(name).token("<" + kind + ">");
  }

  private void end(String kind) {
    out.token("</" + kind + ">");
  }

  private void affine(String name, int columns, float[] matrix, float[] offset) {
    begin(name, "FixedAffineComponent");
    out.token("<LinearParams>").matrix(columns, matrix).token("<BiasParams>").vector(offset);
    end("FixedAffineComponent");
  }

  private void blocks(String name, int columns, float[] matrix, int count) {
    begin(name, "BlockAffineComponent");
    out.token("<LearningRate>").number(LEARNING_RATE).token("<NumBlocks>").number(count);
    out.token("<LinearParams>").matrix(columns, matrix);
    out.token("<BiasParams>").vector(new float[matrix.length / columns]);
    end("BlockAffineComponent");
  }

  private void product(String name, int input, int output) {
    begin(name, "ElementwiseProductComponent");
    out.token("<InputDim>").number(input).token("<OutputDim>").number(output);
    end("ElementwiseProductComponent");
  }

  private void differences() {
    int window = 2 * CONTEXT + 1;
    float[] matrix = new float[FEATURES * window * COEFFICIENTS];
    for (int row = 0; row < FEATURES; row++) {
      for (int frame = 0; frame < window; frame++) {
        int column = frame * COEFFICIENTS + row % COEFFICIENTS;
        matrix[row * window * COEFFICIENTS + column] = DIFFERENCES[row / COEFFICIENTS][frame];
      }
    }
    affine("delta", window * COEFFICIENTS, matrix, new float[FEATURES]);
  }

  /** Copies each codebook's peak, negative, to all its densities. */
  private void spread() {
    float[] minus = new float[densities];
    Arrays.fill(minus, -1);
    blocks("spread", 1, minus, layout.books().size());
  }

  /** Copies each codebook's summed peaks to all its outputs. */
  private void lift(int bucket) {
    PdfLayout.Bucket sizes = layout.buckets().get(bucket);
    float[] ones = new float[sizes.outputs()];
    Arrays.fill(ones, 1);
    blocks("lift." + bucket, 1, ones, sizes.books().size());
  }

  private void logarithm() {
    begin("log", "NormalizeComponent");
    out.token("<InputDim>").number(layout.size()).token("<BlockDim>").number(1);
    out.token("<TargetRms>").number(1f).token("<AddLogStddev>").truth(true);
    end("NormalizeComponent");
    begin("like", "SumGroupComponent");
    int[] pairs = new int[layout.size()];
    Arrays.fill(pairs, 2);
    out.token("<Sizes>").numbers(pairs);
    end("SumGroupComponent");
  }

  private void gaussians(int stream, Gaussians means, Gaussians variances) {
    float[] matrix = new float[densities * 2 * COEFFICIENTS];
    float[] offset = new float[densities];
    int row = 0;
    for (int book : layout.books()) {
      for (int density = 0; density < DENSITIES; density++) {
        double sum = 0;
        for (int i = 0; i < COEFFICIENTS; i++) {
          double mean = means.value(book, stream, density, i);
          double variance =
              Math.max(variances.value(book, stream, density, i), Gaussians.LEAST_VARIANCE);
          matrix[(2 * row) * COEFFICIENTS + i] = (float) (mean / variance);
          matrix[(2 * row + 1) * COEFFICIENTS + i] = (float) (-0.5 / variance);
          sum += Math.log(2 * Math.PI * variance) + mean * mean / variance;
        }
        offset[row++] = (float) (-0.5 * sum);
      }
    }
    affine("gauss" + stream, 2 * COEFFICIENTS, matrix, offset);
  }

  private void peak(int stream) {
    begin("peak" + stream, "MaxpoolingComponent");
    out.token("<InputXDim>").number(1).token("<InputYDim>").number(layout.books().size());
    out.token("<InputZDim>").number(DENSITIES);
    out.token("<PoolXSize>").number(1).token("<PoolYSize>").number(1);
    out.token("<PoolZSize>").number(DENSITIES);
    out.token("<PoolXStep>").number(1).token("<PoolYStep>").number(1);
    out.token("<PoolZStep>").number(DENSITIES);
    end("MaxpoolingComponent");
  }

  private void softmax(int stream) {
    begin("post" + stream, "SoftmaxComponent");
    out.token("<Dim>").number(densities);
    out.token("<ValueAvg>").vector(new float[0]).token("<DerivAvg>").vector(new float[0]);
    out.token("<Count>").number(0f);
    end("SoftmaxComponent");
  }

  private void mixtures(int stream, int k, MixtureWeights weights) {
    PdfLayout.Bucket bucket = layout.buckets().get(k);
    float[] matrix = new float[bucket.outputs() * DENSITIES];
    for (int block = 0; block < bucket.books().size(); block++) {
      List<Integer> senones = layout.senonesOf(bucket.books().get(block));
      for (int i = 0; i < senones.size(); i++) {
        double[] mix = weights.of(senones.get(i), stream);
        int row = (block * bucket.width() + i) * DENSITIES;
        for (int density = 0; density < DENSITIES; density++) {
          matrix[row + density] = (float) (mix[density] * SCALE);
        }
      }
    }
    blocks("mix" + stream + "." + k, DENSITIES, matrix, bucket.books().size());
  }
}
