package org.taketally.answers;

/**
 * One column as it stands for some grafts: a level, or a number.
 *
 * @param column of the records
 * @param level the level, grafters by letter unless names were asked for; empty for a number
 * @param number the number, in the column's unit; NaN for a level
 */
public record Condition(String column, String level, double number) {

  /**
   * A column at a level.
   *
   * @param column of the records
   * @param level its level
   * @return without a number
   */
  public static Condition level(String column, String level) {
    return new Condition(column, level, Double.NaN);
  }

  /**
   * A column of numbers at a value.
   *
   * @param column of the records
   * @param number in the column's unit
   * @return without a level
   */
  public static Condition number(String column, double number) {
    return new Condition(column, "", number);
  }

  /**
   * Whether it is a number.
   *
   * @return false for a level
   */
  public boolean isNumber() {
    return level.isEmpty();
  }
}
