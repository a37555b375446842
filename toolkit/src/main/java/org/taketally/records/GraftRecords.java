package org.taketally.records;

import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.ProblemSummary;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.records.rows.SetAside;
import org.taketally.terms.Problem;
import org.taketally.terms.Provenance;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;
import tech.tablesaw.selection.Selection;

/**
 * Graft records as read: the rows that can be used, what is wrong or worth a look, and the rows set
 * aside. Start at {@link RecordsReader}.
 */
public final class GraftRecords {

  private final Table frame;
  private final RecordsCheck check;
  private final SetAside setAside;

  GraftRecords(Table frame, RecordsCheck check, SetAside setAside) {
    this.frame = frame;
    this.check = check;
    this.setAside = setAside;
  }

  /**
   * Reads records: files, or all CSV and XLSX files of a folder; each worksheet of a workbook. For
   * sheets of your own, a crop's limits, or another day than today start at {@link RecordsReader}:
   * {@code RecordsReader.withDefaults().dictionary(...).read(paths)}.
   *
   * @param paths files or folders, at least one
   * @return the records
   * @throws RecordsUnreadable if a file named can't be read at all; one of a folder that doesn't
   *     hold records is left out, which is said
   */
  public static GraftRecords read(Path... paths) {
    return of(RecordsReading.defaults().read(paths));
  }

  /**
   * Records from a table, such as a frame that was joined or filtered: checked like a sheet.
   * Columns are named as those of {@link RecordColumn}; others are kept as columns of the user's
   * own, text as names and numbers as numbers.
   *
   * @param table with cultivar, rootstock, and takes (with grafts) or outcome; not changed
   * @return the records
   * @throws RecordsUnreadable if a needed column is absent or there is no row
   */
  public static GraftRecords of(Table table) {
    return of(RecordsReading.defaults().read(table));
  }

  private static GraftRecords of(RecordsReading.Result read) {
    return new GraftRecords(read.frame(), read.check(), read.setAside());
  }

  /**
   * The rows with one of some levels in a column; the problems found when reading stay with them.
   *
   * @param column name of a column of {@link #frame()}
   * @param levels levels to keep, at least one, each in the column
   * @return records of these rows
   * @throws IllegalArgumentException if there is no such column or level, naming the nearest
   */
  public GraftRecords where(String column, String... levels) {
    Set<String> wanted = levels(column, levels);
    return filtered(
        row -> wanted.contains(frame.column(column).getString(row)),
        "only rows with %s %s".formatted(column, String.join(", ", levels)));
  }

  /**
   * The rows a condition holds for, in the words of a table: {@code records.where(t ->
   * t.numberColumn("storage_days").isLessThan(8))}.
   *
   * @param condition picks rows of {@link #frame()}
   * @return records of these rows
   */
  public GraftRecords where(Function<Table, Selection> condition) {
    Selection selected = condition.apply(frame);
    return filtered(selected::contains, "only some rows");
  }

  /**
   * The rows without some levels of a column, such as one grafter; rows where the column isn't
   * recorded stay.
   *
   * @param column name of a column of {@link #frame()}
   * @param levels levels to leave out, at least one, each in the column
   * @return records of the other rows
   * @throws IllegalArgumentException if there is no such column or level, naming the nearest
   */
  public GraftRecords without(String column, String... levels) {
    Set<String> unwanted = levels(column, levels);
    return filtered(
        row -> !unwanted.contains(frame.column(column).getString(row)),
        "without rows with %s %s".formatted(column, String.join(", ", levels)));
  }

  private Set<String> levels(String column, String... levels) {
    if (!frame.containsColumn(column)) {
      throw new IllegalArgumentException(
          "no column \"%s\" in these records%s"
              .formatted(column, near(column, frame.columnNames())));
    }
    if (levels.length == 0) {
      throw new IllegalArgumentException("name at least one level of " + column);
    }
    Column<?> values = frame.column(column);
    Set<String> there = new LinkedHashSet<>();
    for (int row = 0; row < values.size(); row++) {
      there.add(values.getString(row));
    }
    for (String level : levels) {
      if (!there.contains(level)) {
        throw new IllegalArgumentException(
            "no %s \"%s\" in these records%s"
                .formatted(column, level, near(level, List.copyOf(there))));
      }
    }
    return Set.of(levels);
  }

  private static String near(String name, List<String> names) {
    return NameLikeness.nearest(name, names)
        .map(near -> "; did you mean \"" + near + "\"?")
        .orElse("");
  }

  private GraftRecords filtered(IntPredicate kept, String which) {
    Selection rows = Selection.with(IntStream.range(0, frame.rowCount()).filter(kept).toArray());
    Table left = frame.where(rows);
    return new GraftRecords(
        left,
        new FrameCounts(left).check(check, which),
        new SetAside(setAside.header(), List.of()));
  }

  /**
   * The usable rows: columns of {@link RecordColumn} found in the files, derived columns, and
   * others as they are. Names are text, days dates, numbers decimal numbers in the unit of the
   * column; {@code grafts} and {@code takes}, always there, are whole numbers, and {@code takes} is
   * missing where a row was not assessed.
   *
   * @return a table of this object's own; treat as read-only
   */
  public Table frame() {
    return frame;
  }

  /**
   * What reading brought to light, rows apart.
   *
   * @return problems, counts of rows, columns, seasons and sites
   */
  public RecordsCheck check() {
    return check;
  }

  /**
   * What is wrong or worth a look.
   *
   * @return the first thousand of each kind, file and column, in the order found
   */
  public List<Problem> problems() {
    return check.problems();
  }

  /**
   * What is wrong or worth a look, equal problems together.
   *
   * @return all problems, counted
   */
  public ProblemSummary summary() {
    return check.summary();
  }

  /**
   * Rows that can't be used.
   *
   * @return as typed, with reasons
   */
  public SetAside setAside() {
    return setAside;
  }

  /**
   * Where the records came from; rows read = kept + set aside.
   *
   * @return sources and row counts
   */
  public Provenance provenance() {
    return check.provenance();
  }

  /**
   * Columns of the user's own that group grafts treated together (lot, fridge batch, bed, tray), as
   * the dictionary's {@code batches} says.
   *
   * @return names of columns of {@link #frame()}, in the order named
   */
  public List<String> batches() {
    return check.batches();
  }

  /**
   * Grafts assessed.
   *
   * @return sum over rows with a known result
   */
  public long grafts() {
    return check.grafts();
  }

  /**
   * Grafts alive when assessed.
   *
   * @return sum over rows with a known result
   */
  public long takes() {
    return check.takes();
  }
}
