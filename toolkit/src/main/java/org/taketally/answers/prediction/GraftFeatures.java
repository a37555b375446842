package org.taketally.answers.prediction;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import smile.data.DataFrame;
import smile.data.measure.NominalScale;
import smile.data.type.DataTypes;
import smile.data.type.StructField;
import smile.data.vector.BaseVector;
import smile.data.vector.DoubleVector;
import smile.data.vector.IntVector;

/** Cells as rows of numbers, one row a graft where a method knows no counts. */
final class GraftFeatures {

  static final String TAKE = "take";

  private final Cells cells;
  private final List<String> columns;

  GraftFeatures(Cells cells, List<String> columns) {
    this.cells = cells;
    this.columns = List.copyOf(columns);
  }

  Cells cells() {
    return cells;
  }

  List<String> columns() {
    return columns;
  }

  /** The cell of each graft of the cells kept. */
  int[] grafts(boolean[] held) {
    return IntStream.range(0, cells.size())
        .filter(i -> !held[i])
        .flatMap(i -> IntStream.range(0, cells.grafts(i)).map(g -> i))
        .toArray();
  }

  /** 1 for a take, in the order of {@link #grafts}: takes first within each cell. */
  int[] outcomes(boolean[] held) {
    return IntStream.range(0, cells.size())
        .filter(i -> !held[i])
        .flatMap(i -> IntStream.range(0, cells.grafts(i)).map(g -> g < cells.takes(i) ? 1 : 0))
        .toArray();
  }

  /** One row a cell: a 1 for its level of each column, numbers less their mean over their sd. */
  double[][] indicators() {
    double[][] rows = new double[cells.size()][indicatorsBefore(columns.size())];
    for (int c = 0; c < columns.size(); c++) {
      int at = indicatorsBefore(c);
      Factor factor = cells.findFactor(columns.get(c)).orElse(null);
      double[] scaled = factor == null ? scaled(cells.measure(columns.get(c))) : null;
      for (int i = 0; i < rows.length; i++) {
        if (factor != null) {
          rows[i][at + factor.code(i)] = 1;
        } else {
          rows[i][at] = scaled[i];
        }
      }
    }
    return rows;
  }

  /** Where a column's indicators start. */
  int indicatorsBefore(int column) {
    return columns.subList(0, column).stream()
        .mapToInt(name -> cells.findFactor(name).map(Factor::size).orElse(1))
        .sum();
  }

  private static double[] scaled(Measure measure) {
    double mean = Arrays.stream(measure.values()).average().orElse(0);
    double variance =
        Arrays.stream(measure.values()).map(v -> (v - mean) * (v - mean)).average().orElse(0);
    double sd = variance > 0 ? Math.sqrt(variance) : 1;
    return Arrays.stream(measure.values()).map(v -> (v - mean) / sd).toArray();
  }

  /**
   * Some rows as a table, levels as they are.
   *
   * @param rows the cell of each row
   * @param outcomes 1 for a take, one a row
   * @param column a column to be given one level throughout, or -1
   * @param level that level's code
   */
  DataFrame table(int[] rows, int[] outcomes, int column, int level) {
    List<BaseVector<?, ?, ?>> vectors = new ArrayList<>();
    vectors.add(IntVector.of(nominal(TAKE, List.of("failed", "took")), outcomes));
    for (int c = 0; c < columns.size(); c++) {
      Factor factor = cells.findFactor(columns.get(c)).orElse(null);
      boolean fixed = c == column;
      if (factor != null) {
        int[] codes = Arrays.stream(rows).map(i -> fixed ? level : factor.code(i)).toArray();
        vectors.add(IntVector.of(nominal(factor.name(), factor.levels()), codes));
      } else {
        double[] values = cells.measure(columns.get(c)).values();
        vectors.add(
            DoubleVector.of(
                columns.get(c), Arrays.stream(rows).mapToDouble(i -> values[i]).toArray()));
      }
    }
    return DataFrame.of(vectors.toArray(new BaseVector<?, ?, ?>[0]));
  }

  private static StructField nominal(String name, List<String> levels) {
    return new StructField(name, DataTypes.IntegerType, new NominalScale(levels));
  }
}
