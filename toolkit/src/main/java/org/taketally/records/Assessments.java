package org.taketally.records;

import java.util.Arrays;
import java.util.List;
import org.taketally.records.rows.SetAside;

/**
 * Repeated assessments of grafts: how many were alive at each date. Early take, final take and late
 * loss are worked out from these. Read by {@link RecordsReader#assessments}.
 */
public final class Assessments {

  private final List<History> histories;
  private final RecordsCheck check;
  private final SetAside setAside;

  Assessments(List<History> histories, RecordsCheck check, SetAside setAside) {
    this.histories = List.copyOf(histories);
    this.check = check;
    this.setAside = setAside;
  }

  /**
   * What was seen of one row of the records over time.
   *
   * @param row its row in {@link GraftRecords#frame}, from 0
   * @param record its label
   * @param grafts grafts made
   * @param days days from grafting to each look, rising; don't write to it
   * @param alive grafts alive at each look, 0 to grafts; don't write to it
   */
  public record History(int row, String record, int grafts, int[] days, int[] alive) {

    @Override
    public boolean equals(Object other) {
      return other instanceof History that
          && row == that.row
          && record.equals(that.record)
          && grafts == that.grafts
          && Arrays.equals(days, that.days)
          && Arrays.equals(alive, that.alive);
    }

    @Override
    public int hashCode() {
      return 31 * row + Arrays.hashCode(days);
    }

    @Override
    public String toString() {
      return "%s: %s alive of %d after %s days"
          .formatted(record, Arrays.toString(alive), grafts, Arrays.toString(days));
    }
  }

  /**
   * One history for each row of the records that was looked at.
   *
   * @return in the order of the rows
   */
  public List<History> histories() {
    return histories;
  }

  /**
   * What reading brought to light.
   *
   * @return problems and counts of rows; its grafts and takes are 0
   */
  public RecordsCheck check() {
    return check;
  }

  /**
   * Rows that can't be used.
   *
   * @return as typed, with reasons
   */
  public SetAside setAside() {
    return setAside;
  }
}
