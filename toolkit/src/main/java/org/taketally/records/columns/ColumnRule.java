package org.taketally.records.columns;

import java.util.List;

/**
 * What a column of a sheet may hold.
 *
 * @param name name in the header
 * @param kind what kind of value
 * @param meaning a phrase for people
 * @param unit unit of a number, or empty
 * @param allowed level names in order, or empty for any
 * @param closed whether other names than {@code allowed} are refused
 * @param needed whether the column must be there and filled in
 * @param lowest smallest number allowed, in {@code unit}
 * @param highest largest number allowed, in {@code unit}
 */
public record ColumnRule(
    String name,
    ColumnKind kind,
    String meaning,
    String unit,
    List<String> allowed,
    boolean closed,
    boolean needed,
    double lowest,
    double highest) {

  static ColumnRule of(String name, ColumnKind kind, String meaning) {
    double anything = Double.POSITIVE_INFINITY;
    return new ColumnRule(name, kind, meaning, "", List.of(), false, false, -anything, anything);
  }

  ColumnRule named(String aName) {
    return new ColumnRule(aName, kind, meaning, unit, allowed, closed, needed, lowest, highest);
  }

  ColumnRule isNeeded() {
    return new ColumnRule(name, kind, meaning, unit, allowed, closed, true, lowest, highest);
  }

  ColumnRule only(String... names) {
    return new ColumnRule(name, kind, meaning, unit, List.of(names), true, needed, lowest, highest);
  }

  ColumnRule suggesting(String... names) {
    return new ColumnRule(
        name, kind, meaning, unit, List.of(names), false, needed, lowest, highest);
  }

  ColumnRule within(String aUnit, double least, double most) {
    return new ColumnRule(name, kind, meaning, aUnit, allowed, closed, needed, least, most);
  }
}
