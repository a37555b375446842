package org.taketally.wording;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.TakeCount;
import org.taketally.files.ControlSigns;
import org.taketally.files.Csv;
import org.taketally.files.XmlText;
import org.taketally.terms.Interval;
import org.taketally.wording.AnswerColumn.Kind;
import tech.tablesaw.api.BooleanColumn;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.LongColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** The one place where answer tables become text, HTML, CSV, JSON and Tablesaw. */
final class TableWriter {

  private TableWriter() {}

  /** The values a thing stands for in a row, in the order of their columns. */
  static List<Object> plain(Object value) {
    if (value instanceof Estimate estimate) {
      return plain(estimate.value(), estimate.low(), estimate.high());
    }
    if (value instanceof Interval interval) {
      return plain(interval.low(), interval.high());
    }
    if (value instanceof TakeCount count) {
      return plain(count.grafts(), count.takes(), count.rate());
    }
    return Collections.singletonList(single(value));
  }

  private static List<Object> plain(Object... values) {
    List<Object> singles = new ArrayList<>();
    for (Object value : values) {
      singles.add(single(value));
    }
    return singles;
  }

  /** Whole numbers become Long, NaN and infinite become null. */
  private static Object single(Object value) {
    if (value instanceof Integer whole) {
      return whole.longValue();
    }
    return value instanceof Double number && !Double.isFinite(number) ? null : value;
  }

  static void requireFits(AnswerColumn column, Object value) {
    boolean fits =
        value == null
            || switch (column.kind()) {
              case NAME, WORDS -> value instanceof String;
              case COUNT -> value instanceof Long;
              case FLAG -> value instanceof Boolean;
              case TAKE, SHARE, POINTS, NUMBER -> value instanceof Double;
            };
    if (!fits) {
      throw new IllegalArgumentException(
          "column %s holds %s, got %s (%s)"
              .formatted(
                  column.columnName(), column.kind(), value, value.getClass().getSimpleName()));
    }
  }

  static String show(AnswerColumn column, Object value) {
    if (value == null) {
      return "";
    }
    return switch (column.kind()) {
      case NAME, WORDS -> value.toString();
      case COUNT -> Words.count((Long) value);
      case FLAG -> (Boolean) value ? "yes" : "no";
      case TAKE, SHARE -> Words.percent((Double) value);
      case POINTS -> String.format(Locale.ROOT, "%+.1f", 100 * (Double) value);
      case NUMBER -> number((Double) value);
    };
  }

  private static String number(double value) {
    if (value == Math.rint(value) && Math.abs(value) < 1e7) {
      return String.format(Locale.ROOT, "%d", (long) value);
    }
    return String.format(Locale.ROOT, Math.abs(value) < 0.001 ? "%.1e" : "%.3f", value);
  }

  private static boolean leftAligned(AnswerColumn column) {
    return column.kind() == Kind.NAME || column.kind() == Kind.WORDS;
  }

  static String text(TableParts table) {
    List<List<String>> lines = new ArrayList<>();
    lines.add(table.columns().stream().map(TableWriter::heading).toList());
    for (List<Object> row : table.rows()) {
      lines.add(shown(table, row));
    }
    int[] widths =
        IntStream.range(0, table.columns().size())
            .map(i -> lines.stream().mapToInt(line -> width(line.get(i))).max().orElse(0))
            .toArray();
    StringBuilder text = new StringBuilder(table.caption()).append('\n');
    for (List<String> line : lines) {
      StringBuilder row = new StringBuilder();
      for (int i = 0; i < widths.length; i++) {
        String gap = " ".repeat(widths[i] - width(line.get(i)));
        boolean left = leftAligned(table.columns().get(i));
        row.append(i == 0 ? "" : "  ");
        row.append(left ? line.get(i) + gap : gap + line.get(i));
      }
      text.append(row.toString().stripTrailing()).append('\n');
    }
    return text.toString();
  }

  private static int width(String cell) {
    return cell.codePointCount(0, cell.length());
  }

  private static List<String> shown(TableParts table, List<Object> row) {
    return IntStream.range(0, row.size())
        .mapToObj(i -> ControlSigns.neutral(show(table.columns().get(i), row.get(i))))
        .toList();
  }

  static String html(TableParts table) {
    StringBuilder html = new StringBuilder("<table class=\"answer\">\n<caption>");
    html.append(XmlText.inElement(table.caption())).append("</caption>\n<thead><tr>");
    for (AnswerColumn column : table.columns()) {
      html.append("<th scope=\"col\" title=\"")
          .append(XmlText.inElement(column.meaning()))
          .append("\">");
      html.append(XmlText.inElement(heading(column))).append("</th>");
    }
    html.append("</tr></thead>\n<tbody>\n");
    for (List<Object> row : table.rows()) {
      html.append("<tr>");
      for (int i = 0; i < row.size(); i++) {
        boolean left = leftAligned(table.columns().get(i));
        html.append(left ? "<td>" : "<td style=\"text-align:right\">");
        html.append(XmlText.inElement(show(table.columns().get(i), row.get(i)))).append("</td>");
      }
      html.append("</tr>\n");
    }
    return html.append("</tbody>\n</table>\n").toString();
  }

  private static String heading(AnswerColumn column) {
    return column.kind() == Kind.POINTS ? column.heading() + " (points)" : column.heading();
  }

  static String csv(TableParts table) {
    List<List<String>> lines = new ArrayList<>();
    lines.add(table.columns().stream().map(AnswerColumn::columnName).toList());
    for (List<Object> row : table.rows()) {
      lines.add(row.stream().map(value -> value == null ? "" : value.toString()).toList());
    }
    return Csv.text(lines);
  }

  static JsonArray json(TableParts table) {
    JsonArray array = new JsonArray();
    for (List<Object> row : table.rows()) {
      JsonObject object = new JsonObject();
      for (int i = 0; i < row.size(); i++) {
        object.add(table.columns().get(i).key(), jsonValue(row.get(i)));
      }
      array.add(object);
    }
    return array;
  }

  private static JsonElement jsonValue(Object value) {
    if (value == null) {
      return JsonNull.INSTANCE;
    }
    if (value instanceof Boolean flag) {
      return new JsonPrimitive(flag);
    }
    return value instanceof Number number
        ? new JsonPrimitive(number)
        : new JsonPrimitive(value.toString());
  }

  static Table tablesaw(TableParts table) {
    Table result = Table.create(table.caption());
    for (int i = 0; i < table.columns().size(); i++) {
      Column<?> column = emptyColumn(table.columns().get(i));
      for (List<Object> row : table.rows()) {
        if (row.get(i) == null) {
          column.appendMissing();
        } else {
          column.appendObj(row.get(i));
        }
      }
      result.addColumns(column);
    }
    return result;
  }

  private static Column<?> emptyColumn(AnswerColumn column) {
    return switch (column.kind()) {
      case NAME, WORDS -> StringColumn.create(column.columnName());
      case COUNT -> LongColumn.create(column.columnName());
      case FLAG -> BooleanColumn.create(column.columnName());
      case TAKE, SHARE, POINTS, NUMBER -> DoubleColumn.create(column.columnName());
    };
  }
}
