package org.taketally.app;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.taketally.answers.SuggestedModel;
import org.taketally.cells.CellsOf;
import org.taketally.model.TakeModel;
import org.taketally.records.GraftRecords;

/** Wires records to the suggested model and to the columns a model needs. */
final class Suggested {

  /** Columns every answer looks at; no sheet may lack them. */
  private static final List<String> ALWAYS = List.of("cultivar", "rootstock");

  private Suggested() {}

  static SuggestedModel of(GraftRecords records) {
    List<String> columns =
        SuggestedModel.columns().stream().filter(records.frame().columnNames()::contains).toList();
    return SuggestedModel.of(CellsOf.records(records, columns));
  }

  /** The model's columns, and cultivar and rootstock, which every answer looks at. */
  static Set<String> needed(TakeModel model) {
    Set<String> columns = new LinkedHashSet<>(model.columns());
    columns.addAll(ALWAYS);
    return columns;
  }
}
