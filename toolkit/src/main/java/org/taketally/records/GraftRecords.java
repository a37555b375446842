package org.taketally.records;

import java.util.List;
import org.taketally.terms.Problem;
import org.taketally.terms.Provenance;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.Table;

/**
 * Graft records as read: the rows that can be used, what is wrong or worth a look, and the rows set
 * aside. Start at {@link RecordsReader}.
 */
public final class GraftRecords {

  private final Table frame;
  private final List<Problem> problems;
  private final SetAside setAside;
  private final Provenance provenance;

  GraftRecords(Table frame, List<Problem> problems, SetAside setAside, Provenance provenance) {
    this.frame = frame;
    this.problems = List.copyOf(problems);
    this.setAside = setAside;
    this.provenance = provenance;
  }

  /**
   * The usable rows: columns of {@link RecordColumn} found in the files, derived columns, and
   * others as they are. {@code grafts} and {@code takes} are whole numbers; {@code takes} is
   * missing where a row was not assessed.
   *
   * @return a table of this object's own; treat as read-only
   */
  public Table frame() {
    return frame;
  }

  /**
   * What is wrong or worth a look.
   *
   * @return in the order found
   */
  public List<Problem> problems() {
    return problems;
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
    return provenance;
  }

  /**
   * Grafts assessed.
   *
   * @return sum over rows with a known result
   */
  public long grafts() {
    IntColumn grafts = frame.intColumn("grafts");
    IntColumn takes = frame.intColumn("takes");
    long sum = 0;
    for (int row = 0; row < frame.rowCount(); row++) {
      sum += takes.isMissing(row) ? 0 : grafts.getInt(row);
    }
    return sum;
  }

  /**
   * Grafts alive when assessed.
   *
   * @return sum over rows with a known result
   */
  public long takes() {
    IntColumn takes = frame.intColumn("takes");
    long sum = 0;
    for (int row = 0; row < frame.rowCount(); row++) {
      sum += takes.isMissing(row) ? 0 : takes.getInt(row);
    }
    return sum;
  }
}
