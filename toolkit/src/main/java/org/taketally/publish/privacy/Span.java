package org.taketally.publish.privacy;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * All groups whose counts follow from published tables by adding and subtracting multiples of their
 * counts.
 *
 * <p>Cells that stand in the same entry of every table can't be told apart, so they are taken
 * together first. Works modulo a prime, where every dependence of whole numbers holds too: it may
 * call a group known that isn't (hardly ever), never the other way round.
 */
final class Span {

  private static final long PRIME = 2_147_483_647;

  private final Map<Integer, Integer> classOfCell = new HashMap<>();
  private final List<Integer> classSizes = new ArrayList<>();
  private final List<long[]> rows = new ArrayList<>();
  private final List<Integer> pivots = new ArrayList<>();

  Span(List<PublishedTable> tables) {
    BitSet published = new BitSet();
    tables.forEach(table -> table.entries().forEach(entry -> published.or(entry.cells())));
    Map<List<Integer>, Integer> classes = new HashMap<>();
    published.stream()
        .forEach(
            cell -> {
              int number = classes.computeIfAbsent(places(tables, cell), key -> classes.size());
              if (number == classSizes.size()) {
                classSizes.add(0);
              }
              classOfCell.put(cell, number);
              classSizes.set(number, classSizes.get(number) + 1);
            });
    tables.forEach(table -> table.entries().forEach(entry -> add(entry.cells())));
  }

  private static List<Integer> places(List<PublishedTable> tables, int cell) {
    List<Integer> places = new ArrayList<>();
    for (PublishedTable table : tables) {
      int place = table.entries().size() - 1;
      while (place >= 0 && !table.entries().get(place).cells().get(cell)) {
        place--;
      }
      places.add(place);
    }
    return places;
  }

  private void add(BitSet entry) {
    long[] rest = reduced(byClass(entry));
    int pivot = firstNonZero(rest);
    if (pivot >= 0) {
      long inverse = power(rest[pivot], PRIME - 2);
      for (int i = pivot; i < rest.length; i++) {
        rest[i] = rest[i] * inverse % PRIME;
      }
      rows.add(rest);
      pivots.add(pivot);
    }
  }

  /** Whether a group's counts follow from those published. */
  boolean holds(BitSet group) {
    int[] cellsOfClass = new int[classSizes.size()];
    for (int cell = group.nextSetBit(0); cell >= 0; cell = group.nextSetBit(cell + 1)) {
      Integer number = classOfCell.get(cell);
      if (number == null) {
        return false;
      }
      cellsOfClass[number]++;
    }
    for (int i = 0; i < cellsOfClass.length; i++) {
      if (cellsOfClass[i] != 0 && cellsOfClass[i] != classSizes.get(i)) {
        return false;
      }
    }
    return firstNonZero(reduced(byClass(group))) < 0;
  }

  private long[] byClass(BitSet group) {
    long[] held = new long[classSizes.size()];
    group.stream().forEach(cell -> held[classOfCell.get(cell)] = 1);
    return held;
  }

  private long[] reduced(long[] vector) {
    for (int k = 0; k < rows.size(); k++) {
      long[] row = rows.get(k);
      long factor = vector[pivots.get(k)];
      for (int i = 0; factor != 0 && i < row.length; i++) {
        vector[i] = (vector[i] + (PRIME - factor) * row[i]) % PRIME;
      }
    }
    return vector;
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
