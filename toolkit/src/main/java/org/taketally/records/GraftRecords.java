package org.taketally.records;

import java.util.List;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.ProblemSummary;
import org.taketally.records.rows.SetAside;
import org.taketally.terms.Problem;
import org.taketally.terms.Provenance;
import tech.tablesaw.api.Table;

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
