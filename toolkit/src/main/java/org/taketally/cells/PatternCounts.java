package org.taketally.cells;

import it.unimi.dsi.fastutil.HashCommon;
import java.util.Arrays;
import org.apache.commons.math3.util.CombinatoricsUtils;

/**
 * Sums grafts and takes of rows with the same pattern of codes. Patterns are packed into as few
 * bits as the codes met so far need and numbered in the order met, so that millions of them fit
 * into memory.
 */
final class PatternCounts {

  private static final int FIRST_BITS = 4;
  private static final int WORD = 64;
  private static final int FREE = 0;

  private final int columns;
  private final int[] bits;
  private final int[] word;
  private final int[] shift;
  private int words;
  private long[] pattern;
  private long[] patterns;
  private int[] grafts = new int[16];
  private int[] takes = new int[16];
  private int[] slots = new int[64];
  private int size;
  private double logCoefficients;

  PatternCounts(int columns) {
    this.columns = columns;
    bits = new int[columns];
    word = new int[columns];
    shift = new int[columns];
    Arrays.fill(bits, FIRST_BITS);
    layOut();
    patterns = new long[words * grafts.length];
  }

  private void layOut() {
    int at = 0;
    int used = 0;
    for (int i = 0; i < columns; i++) {
      if (used + bits[i] > WORD) {
        at++;
        used = 0;
      }
      word[i] = at;
      shift[i] = used;
      used += bits[i];
    }
    words = at + 1;
    pattern = new long[words];
  }

  /**
   * Adds a row.
   *
   * @param codes one per column, {@link Factor#MISSING} or 0 upwards
   * @param rowGrafts 1 or more
   * @param rowTakes 0 to grafts
   */
  void add(int[] codes, int rowGrafts, int rowTakes) {
    sum(codes, rowGrafts, rowTakes);
    if (rowGrafts > 1) {
      logCoefficients += CombinatoricsUtils.binomialCoefficientLog(rowGrafts, rowTakes);
    }
  }

  private void sum(int[] codes, int rowGrafts, int rowTakes) {
    for (int i = 0; i < columns; i++) {
      if (((codes[i] + 1L) >>> bits[i]) != 0) {
        widen(i, codes[i] + 1);
      }
    }
    pack(codes);
    int cell = find();
    grafts[cell] = Math.addExact(grafts[cell], rowGrafts);
    takes[cell] += rowTakes;
  }

  private void pack(int[] codes) {
    Arrays.fill(pattern, 0);
    for (int i = 0; i < columns; i++) {
      pattern[word[i]] |= (codes[i] + 1L) << shift[i];
    }
  }

  /** The cell of the packed pattern, a new one if it is the first of its kind. */
  private int find() {
    int mask = slots.length - 1;
    int slot = hash(pattern, 0) & mask;
    while (slots[slot] != FREE) {
      int cell = slots[slot] - 1;
      if (Arrays.equals(patterns, cell * words, (cell + 1) * words, pattern, 0, words)) {
        return cell;
      }
      slot = (slot + 1) & mask;
    }
    return append(slot);
  }

  private int append(int slot) {
    if (size == grafts.length) {
      int larger = Math.addExact(size, size);
      grafts = Arrays.copyOf(grafts, larger);
      takes = Arrays.copyOf(takes, larger);
      patterns = Arrays.copyOf(patterns, Math.multiplyExact(larger, words));
    }
    System.arraycopy(pattern, 0, patterns, size * words, words);
    slots[slot] = ++size;
    if (2 * size > slots.length) {
      index(2 * slots.length);
    }
    return size - 1;
  }

  private void index(int length) {
    slots = new int[length];
    for (int cell = 0; cell < size; cell++) {
      int slot = hash(patterns, cell * words) & (length - 1);
      while (slots[slot] != FREE) {
        slot = (slot + 1) & (length - 1);
      }
      slots[slot] = cell + 1;
    }
  }

  private int hash(long[] from, int start) {
    long hash = 0;
    for (int i = 0; i < words; i++) {
      hash = HashCommon.murmurHash3(hash + from[start + i]);
    }
    return (int) hash;
  }

  /** Gives a column more bits and packs all patterns anew. */
  private void widen(int column, int code) {
    int[][] codes = new int[columns][];
    for (int i = 0; i < columns; i++) {
      codes[i] = codes(i);
    }
    bits[column] = Integer.SIZE - Integer.numberOfLeadingZeros(code) + 1;
    layOut();
    patterns = new long[Math.multiplyExact(words, grafts.length)];
    int[] row = new int[columns];
    for (int cell = 0; cell < size; cell++) {
      for (int i = 0; i < columns; i++) {
        row[i] = codes[i][cell];
      }
      pack(row);
      System.arraycopy(pattern, 0, patterns, cell * words, words);
    }
    index(slots.length);
  }

  /** The same rows counted with other codes in one column; equal new codes are one pattern. */
  PatternCounts recoded(int column, int[] newCode) {
    PatternCounts other = new PatternCounts(columns);
    int[][] codes = new int[columns][];
    for (int i = 0; i < columns; i++) {
      codes[i] = codes(i);
    }
    int[] row = new int[columns];
    for (int cell = 0; cell < size; cell++) {
      for (int i = 0; i < columns; i++) {
        row[i] = codes[i][cell];
      }
      row[column] = row[column] == Factor.MISSING ? Factor.MISSING : newCode[row[column]];
      other.sum(row, grafts[cell], takes[cell]);
    }
    other.logCoefficients = logCoefficients;
    return other;
  }

  int size() {
    return size;
  }

  /** The codes of a column, one per pattern. */
  int[] codes(int column) {
    int[] codes = new int[size];
    long mask = (1L << bits[column]) - 1;
    for (int cell = 0; cell < size; cell++) {
      codes[cell] = (int) ((patterns[cell * words + word[column]] >>> shift[column]) & mask) - 1;
    }
    return codes;
  }

  int[] grafts() {
    return Arrays.copyOf(grafts, size);
  }

  int[] takes() {
    return Arrays.copyOf(takes, size);
  }

  /** Sum of the log binomial coefficients of the rows as given. */
  double logCoefficients() {
    return logCoefficients;
  }
}
