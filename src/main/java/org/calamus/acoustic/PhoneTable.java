package org.calamus.acoustic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The model definition: base phones, their variants in context ("triphones"), and the senones of
 * each, which are the distributions its three states share with others.
 */
final class PhoneTable {

  /** Emitting states of a phone. */
  static final int STATES = 3;

  private static final String TABLE = "mdef";
  private static final int MAGIC = 0x46444d42; // "BMDF"
  private static final int POSITIONS = 4;
  private static final int MOST = 1 << 20;
  private static final String SILENCE = "SIL";
  private static final List<String> NOT_SPEECH = List.of(SILENCE, "+NSN+", "+SPN+");

  private final List<String> names = new ArrayList<>();
  private final int[] sequence;
  private final int[] transition;
  private final int[][] sequences;
  private final int[] codebook;
  private final int[] triphones;
  private final int senones;
  private final int silence;

  /** Reads the table. */
  PhoneTable(byte[] bytes) {
    TableReader in = new TableReader(TABLE, bytes);
    in.require(in.int32() == MAGIC, "is not a binary model definition");
    in.require(in.int32() == 1, "has an unknown version");
    in.skip(in.count("bytes of description", 0, MOST));
    int basePhones = in.count("base phones", 4, 255);
    int phones = in.count("phones", basePhones, MOST);
    in.require(in.count("states", 1, 10) == STATES, "has phones of another length");
    in.count("base senones", 1, MOST);
    senones = in.count("senones", 1, 65535);
    int matrices = in.count("transition matrices", 1, MOST);
    int sequenceCount = in.count("senone sequences", 1, MOST);
    in.int32();
    int treeNodes = in.count("context tree nodes", 0, 4 * MOST);
    in.int32();
    readNames(in, basePhones);
    silence = names.indexOf(SILENCE);
    in.require(silence >= 0, "has no phone " + SILENCE);
    in.skip(8 * treeNodes);
    sequence = new int[phones];
    transition = new int[phones];
    triphones = new int[POSITIONS * basePhones * basePhones * basePhones];
    Arrays.fill(triphones, -1);
    int[] base = readPhones(in, sequenceCount, matrices);
    sequences = readSequences(in, sequenceCount);
    codebook = codebooks(base);
  }

  private void readNames(TableReader in, int count) {
    int start = in.position();
    for (int i = 0; i < count; i++) {
      names.add(in.zeroTerminated());
    }
    int length = in.position() - start;
    in.skip((4 - length % 4) % 4);
  }

  private int[] readPhones(TableReader in, int sequenceCount, int matrices) {
    int basePhones = names.size();
    int[] base = new int[sequence.length];
    for (int i = 0; i < sequence.length; i++) {
      sequence[i] = in.int32();
      transition[i] = in.int32();
      int position = in.unsignedByte();
      int phone = in.unsignedByte();
      int left = in.unsignedByte();
      int right = in.unsignedByte();
      in.require(
          sequence[i] >= 0
              && sequence[i] < sequenceCount
              && transition[i] >= 0
              && transition[i] < matrices,
          "refers to something beyond its end in phone " + i);
      base[i] = i < basePhones ? i : phone;
      if (i >= basePhones) {
        in.require(
            position < POSITIONS && Math.max(phone, Math.max(left, right)) < basePhones,
            "names an unknown phone in triphone " + i);
        triphones[slot(position, phone, left, right)] = i;
      }
    }
    return base;
  }

  private int[][] readSequences(TableReader in, int count) {
    int entries = in.int32();
    in.require(entries == count * STATES, "gives " + entries + " entries of senone sequences");
    int[][] read = new int[count][STATES];
    for (int[] one : read) {
      for (int state = 0; state < STATES; state++) {
        one[state] = in.unsignedShort();
        in.require(one[state] < senones, "refers to the unknown senone " + one[state]);
      }
    }
    return read;
  }

  private int[] codebooks(int[] base) {
    int[] books = new int[senones];
    for (int phone = 0; phone < base.length; phone++) {
      for (int senone : sequences[sequence[phone]]) {
        books[senone] = base[phone];
      }
    }
    return books;
  }

  private int slot(int position, int phone, int left, int right) {
    int n = names.size();
    return ((position * n + phone) * n + left) * n + right;
  }

  int senoneCount() {
    return senones;
  }

  int basePhoneCount() {
    return names.size();
  }

  int silence() {
    return silence;
  }

  /** Number of a base phone, or -1 when there is none of that name. */
  int number(String name) {
    return NOT_SPEECH.contains(name) ? -1 : names.indexOf(name);
  }

  String name(int basePhone) {
    return names.get(basePhone);
  }

  /** The phones that speech consists of, in the table's order. */
  int[] speech() {
    return IntStream.range(0, names.size())
        .filter(i -> !NOT_SPEECH.contains(names.get(i)))
        .toArray();
  }

  /** Senones of a phone's three states. */
  int[] senones(int phone) {
    return sequences[sequence[phone]];
  }

  /** Number of the phone's transition matrix. */
  int transitionMatrix(int phone) {
    return transition[phone];
  }

  /** The base phone whose Gaussians a senone mixes. */
  int codebook(int senone) {
    return codebook[senone];
  }

  /**
   * Finds the variant of a base phone for its neighbours.
   *
   * <p>Not all were seen in training. The nearest is taken: the same neighbours elsewhere in a
   * word, then silence in place of a neighbour, at last the base phone itself.
   */
  int find(Position position, int phone, int left, int right) {
    int exact = triphones[slot(position.inTable, phone, left, right)];
    if (exact >= 0) {
      return exact;
    }
    for (int other = 0; other < POSITIONS; other++) {
      int found = triphones[slot(other, phone, left, right)];
      if (found >= 0) {
        return found;
      }
    }
    for (int[] context : new int[][] {{silence, right}, {left, silence}, {silence, silence}}) {
      int found = triphones[slot(position.inTable, phone, context[0], context[1])];
      if (found >= 0) {
        return found;
      }
    }
    return phone;
  }
}
