package org.taketally.cells;

import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsCheck;
import org.taketally.records.RecordsReader;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.RowVisitor;
import tech.tablesaw.api.Row;

/**
 * Makes cells from records: one per distinct pattern of the wanted columns, assessed rows only.
 *
 * <p>A column of numbers becomes a {@link Measure}, any other a {@link Factor}. Levels are in the
 * order of {@link RecordColumn#allowed()}, then in natural alphabetical order. Cells are in the
 * order in which their patterns first occur. Columns that aren't wanted don't split cells. The
 * column {@link Cells#BATCH_ROW} keeps rows of several grafts apart.
 */
public final class CellsOf {

  private CellsOf() {}

  /**
   * Cells of records already read.
   *
   * @param records the records
   * @param columns names of columns in the frame, derived ones included
   * @return the cells
   * @throws IllegalArgumentException if there is no such column, naming those there are
   */
  public static Cells records(GraftRecords records, Collection<String> columns) {
    CellCounter<Row> counter = new CellCounter<>(new FrameRows(records.frame()), distinct(columns));
    records.frame().forEach(counter::count);
    return counter.cells(records.provenance());
  }

  /**
   * Cells of files, without holding their rows: ten million rows need no more memory than their
   * distinct patterns and labels. The result is that of reading the files and then calling {@link
   * #records}.
   *
   * @param reader how to read
   * @param files CSV or XLSX files
   * @param columns names of columns, derived ones included
   * @return the cells, and what reading brought to light
   * @throws IllegalArgumentException if there is no such column, naming those there are
   * @throws org.taketally.records.problems.RecordsUnreadable if a file can't be read at all
   */
  public static CountedRecords files(
      RecordsReader reader, List<Path> files, Collection<String> columns) {
    Counting counting = new Counting(distinct(columns));
    RecordsCheck check = reader.scan(files, columns, counting);
    return new CountedRecords(counting.counter.cells(check.provenance()), check);
  }

  /**
   * As {@link #files(RecordsReader, List, Collection)}, and writes rows set aside at once.
   *
   * @param reader how to read
   * @param files CSV or XLSX files
   * @param columns names of columns, derived ones included
   * @param setAside CSV file to write, replaced if it exists; none of the files read
   * @return the cells, and what reading brought to light
   * @throws IllegalArgumentException if there is no such column, or {@code setAside} is being read
   * @throws org.taketally.records.problems.RecordsUnreadable if a file can't be read at all
   */
  public static CountedRecords files(
      RecordsReader reader, List<Path> files, Collection<String> columns, Path setAside) {
    Counting counting = new Counting(distinct(columns));
    RecordsCheck check = reader.scan(files, columns, counting, setAside);
    return new CountedRecords(counting.counter.cells(check.provenance()), check);
  }

  /** Counts what a reading hands on. */
  private static final class Counting implements RowVisitor {
    private final List<String> wanted;
    private CellCounter<RecordRow> counter;

    Counting(List<String> wanted) {
      this.wanted = wanted;
    }

    @Override
    public void begin(RecordsLayout layout) {
      counter = new CellCounter<>(new StreamedRows(layout), wanted);
    }

    @Override
    public void row(RecordRow row) {
      counter.count(row);
    }
  }

  private static List<String> distinct(Collection<String> columns) {
    return List.copyOf(new LinkedHashSet<>(columns));
  }
}
