package org.taketally.records.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The columns a dictionary may speak of by our names: those of records and of assessments. */
public final class KnownColumns {

  /** The one column assessments have and records don't. */
  public static final ColumnRule ALIVE =
      ColumnRule.of("alive", ColumnKind.COUNT, "grafts alive on assessed_date, 0 to grafts")
          .within("grafts", 0, Integer.MAX_VALUE)
          .isNeeded();

  /**
   * Columns of order books and lists of requests that records don't have: a dictionary may speak of
   * them too, and says how their sheets are written.
   */
  private static final Map<String, ColumnKind> LISTED =
      Map.of(
          "trees", ColumnKind.COUNT,
          "due", ColumnKind.DATE,
          "take", ColumnKind.NUMBER,
          "sticks", ColumnKind.COUNT,
          "needed", ColumnKind.DATE,
          "buds", ColumnKind.LEVELS,
          "on_tree", ColumnKind.COUNT);

  private KnownColumns() {}

  public static List<String> names() {
    List<String> names = new ArrayList<>();
    for (RecordColumn column : RecordColumn.values()) {
      names.add(column.columnName());
    }
    names.add(ALIVE.name());
    return names;
  }

  public static boolean isKnown(String name) {
    return names().contains(name);
  }

  /** Whether order books or lists of requests have such a column, and records don't. */
  public static boolean isListed(String name) {
    return LISTED.containsKey(name);
  }

  /** What a column holds of which a dictionary speaks. */
  public static ColumnKind kind(String name) {
    return LISTED.getOrDefault(name, rule(name).kind());
  }

  /** Whether a column is worked out from others. */
  public static boolean isWorkedOut(String name) {
    return DerivedColumn.named(name);
  }

  /** The rule of one of our columns, or of a column of the user's own. */
  public static ColumnRule rule(String name) {
    if (name.equals(ALIVE.name())) {
      return ALIVE;
    }
    for (DerivedColumn column : DerivedColumn.values()) {
      if (column.columnName().equals(name)) {
        ColumnRule rule = ColumnRule.of(name, column.kind(), column.meaning());
        return column.kind() == ColumnKind.NUMBER
            ? rule.within(column.unit(), 0, Double.POSITIVE_INFINITY)
            : rule;
      }
    }
    return RecordColumn.named(name)
        .map(RecordColumn::rule)
        .orElseGet(() -> ColumnRule.of(name, ColumnKind.LEVELS, ""));
  }
}
