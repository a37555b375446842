package org.taketally.model;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A lot of grafts not yet made: what is known of it in advance. What isn't said of a varying column
 * (another day, a new hand) is a level never seen; what isn't said of an adjusted column is as
 * uncertain as it was in the records.
 *
 * <pre>{@code
 * PlannedLot lot = PlannedLot.any().with("cultivar", "Orrin").with("storage_days", 3);
 * fit.predict(lot).count(30, 0.9);
 * }</pre>
 */
public final class PlannedLot {

  private static final PlannedLot ANY = new PlannedLot(Map.of());

  private final Map<String, String> values;

  private PlannedLot(Map<String, String> values) {
    this.values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
  }

  /**
   * A lot of which nothing is known.
   *
   * @return the start of every other
   */
  public static PlannedLot any() {
    return ANY;
  }

  /**
   * With a level.
   *
   * @param column e.g. {@code cultivar}
   * @param level as in the records, or a new name where the column varies
   * @return a new lot
   */
  public PlannedLot with(String column, String level) {
    Map<String, String> more = new LinkedHashMap<>(values);
    more.put(column, Objects.requireNonNull(level, column));
    return new PlannedLot(more);
  }

  /**
   * With a number.
   *
   * @param column e.g. {@code storage_days}
   * @param value in the column's unit
   * @return a new lot
   */
  public PlannedLot with(String column, double value) {
    return with(column, Double.toString(value));
  }

  /**
   * What is known of a column.
   *
   * @param column its name
   * @return empty if nothing was said
   */
  public Optional<String> value(String column) {
    return Optional.ofNullable(values.get(column));
  }

  /**
   * All that is known.
   *
   * @return column to level or number
   */
  public Map<String, String> values() {
    return values;
  }
}
