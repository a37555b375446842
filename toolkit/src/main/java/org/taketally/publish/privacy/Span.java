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

  private final Map<Integer, Integer> classOfCell = new HashMap<>();
  private final List<Integer> classSizes = new ArrayList<>();
  private final ModularBasis basis = new ModularBasis();

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
    tables.forEach(t -> t.entries().forEach(entry -> basis.add(byClass(entry.cells()))));
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
    return basis.spans(byClass(group));
  }

  private long[] byClass(BitSet group) {
    long[] held = new long[classSizes.size()];
    group.stream().forEach(cell -> held[classOfCell.get(cell)] = 1);
    return held;
  }
}
