package org.taketally.records.rows;

import java.util.OptionalDouble;
import org.taketally.records.columns.ColumnKind;

/** What is known of one column over all files read together. */
public final class ColumnTrack {

  private final String name;
  private final ColumnKind settled;
  private final Levels levels = new Levels();
  private final boolean wanted;
  private boolean present;
  private long recorded;
  private boolean mayBeNumber;
  private String notANumber;

  /**
   * A column.
   *
   * @param name our name
   * @param settled its kind, or null if its values decide between names and numbers
   * @param wanted whether its values go anywhere beyond the checks
   */
  ColumnTrack(String name, ColumnKind settled, boolean wanted) {
    this.name = name;
    this.settled = settled;
    this.wanted = wanted;
    this.mayBeNumber = settled == null;
  }

  public String name() {
    return name;
  }

  /** Whether it is a column of the user's own. */
  public boolean own() {
    return settled == null;
  }

  public boolean wanted() {
    return wanted;
  }

  public Levels levels() {
    return levels;
  }

  /** The kind; of a column of the user's own it is certain only after the last row. */
  public ColumnKind kind() {
    if (settled != null) {
      return settled;
    }
    return mayBeNumber && recorded > 0 ? ColumnKind.NUMBER : ColumnKind.LEVELS;
  }

  boolean mayBeNumber() {
    return mayBeNumber;
  }

  /** Takes note whether a value reads as a number. */
  void meet(String value, OptionalDouble number) {
    if (mayBeNumber && number.isEmpty()) {
      mayBeNumber = false;
      notANumber = value;
    }
  }

  /** The value that settled that this column holds names; null if all were numbers. */
  public String notANumber() {
    return notANumber;
  }

  public void markPresent() {
    present = true;
  }

  public boolean present() {
    return present;
  }

  public void countRecorded() {
    recorded++;
  }

  public long recorded() {
    return recorded;
  }

  /** The number a level of a column of numbers stands for. */
  double number(int code) {
    return Double.parseDouble(levels.name(code).replace(',', '.'));
  }
}
