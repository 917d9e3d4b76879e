package org.calamus.acoustic;

import static org.calamus.acoustic.FeatureParameters.COEFFICIENTS;
import static org.calamus.acoustic.FeatureParameters.STREAMS;
import static org.calamus.acoustic.Gaussians.DENSITIES;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The wiring of the network in the recogniser's configuration language: which component reads what.
 *
 * <p>{@link NetworkWriter} says what the components compute.
 */
final class NetworkPlan {

  private final List<String> lines = new ArrayList<>();
  private final PdfLayout layout;

  private NetworkPlan(PdfLayout layout) {
    this.layout = layout;
  }

  /** Gives the configuration, a line for each node. */
  static String of(PdfLayout layout) {
    NetworkPlan plan = new NetworkPlan(layout);
    plan.features();
    for (int stream = 0; stream < STREAMS; stream++) {
      plan.densities(stream);
    }
    plan.mixtures();
    return String.join("\n", plan.lines) + "\n";
  }

  private void features() {
    lines.add("input-node name=input dim=" + COEFFICIENTS);
    String window =
        IntStream.rangeClosed(-NetworkWriter.CONTEXT, NetworkWriter.CONTEXT)
            .mapToObj(k -> k == 0 ? "input" : "Offset(input, " + k + ")")
            .collect(Collectors.joining(", "));
    component("delta", "delta", "Append(" + window + ")");
    component("square", "square", "Append(delta, delta)");
  }

  private void densities(int stream) {
    int from = stream * COEFFICIENTS;
    part("d" + stream, "delta", from, COEFFICIENTS);
    part("q" + stream, "square", from, COEFFICIENTS);
    component("gauss" + stream, "gauss" + stream, "Append(d" + stream + ", q" + stream + ")");
    component("peak" + stream, "peak" + stream, "gauss" + stream);
    component("spread" + stream, "spread", "peak" + stream);
    component("post" + stream, "post" + stream, "Sum(gauss" + stream + ", spread" + stream + ")");
    for (int k = 0; k < layout.buckets().size(); k++) {
      PdfLayout.Bucket bucket = layout.buckets().get(k);
      String name = stream + "." + k;
      int books = bucket.books().size();
      part("p" + name, "post" + stream, bucket.firstBook() * DENSITIES, books * DENSITIES);
      component("mix" + name, "mix" + name, "p" + name);
      part("k" + name, "peak" + stream, bucket.firstBook(), books);
    }
  }

  private void mixtures() {
    int buckets = layout.buckets().size();
    List<String> mixed = new ArrayList<>();
    for (int stream = 0; stream < STREAMS; stream++) {
      for (int k = 0; k < buckets; k++) {
        mixed.add("mix" + stream + "." + k);
      }
    }
    component("prod", "prod", "Append(" + String.join(", ", mixed) + ")");
    component("log", "log", "prod");
    component("like", "like", "log");
    List<String> sums = new ArrayList<>();
    for (int k = 0; k < buckets; k++) {
      PdfLayout.Bucket bucket = layout.buckets().get(k);
      component("lift." + k, "lift." + k, "Sum(k0." + k + ", Sum(k1." + k + ", k2." + k + "))");
      part("s." + k, "like", bucket.firstPdf(), bucket.outputs());
      sums.add("Sum(s." + k + ", lift." + k + ")");
    }
    lines.add(
        "output-node name=output input=Append(" + String.join(", ", sums) + ") objective=linear");
  }

  private void component(String node, String component, String input) {
    lines.add("component-node name=" + node + " component=" + component + " input=" + input);
  }

  private void part(String node, String input, int from, int size) {
    lines.add(
        "dim-range-node name="
            + node
            + " input-node="
            + input
            + " dim-offset="
            + from
            + " dim="
            + size);
  }
}
