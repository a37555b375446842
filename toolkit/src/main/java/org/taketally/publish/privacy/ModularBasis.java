package org.taketally.publish.privacy;

import java.util.ArrayList;
import java.util.List;

/** Linearly independent vectors, kept reduced, modulo a prime: the rank of what was added. */
final class ModularBasis {

  static final long PRIME = 2_147_483_647;

  private final List<long[]> rows = new ArrayList<>();
  private final List<Integer> pivots = new ArrayList<>();

  ModularBasis copy() {
    ModularBasis copy = new ModularBasis();
    copy.rows.addAll(rows);
    copy.pivots.addAll(pivots);
    return copy;
  }

  int rank() {
    return rows.size();
  }

  /** Takes in a vector of numbers from 0 below the prime; one that depends on others is dropped. */
  void add(long[] vector) {
    long[] rest = reduced(vector);
    int pivot = firstNonZero(rest);
    if (pivot < 0) {
      return;
    }
    long inverse = power(rest[pivot], PRIME - 2);
    for (int i = pivot; i < rest.length; i++) {
      rest[i] = rest[i] * inverse % PRIME;
    }
    rows.add(rest);
    pivots.add(pivot);
  }

  /** Whether a vector is a sum of multiples of those taken in. */
  boolean spans(long[] vector) {
    return firstNonZero(reduced(vector)) < 0;
  }

  private long[] reduced(long[] vector) {
    long[] rest = vector.clone();
    for (int k = 0; k < rows.size(); k++) {
      long[] row = rows.get(k);
      long factor = rest[pivots.get(k)];
      for (int i = 0; factor != 0 && i < row.length; i++) {
        rest[i] = (rest[i] + (PRIME - factor) * row[i]) % PRIME;
      }
    }
    return rest;
  }

  private static int firstNonZero(long[] values) {
    for (int i = 0; i < values.length; i++) {
      if (values[i] != 0) {
        return i;
      }
    }
    return -1;
  }

  private static long power(long base, long exponent) {
    long result = 1;
    long square = base;
    for (long e = exponent; e > 0; e >>= 1) {
      result = (e & 1) == 1 ? result * square % PRIME : result;
      square = square * square % PRIME;
    }
    return result;
  }
}
