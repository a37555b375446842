package org.taketally.answers.adjusted;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.answers.Condition;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.counts.WeightedQuantiles;
import org.taketally.cells.Cells;
import org.taketally.model.LogitPart;
import org.taketally.model.TakeDesign;
import org.taketally.model.TakeFit;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Logit;

/**
 * One fixed set of conditions to compare cultivars in: the commonest level of each adjusted column,
 * the middle graft's value of each number, and the middle of everything that varies.
 */
public final class StandardConditions {

  private final MarginalTakes averaging;
  private final Map<String, String> levels = new LinkedHashMap<>();

  public StandardConditions(MarginalTakes averaging) {
    this.averaging = averaging;
    TakeFit fit = averaging.fit();
    List<String> columns = new ArrayList<>(fit.model().adjusted());
    columns.addAll(fit.model().curves().keySet());
    for (String column : columns) {
      if (fit.design().adjustsFor(column)) {
        levels.put(column, usual(fit, column));
      }
    }
  }

  private static String usual(TakeFit fit, String column) {
    List<String> known = fit.design().levels(column);
    return known.isEmpty()
        ? Double.toString(WeightedQuantiles.weightedQuantile(fit.cells(), column, 0.5))
        : commonest(fit.cells(), column, known);
  }

  private static String commonest(Cells cells, String column, List<String> known) {
    var counts = TakeCounter.byLevel(cells, column, known);
    int best = 0;
    for (int l = 1; l < counts.length; l++) {
      best = counts[l].grafts() > counts[best].grafts() ? l : best;
    }
    return known.get(best);
  }

  /** Takes of a column's levels under these conditions, one row a draw. */
  public double[][] takes(String column) {
    double[][] logits = averaging.logits(column);
    double[][] takes = new double[logits.length][];
    LogitPart others = without(column);
    for (int d = 0; d < takes.length; d++) {
      double base = others.at(averaging.draws().beta(d));
      takes[d] = java.util.Arrays.stream(logits[d]).map(e -> Logit.take(base + e)).toArray();
    }
    return takes;
  }

  /** The logit under these conditions, at the column's first level. */
  private LogitPart without(String column) {
    TakeDesign design = averaging.fit().design();
    LogitPart logit = design.intercept();
    for (Map.Entry<String, String> level : levels.entrySet()) {
      String own = level.getKey();
      String value = own.equals(column) ? averaging.levels(column).get(0) : level.getValue();
      logit = logit.plus(1, design.part(own, value));
    }
    return logit;
  }

  /** The conditions, but for the cultivar's own. */
  public List<Condition> conditions() {
    TakeDesign design = averaging.fit().design();
    List<Condition> conditions = new ArrayList<>();
    levels.forEach(
        (column, level) -> {
          if (!column.equals(RecordColumn.CULTIVAR.columnName())) {
            conditions.add(
                design.levels(column).isEmpty()
                    ? Condition.number(column, Double.parseDouble(level))
                    : Condition.level(column, level));
          }
        });
    return conditions;
  }
}
