package org.taketally.cells;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.terms.Provenance;

/**
 * Counts rows into cells while they pass by; holds patterns, never rows.
 *
 * @param <R> one row
 */
final class CellCounter<R> {

  private final CountedRows<R> rows;
  private final List<String> wanted;
  private final List<ColumnCoder<R>> coders = new ArrayList<>();
  private final int[] codes;
  private final PatternCounts counts;
  private final UnassessedCounts unassessed;

  /**
   * Nothing counted yet.
   *
   * @throws IllegalArgumentException if a wanted column isn't there, naming those there are
   */
  CellCounter(CountedRows<R> rows, List<String> wanted) {
    this.rows = rows;
    this.wanted = wanted;
    this.codes = new int[wanted.size()];
    this.counts = new PatternCounts(wanted.size());
    this.unassessed = new UnassessedCounts(wanted.size());
    wanted.forEach(name -> coders.add(coder(name)));
  }

  /** A column named as that of the batches is a column, if the records have one. */
  private ColumnCoder<R> coder(String name) {
    return rows.coder(name)
        .or(
            () ->
                name.equals(Cells.BATCH_ROW)
                    ? Optional.of(new ColumnCoder.BatchCoder<>(rows::grafts))
                    : Optional.empty())
        .orElseThrow(() -> absent(name, rows.columns()));
  }

  private static IllegalArgumentException absent(String name, List<String> there) {
    return new IllegalArgumentException(
        "no column \"%s\" in these records; there are %s".formatted(name, there));
  }

  /** Counts the next row. */
  void count(R row) {
    if (rows.assessed(row)) {
      for (int i = 0; i < codes.length; i++) {
        codes[i] = coders.get(i).code(row);
      }
      counts.add(codes, rows.grafts(row), rows.takes(row));
    } else {
      for (int i = 0; i < codes.length; i++) {
        unassessed.add(i, coders.get(i).unassessedCode(row), rows.grafts(row));
      }
    }
  }

  /** The cells of all rows counted. */
  Cells cells(Provenance provenance) {
    PatternCounts merged = counts;
    for (int i = 0; i < codes.length; i++) {
      Optional<int[]> same = coders.get(i).merged();
      if (same.isPresent()) {
        merged = merged.recoded(i, same.get());
      }
    }
    CellColumns columns = new CellColumns(merged, unassessed);
    for (int i = 0; i < codes.length; i++) {
      coders.get(i).addTo(columns, i, wanted.get(i));
    }
    return columns.cells(provenance);
  }
}
