package org.taketally.plan.size;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;

/**
 * What is supposed to be true of a trial that is only planned.
 *
 * @param takes take on each rootstock, averaged over everything else, above 0 and below 1
 * @param spreads how far levels of other columns differ: standard deviations, logits, 0 or more, by
 *     column ({@code cultivar}, {@code pairing}, {@code grafter}, {@code grafting_day}, {@code
 *     block}); a column not named makes no difference
 */
public record TrialTruth(Map<String, Double> takes, Map<String, Double> spreads) {

  /**
   * Spreads between cultivars, pairings, grafters, days and beds where nothing better is known:
   * common practice, no source (the demo's own are of this size).
   */
  public static final Map<String, Double> USUAL_SPREADS =
      Map.of(
          RecordColumn.CULTIVAR.columnName(),
          0.6,
          DerivedColumn.PAIRING.columnName(),
          0.2,
          RecordColumn.GRAFTER.columnName(),
          0.4,
          DerivedColumn.GRAFTING_DAY.columnName(),
          0.3,
          RecordColumn.BLOCK.columnName(),
          0.3);

  public TrialTruth {
    takes = Collections.unmodifiableMap(new LinkedHashMap<>(takes));
    spreads = Collections.unmodifiableMap(new LinkedHashMap<>(spreads));
    takes.forEach(
        (stock, take) -> {
          if (!(take > 0 && take < 1)) {
            throw new IllegalArgumentException(
                "a supposed take must lie between 0 and 1, e.g. 0.7, got %s for %s"
                    .formatted(take, stock));
          }
        });
    spreads.forEach(
        (column, sd) -> {
          if (!(sd >= 0 && sd < 10)) {
            throw new IllegalArgumentException(
                "a spread in logits must be 0 or more, e.g. 0.4, got %s for %s"
                    .formatted(sd, column));
          }
        });
  }
}
