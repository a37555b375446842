package org.taketally.answers;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.terms.Provenance;

/** Small sets of records for tests, typed in row by row. */
public final class Records {

  private final String[] columns;
  private final List<String[]> rows = new ArrayList<>();
  private final List<int[]> counts = new ArrayList<>();

  private Records(String... columns) {
    this.columns = columns;
  }

  public static Records of(String... columns) {
    return new Records(columns);
  }

  public Records row(int grafts, int takes, String... levels) {
    rows.add(levels);
    counts.add(new int[] {grafts, takes});
    return this;
  }

  public Cells cells() {
    List<Factor> factors = new ArrayList<>();
    for (int c = 0; c < columns.length; c++) {
      int column = c;
      List<String> levels =
          List.copyOf(new TreeSet<>(rows.stream().map(row -> row[column]).toList()));
      Map<String, Integer> index = new LinkedHashMap<>();
      levels.forEach(level -> index.put(level, index.size()));
      factors.add(
          new Factor(
              columns[c], levels, rows.stream().mapToInt(row -> index.get(row[column])).toArray()));
    }
    return new Cells(
        factors,
        List.of(),
        counts.stream().mapToInt(count -> count[0]).toArray(),
        counts.stream().mapToInt(count -> count[1]).toArray(),
        0,
        Provenance.of("typed in", rows.size()));
  }
}
