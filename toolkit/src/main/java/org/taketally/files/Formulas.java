package org.taketally.files;

import java.util.regex.Pattern;

/**
 * Cells that a spreadsheet would take for formulas. An apostrophe before them makes them text; it
 * can be taken off again without loss.
 */
public final class Formulas {

  /** What formulas start with, in full width too, and what spreadsheets pass over before them. */
  private static final String START = "[=+\\-@\\t\\r\\n\uFF1D\uFF0B\uFF0D\uFF20]";

  private static final Pattern FORMULA = Pattern.compile("(?s)'*" + START + ".+");
  private static final Pattern MARKED = Pattern.compile("(?s)'+" + START + ".+");
  private static final Pattern NUMBER =
      Pattern.compile("[+-][0-9][0-9 .,\u00a0\u202f]*([eE][+-]?[0-9]+)? ?%?");

  private Formulas() {}

  /**
   * A cell as text that no spreadsheet works out.
   *
   * @param cell what the cell is to show
   * @return the same, with an apostrophe before it if it would be taken for a formula; numbers stay
   *     as they are
   */
  public static String neutral(String cell) {
    return FORMULA.matcher(cell).matches() && !NUMBER.matcher(cell).matches() ? "'" + cell : cell;
  }

  /**
   * The reverse of {@link #neutral}.
   *
   * @param cell what was written
   * @return what was to be shown
   */
  public static String typed(String cell) {
    boolean may = cell.length() > 2 && cell.charAt(0) == '\'';
    return may && MARKED.matcher(cell).matches() ? cell.substring(1) : cell;
  }
}
