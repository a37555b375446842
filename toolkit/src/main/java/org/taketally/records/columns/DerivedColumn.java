package org.taketally.records.columns;

import java.util.Locale;

/** Columns worked out from others; they join the frame where their sources are recorded. */
public enum DerivedColumn {
  /** Days in storage. */
  STORAGE_DAYS(ColumnKind.NUMBER, "days", "graft_date less budwood_cut_date"),
  /** Days until the takes were counted. */
  DAYS_TO_ASSESSMENT(ColumnKind.NUMBER, "days", "assessed_date less graft_date"),
  /** How unlike the thicknesses are. */
  DIAMETER_MISMATCH(
      ColumnKind.NUMBER, "mm", "difference of stock_diameter_mm and scion_diameter_mm, 0 or more"),
  /** Cultivar on rootstock. */
  PAIRING(ColumnKind.LEVELS, "", "cultivar × rootstock"),
  /** Site and day. */
  GRAFTING_DAY(
      ColumnKind.LEVELS,
      "",
      "site (if there is a column for it) and graft_date: what was grafted in one go"),
  /** First try or not. */
  GRAFT_ATTEMPT(
      ColumnKind.LEVELS,
      "",
      "first, or again where replaces names the failed graft it was made in place of");

  /** {@link #GRAFT_ATTEMPT} of a graft on a stock that had none before. */
  public static final String FIRST = "first";

  /** {@link #GRAFT_ATTEMPT} of a graft made in place of one that failed. */
  public static final String AGAIN = "again";

  private final String columnName = name().toLowerCase(Locale.ROOT);
  private final ColumnKind kind;
  private final String unit;
  private final String meaning;

  DerivedColumn(ColumnKind kind, String unit, String meaning) {
    this.kind = kind;
    this.unit = unit;
    this.meaning = meaning;
  }

  /**
   * The name in the frame, lower case.
   *
   * @return e.g. {@code storage_days}
   */
  public String columnName() {
    return columnName;
  }

  /**
   * What kind of value it holds.
   *
   * @return the kind
   */
  public ColumnKind kind() {
    return kind;
  }

  /**
   * Unit of a number.
   *
   * @return e.g. {@code days}; empty where there is none
   */
  public String unit() {
    return unit;
  }

  /**
   * How it is worked out.
   *
   * @return a phrase without a full stop
   */
  public String meaning() {
    return meaning;
  }

  /**
   * Whether a column is worked out from others.
   *
   * @param name as in a header
   * @return true for one of these
   */
  public static boolean named(String name) {
    for (DerivedColumn column : values()) {
      if (column.columnName().equals(name)) {
        return true;
      }
    }
    return false;
  }
}
