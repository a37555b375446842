package org.taketally.terms;

import java.util.List;

/**
 * Where records came from.
 *
 * @param sources files or queries, in the order given
 * @param rowsRead rows read from all sources, header excluded
 * @param rowsSetAside rows that can't be used; 0 to {@code rowsRead}
 */
public record Provenance(List<String> sources, long rowsRead, long rowsSetAside) {

  public Provenance {
    sources = List.copyOf(sources);
    if (rowsRead < 0 || rowsSetAside < 0 || rowsSetAside > rowsRead) {
      throw new IllegalArgumentException(
          "rows set aside must be 0 to %d (rows read), got %d".formatted(rowsRead, rowsSetAside));
    }
  }

  /**
   * Rows kept.
   *
   * @return rows read less rows set aside
   */
  public long rowsKept() {
    return rowsRead - rowsSetAside;
  }

  /**
   * Provenance of counts typed in or simulated.
   *
   * @param what e.g. {@code simulated, seed 7}
   * @param rows number of rows it stands for
   * @return a provenance with nothing set aside
   */
  public static Provenance of(String what, long rows) {
    return new Provenance(List.of(what), rows, 0);
  }
}
