package org.taketally.cells;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.taketally.terms.Provenance;

/** Turns pattern counts into cells: codes become levels in order, or numbers. */
final class CellColumns {

  private final PatternCounts counts;
  private final List<Factor> factors = new ArrayList<>();
  private final List<Measure> measures = new ArrayList<>();
  private final UnassessedCounts unassessedCounts;
  private final Map<String, long[]> unassessed = new HashMap<>();

  CellColumns(PatternCounts counts, UnassessedCounts unassessedCounts) {
    this.counts = counts;
    this.unassessedCounts = unassessedCounts;
  }

  void factor(int column, String name, IntFunction<String> nameOfCode) {
    long[] grafts =
        Arrays.stream(levels(column, name, nameOfCode))
            .mapToLong(code -> unassessedCounts.of(column, code))
            .toArray();
    if (Arrays.stream(grafts).anyMatch(count -> count > 0)) {
      unassessed.put(name, grafts);
    }
  }

  /** Adds the column and gives its codes in the order of its levels. */
  private int[] levels(int column, String name, IntFunction<String> nameOfCode) {
    int[] codes = counts.codes(column);
    int highest = Arrays.stream(codes).max().orElse(Factor.MISSING);
    boolean[] used = new boolean[highest + 1];
    for (int code : codes) {
      if (code != Factor.MISSING) {
        used[code] = true;
      }
    }
    int[] inOrder =
        IntStream.rangeClosed(0, highest)
            .filter(code -> used[code])
            .boxed()
            .sorted(Comparator.comparing(nameOfCode::apply, LevelOrder.of(name)))
            .mapToInt(Integer::intValue)
            .toArray();
    int[] place = new int[highest + 1];
    for (int i = 0; i < inOrder.length; i++) {
      place[inOrder[i]] = i;
    }
    for (int cell = 0; cell < codes.length; cell++) {
      codes[cell] = codes[cell] == Factor.MISSING ? Factor.MISSING : place[codes[cell]];
    }
    factors.add(new Factor(name, Arrays.stream(inOrder).mapToObj(nameOfCode).toList(), codes));
    return inOrder;
  }

  /** Codes that are in order and all in use. */
  void rows(int column, RowNumbers rows) {
    int[] codes = counts.codes(column);
    int highest = Arrays.stream(codes).max().orElse(Factor.MISSING);
    factors.add(
        new Factor(
            Cells.BATCH_ROW,
            IntStream.rangeClosed(0, highest).mapToObj(rows::name).toList(),
            codes));
  }

  void measure(int column, String name, IntToDoubleFunction numberOfCode) {
    int[] codes = counts.codes(column);
    double[] values = new double[codes.length];
    for (int cell = 0; cell < values.length; cell++) {
      values[cell] =
          codes[cell] == Factor.MISSING ? Double.NaN : numberOfCode.applyAsDouble(codes[cell]);
    }
    measures.add(new Measure(name, values));
  }

  Cells cells(Provenance provenance) {
    return new Cells(
            factors,
            measures,
            counts.grafts(),
            counts.takes(),
            counts.logCoefficients(),
            provenance)
        .withUnassessed(unassessed);
  }
}
