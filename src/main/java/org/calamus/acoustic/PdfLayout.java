package org.calamus.acoustic;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Which output of the network is which senone.
 *
 * <p>The network mixes a codebook's densities in a block, and a component wants blocks of one size.
 * Only the senones the graph needs are there; the codebooks are sorted by how many that is and cut
 * into buckets, so that few outputs pad a block. The fullest block of a bucket comes last: then the
 * top output is used, which the recogniser's count of outputs depends on.
 */
final class PdfLayout {

  private static final int BUCKETS = 8;

  /**
   * Codebooks whose blocks have one size.
   *
   * @param books the codebooks, fullest last
   * @param width outputs of each
   * @param firstPdf the first output
   * @param firstBook how many codebooks stand before these
   */
  record Bucket(List<Integer> books, int width, int firstPdf, int firstBook) {

    int outputs() {
      return books.size() * width;
    }
  }

  private final Map<Integer, List<Integer>> senonesByBook = new TreeMap<>();
  private final Map<Integer, Integer> pdfs = new TreeMap<>();
  private final List<Bucket> buckets = new ArrayList<>();
  private final List<Integer> books;
  private final int size;

  PdfLayout(WordGraph graph, PhoneTable phones) {
    SortedSet<Integer> senones =
        graph.arcs().stream()
            .filter(Arc::isHeard)
            .map(Arc::senone)
            .collect(Collectors.toCollection(TreeSet::new));
    for (int senone : senones) {
      senonesByBook.computeIfAbsent(phones.codebook(senone), b -> new ArrayList<>()).add(senone);
    }
    books =
        senonesByBook.keySet().stream()
            .sorted(Comparator.comparingInt(book -> senonesByBook.get(book).size()))
            .toList();
    size = cut();
  }

  private int cut() {
    int bucketCount = Math.min(BUCKETS, books.size());
    int firstPdf = 0;
    for (int i = 0; i < bucketCount; i++) {
      int from = i * books.size() / bucketCount;
      List<Integer> part = books.subList(from, (i + 1) * books.size() / bucketCount);
      int width = senonesByBook.get(part.get(part.size() - 1)).size();
      Bucket bucket = new Bucket(part, width, firstPdf, from);
      buckets.add(bucket);
      for (int block = 0; block < part.size(); block++) {
        List<Integer> senones = senonesByBook.get(part.get(block));
        for (int k = 0; k < senones.size(); k++) {
          pdfs.put(senones.get(k), firstPdf + block * width + k);
        }
      }
      firstPdf += bucket.outputs();
    }
    return firstPdf;
  }

  /** Codebooks in use, in the network's order. */
  List<Integer> books() {
    return books;
  }

  List<Bucket> buckets() {
    return buckets;
  }

  List<Integer> senonesOf(int book) {
    return senonesByBook.get(book);
  }

  int pdf(int senone) {
    return pdfs.get(senone);
  }

  /** Number of outputs. */
  int size() {
    return size;
  }
}
