package org.taketally.wording;

import com.google.gson.JsonArray;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tech.tablesaw.api.Table;

/**
 * A small table of an answer. Text, HTML, CSV, JSON and Tablesaw are all made from it, here only.
 *
 * @param name short name for files, lower case with hyphens, e.g. {@code rootstock-pairs}
 * @param caption what the rows are
 * @param columns the columns
 * @param rows values in column order: String, Long, Double, Boolean or null where there is none
 */
public record AnswerTable(
    String name, String caption, List<AnswerColumn> columns, List<List<Object>> rows)
    implements TableParts {

  public AnswerTable {
    columns = List.copyOf(columns);
    rows = rows.stream().map(row -> Collections.unmodifiableList(new ArrayList<>(row))).toList();
    for (List<Object> row : rows) {
      if (row.size() != columns.size()) {
        throw new IllegalArgumentException(
            "table %s has %d columns, got a row of %d".formatted(name, columns.size(), row.size()));
      }
      for (int i = 0; i < row.size(); i++) {
        TableWriter.requireFits(columns.get(i), row.get(i));
      }
    }
  }

  /**
   * A builder of rows.
   *
   * @param name short name for files
   * @param caption what the rows are
   * @param columns the columns
   * @return a builder without rows
   */
  public static Builder of(String name, String caption, AnswerColumn... columns) {
    return new Builder(name, caption, List.of(columns));
  }

  /** Collects rows. */
  public static final class Builder {
    private final String name;
    private final String caption;
    private final List<AnswerColumn> columns;
    private final List<List<Object>> rows = new ArrayList<>();

    private Builder(String name, String caption, List<AnswerColumn> columns) {
      this.name = name;
      this.caption = caption;
      this.columns = columns;
    }

    /**
     * Adds a row.
     *
     * @param values in column order; whole numbers of any type become Long, NaN becomes null; an
     *     estimate stands for value, low and high, an interval for low and high, a count for
     *     grafts, takes and rate
     * @return this builder
     */
    public Builder row(Object... values) {
      List<Object> row = new ArrayList<>();
      for (Object value : values) {
        row.addAll(TableWriter.plain(value));
      }
      rows.add(row);
      return this;
    }

    /**
     * The table.
     *
     * @return all rows so far
     */
    public AnswerTable build() {
      return new AnswerTable(name, caption, columns, rows);
    }
  }

  /**
   * For showing: without columns of names that say the same in each of several rows; what they say
   * joins the caption, unless it stands there.
   *
   * @return the table with fewer columns, or as it is
   */
  public AnswerTable withoutRepeats() {
    List<Integer> telling =
        IntStream.range(0, columns.size()).filter(i -> !repeats(i)).boxed().toList();
    return telling.size() == columns.size() || telling.isEmpty()
        ? this
        : new AnswerTable(
            name,
            captionWith(repeated()),
            telling.stream().map(columns::get).toList(),
            rows.stream().map(row -> picked(row, telling)).toList());
  }

  /** What columns of names say that say the same in each row. */
  private List<String> repeated() {
    return IntStream.range(0, columns.size())
        .filter(this::repeats)
        .filter(i -> rows.get(0).get(i) instanceof String)
        .filter(i -> !words(caption).contains(words(rows.get(0).get(i))))
        .mapToObj(i -> columns.get(i).heading() + ": " + rows.get(0).get(i))
        .toList();
  }

  /** In small letters, names of columns as words. */
  private static String words(Object text) {
    return text.toString().replace('_', ' ').toLowerCase(Locale.ROOT);
  }

  private String captionWith(List<String> repeated) {
    return repeated.isEmpty() ? caption : caption + " (" + String.join("; ", repeated) + ")";
  }

  private static List<Object> picked(List<Object> row, List<Integer> columns) {
    return columns.stream().map(row::get).collect(Collectors.toCollection(ArrayList::new));
  }

  private boolean repeats(int column) {
    return columns.get(column).kind() == AnswerColumn.Kind.NAME
        && rows.size() > 1
        && rows.stream().map(row -> row.get(column)).distinct().count() == 1;
  }

  /**
   * The name as a key in JSON.
   *
   * @return camel case, e.g. {@code rootstockPairs}
   */
  public String key() {
    return AnswerColumn.camelCase(name.replace('-', '_'));
  }

  /**
   * As text: aligned columns under the caption.
   *
   * @return lines ending in a line feed
   */
  public String toText() {
    return TableWriter.text(this);
  }

  /**
   * As an HTML table, user text escaped.
   *
   * @return a {@code <table>} element with caption and header cells
   */
  public String toHtml() {
    return TableWriter.html(this);
  }

  /**
   * As CSV with a header of column names, numbers in full precision.
   *
   * @return lines ending in a line feed
   */
  public String toCsv() {
    return TableWriter.csv(this);
  }

  /**
   * As JSON: one object per row, keys in camel case, null where there is no value.
   *
   * @return an array of objects
   */
  public JsonArray toJson() {
    return TableWriter.json(this);
  }

  /**
   * As a Tablesaw table.
   *
   * @return columns named as in CSV
   */
  public Table toTablesaw() {
    return TableWriter.tablesaw(this);
  }
}
