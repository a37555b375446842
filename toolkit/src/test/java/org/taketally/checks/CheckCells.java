package org.taketally.checks;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import org.apache.commons.math3.util.CombinatoricsUtils;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.model.FixedEffect;
import org.taketally.model.TakeFit;
import org.taketally.terms.Provenance;

/** Historic counts as cells, one per row of the file, levels in order of appearance. */
final class CheckCells {

  private final List<NamedCsvRecord> rows;
  private final String name;
  private final List<Factor> factors = new ArrayList<>();
  private final List<Measure> measures = new ArrayList<>();

  CheckCells(String name, List<NamedCsvRecord> rows) {
    this.name = name;
    this.rows = rows;
  }

  static CheckCells of(String example) {
    return new CheckCells(example, CheckData.rows(example + ".csv"));
  }

  CheckCells factor(String column) {
    return factor(column, row -> row.getField(column));
  }

  CheckCells factor(String column, Function<NamedCsvRecord, String> level) {
    List<String> levels = rows.stream().map(level).distinct().toList();
    int[] codes = rows.stream().mapToInt(row -> levels.indexOf(level.apply(row))).toArray();
    factors.add(new Factor(column, levels, codes));
    return this;
  }

  /** One level per row. */
  CheckCells eachRow(String column) {
    List<String> levels = new ArrayList<>();
    int[] codes = new int[rows.size()];
    for (int i = 0; i < codes.length; i++) {
      levels.add("row " + (i + 1));
      codes[i] = i;
    }
    factors.add(new Factor(column, levels, codes));
    return this;
  }

  CheckCells measure(String column, ToDoubleFunction<NamedCsvRecord> value) {
    measures.add(new Measure(column, rows.stream().mapToDouble(value).toArray()));
    return this;
  }

  Cells count(String grafts, String takes) {
    return count(row -> CheckData.whole(row, grafts), row -> CheckData.whole(row, takes));
  }

  Cells count(ToIntFunction<NamedCsvRecord> grafts, ToIntFunction<NamedCsvRecord> takes) {
    int[] n = rows.stream().mapToInt(grafts).toArray();
    int[] y = rows.stream().mapToInt(takes).toArray();
    double coefficients = 0;
    for (int i = 0; i < n.length; i++) {
      coefficients +=
          CombinatoricsUtils.factorialLog(n[i])
              - CombinatoricsUtils.factorialLog(y[i])
              - CombinatoricsUtils.factorialLog(n[i] - y[i]);
    }
    return new Cells(factors, measures, n, y, coefficients, Provenance.of(name, rows.size()));
  }

  /** Twice the log likelihood lacking to a model that fits each cell exactly. */
  static double deviance(TakeFit fit) {
    Cells cells = fit.cells();
    double saturated = 0;
    for (int i = 0; i < cells.size(); i++) {
      double y = cells.takes(i);
      double n = cells.grafts(i);
      saturated += y > 0 ? y * Math.log(y / n) : 0;
      saturated += y < n ? (n - y) * Math.log(1 - y / n) : 0;
    }
    return 2 * (saturated - fit.logLikelihood());
  }

  static double[] errors(TakeFit fit) {
    return fit.fixed().stream().mapToDouble(FixedEffect::standardError).toArray();
  }
}
