package org.taketally.records;

import java.util.ArrayList;
import java.util.List;

/** The columns a dictionary may speak of by our names: those of records and of assessments. */
final class KnownColumns {

  private KnownColumns() {}

  static List<String> names() {
    List<String> names = new ArrayList<>();
    for (RecordColumn column : RecordColumn.values()) {
      names.add(column.columnName());
    }
    names.add(Assessments.ALIVE.name());
    return names;
  }

  static boolean isKnown(String name) {
    return names().contains(name);
  }

  /** The rule of one of our columns, or of a column of the user's own. */
  static ColumnRule rule(String name) {
    if (name.equals(Assessments.ALIVE.name())) {
      return Assessments.ALIVE;
    }
    for (DerivedColumn column : DerivedColumn.values()) {
      if (column.columnName().equals(name)) {
        return ColumnRule.of(name, column.kind(), column.meaning());
      }
    }
    return RecordColumn.named(name)
        .map(RecordColumn::rule)
        .orElseGet(() -> ColumnRule.of(name, ColumnKind.LEVELS, ""));
  }
}
