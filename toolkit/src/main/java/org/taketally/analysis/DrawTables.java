package org.taketally.analysis;

import java.util.List;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.model.TakeDraws;
import org.taketally.model.VaryingFactor;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.Table;

/** Posterior draws as tables: one row a draw, each column named. */
final class DrawTables {

  private DrawTables() {}

  static Table parameters(TakeDraws draws, List<VaryingFactor> varying) {
    Table table = Table.create("draws, logits");
    for (String name : draws.fixedNames()) {
      table.addColumns(DoubleColumn.create(name, draws.fixed(name)));
    }
    for (VaryingFactor factor : varying) {
      table.addColumns(DoubleColumn.create("sd of " + factor.factor(), draws.sds(factor.factor())));
    }
    return table;
  }

  static Table takes(MarginalTakes averaging, String column) {
    List<String> levels = averaging.levels(column);
    double[][] takes = averaging.takes(column);
    Table table = Table.create("draws of take by " + column);
    for (int l = 0; l < levels.size(); l++) {
      table.addColumns(DoubleColumn.create(levels.get(l), DrawSummary.column(takes, l)));
    }
    return table;
  }
}
