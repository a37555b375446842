package org.taketally.notebook.display;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.files.XmlText;

/**
 * A table to show: headings, what kind of value each column holds, and the rows chosen to be shown.
 *
 * @param caption what the rows are, and how many there are in all
 * @param headings one per column
 * @param kinds one per column, e.g. {@code whole number}; may be empty text
 * @param rows values as text; {@code null} stands for rows left out
 */
record Grid(String caption, List<String> headings, List<String> kinds, List<List<String>> rows) {

  private static final int LONGEST_IN_HTML = 240;
  private static final int LONGEST_IN_TEXT = 80;
  private static final int LONGEST_LINE = 32;
  private static final int TEXT_COLUMNS = 9;

  private static final String NUMBER = " class=\"tt-number\"";

  Grid {
    headings = List.copyOf(headings);
    kinds = List.copyOf(kinds);
    rows = java.util.Collections.unmodifiableList(new ArrayList<>(rows));
  }

  /** A grid without kinds. */
  static Grid of(String caption, List<String> headings, List<List<String>> rows) {
    return new Grid(caption, headings, headings.stream().map(each -> "").toList(), rows);
  }

  String html() {
    boolean[] numeric = numericColumns();
    StringBuilder html = new StringBuilder("<div class=\"tt-scroll\"><table><caption>");
    html.append(XmlText.escape(caption)).append("</caption>\n<thead><tr>");
    for (int i = 0; i < headings.size(); i++) {
      html.append("<th scope=\"col\"%s>".formatted(numeric[i] ? NUMBER : ""));
      html.append(XmlText.escape(headings.get(i)));
      if (!kinds.get(i).isEmpty()) {
        html.append("<br><small>").append(XmlText.escape(kinds.get(i))).append("</small>");
      }
      html.append("</th>");
    }
    html.append("</tr></thead>\n<tbody>\n");
    rows.forEach(row -> html.append(rowHtml(row, numeric)));
    return html.append("</tbody></table></div>\n").toString();
  }

  private String rowHtml(List<String> row, boolean[] numeric) {
    if (row == null) {
      return "<tr><td colspan=\"%d\" class=\"tt-gap\">&#8942;</td></tr>%n"
          .formatted(headings.size());
    }
    StringBuilder html = new StringBuilder("<tr>");
    for (int i = 0; i < headings.size(); i++) {
      html.append(cellHtml(row.get(i), numeric[i]));
    }
    return html.append("</tr>\n").toString();
  }

  private static String cellHtml(String value, boolean number) {
    if (value.length() > LONGEST_IN_HTML) {
      return "<td class=\"tt-long tt-wide\" title=\"%s\">%s</td>"
          .formatted(XmlText.escape(value), XmlText.escape(cut(value, LONGEST_IN_HTML)));
    }
    return "<td%s>%s</td>"
        .formatted(number ? NUMBER : breakable(value.length()), XmlText.escape(value));
  }

  private static String breakable(int length) {
    if (length > LONGEST_IN_TEXT) {
      return " class=\"tt-long tt-wide\"";
    }
    return length > LONGEST_LINE ? " class=\"tt-long\"" : "";
  }

  private boolean[] numericColumns() {
    boolean[] numeric = new boolean[headings.size()];
    for (int i = 0; i < numeric.length; i++) {
      numeric[i] = isNumeric(i);
    }
    return numeric;
  }

  /** Whether every value shown in a column is a number, or blank. */
  private boolean isNumeric(int column) {
    boolean any = false;
    for (List<String> row : rows) {
      String value = row == null ? "" : row.get(column);
      if (!value.isEmpty() && !isNumber(value)) {
        return false;
      }
      any |= !value.isEmpty();
    }
    return any;
  }

  private static boolean isNumber(String value) {
    return value.matches("[-+\u2212]?[\\d,]*\\.?\\d+(?:[eE][-+]?\\d+)?(?: %)?");
  }

  private static String cut(String value, int longest) {
    return value.length() <= longest ? value : value.substring(0, longest - 1) + "\u2026";
  }

  String text() {
    int shown = Math.min(headings.size(), TEXT_COLUMNS);
    int[] widths = IntStream.range(0, shown).map(this::width).toArray();
    boolean[] numeric = numericColumns();
    StringBuilder text = new StringBuilder(caption).append('\n');
    text.append(line(headings, widths, numeric)).append('\n');
    for (List<String> row : rows) {
      text.append(row == null ? "..." : line(row, widths, numeric)).append('\n');
    }
    if (shown < headings.size()) {
      text.append("and ").append(headings.size() - shown).append(" more columns: ");
      text.append(String.join(", ", headings.subList(shown, headings.size()))).append('\n');
    }
    return text.toString();
  }

  private int width(int column) {
    int widest = headings.get(column).length();
    for (List<String> row : rows) {
      widest = Math.max(widest, row == null ? 0 : cut(row.get(column), LONGEST_IN_TEXT).length());
    }
    return widest;
  }

  private static String line(List<String> values, int[] widths, boolean[] numeric) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < widths.length; i++) {
      String value = cut(values.get(i), LONGEST_IN_TEXT);
      String blank = " ".repeat(widths[i] - value.length());
      line.append(numeric[i] ? blank + value : value + blank).append("  ");
    }
    return line.toString().stripTrailing();
  }
}
