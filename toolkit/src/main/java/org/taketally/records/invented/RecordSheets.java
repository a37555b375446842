package org.taketally.records.invented;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.taketally.records.invented.GraftRow.Graft;

/** Rows as the text of CSV files: UTF-8, comma, point, ISO dates, line feed. */
final class RecordSheets {

  private RecordSheets() {}

  /** A sheet with one row per batch: grafts and takes. */
  static String batches(List<GraftRow> rows, boolean airTemperature) {
    Map<String, Function<GraftRow, Object>> columns = shared(airTemperature);
    columns.put("assessed_date", row -> row.looks().get(2));
    columns.put("grafts", row -> row.grafts().size());
    columns.put("takes", GraftRow::takes);
    return sheet(columns, rows);
  }

  /** A sheet with one row per graft: outcome. */
  static String singles(List<GraftRow> rows, boolean airTemperature) {
    return sheet(singleColumns(airTemperature), rows);
  }

  private static Map<String, Function<GraftRow, Object>> singleColumns(boolean airTemperature) {
    Map<String, Function<GraftRow, Object>> columns = shared(airTemperature);
    columns.put("scion_diameter_mm", row -> only(row).scionMm());
    columns.put("stock_diameter_mm", row -> only(row).stockMm());
    columns.put("cambium_match", row -> only(row).cambium());
    columns.put("assessed_date", row -> row.labelLost() ? "" : row.looks().get(2));
    columns.put("outcome", RecordSheets::outcome);
    columns.put("failure_cause", GraftRow::failureCause);
    columns.put("notes", row -> row.labelLost() ? "label lost" : "");
    return columns;
  }

  /**
   * A sheet of a season that still runs: one row per graft, fridge batches, and no result of grafts
   * whose last count is still to come.
   *
   * @param batches fridge batch by record
   * @param today the last day of counting so far
   */
  static String running(List<GraftRow> rows, Map<String, String> batches, LocalDate today) {
    Map<String, Function<GraftRow, Object>> columns = new LinkedHashMap<>();
    singleColumns(true)
        .forEach(
            (name, value) -> {
              columns.put(name, value);
              if (name.equals("budwood_cut_date")) {
                columns.put("fridge_batch", row -> batches.get(row.record()));
              }
            });
    for (String known : List.of("assessed_date", "outcome", "failure_cause")) {
      String still = known.equals("outcome") ? "unassessed" : "";
      columns.computeIfPresent(
          known,
          (name, value) -> row -> row.looks().get(2).isAfter(today) ? still : value.apply(row));
    }
    return sheet(columns, rows);
  }

  /** The three dated counts of every row whose label was not lost. */
  static String assessments(List<GraftRow> rows) {
    StringBuilder text = new StringBuilder("record,assessed_date,alive\n");
    for (GraftRow row : rows) {
      for (int look = 1; look <= row.looks().size() && !row.labelLost(); look++) {
        text.append(row.record()).append(',').append(row.looks().get(look - 1));
        text.append(',').append(row.alive(look)).append('\n');
      }
    }
    return text.toString();
  }

  private static Map<String, Function<GraftRow, Object>> shared(boolean airTemperature) {
    Map<String, Function<GraftRow, Object>> columns = new LinkedHashMap<>();
    columns.put("record", GraftRow::record);
    columns.put("season", row -> row.wood().session().season());
    columns.put("site", row -> row.wood().session().site());
    columns.put("block", row -> row.wood().block());
    columns.put("grafter", row -> row.wood().session().grafter());
    columns.put("cultivar", row -> row.wood().cultivar());
    columns.put("rootstock", GraftRow::rootstock);
    columns.put("method", row -> row.wood().method());
    columns.put("graft_date", row -> row.wood().session().date());
    columns.put("budwood_cut_date", row -> row.wood().cutDate());
    columns.put("storage_temp_c", row -> row.wood().storageTempC());
    columns.put("budwood_kept", row -> row.wood().kept());
    columns.put("bud_stage", row -> row.wood().budStage());
    columns.put("stock_condition", GraftRow::condition);
    if (airTemperature) {
      columns.put("air_temp_c", row -> row.wood().session().airTempC());
    }
    return columns;
  }

  private static Graft only(GraftRow row) {
    return row.grafts().get(0);
  }

  private static String outcome(GraftRow row) {
    if (row.labelLost()) {
      return "unassessed";
    }
    return row.takes() == 1 ? "taken" : "failed";
  }

  private static String sheet(
      Map<String, Function<GraftRow, Object>> columns, List<GraftRow> rows) {
    StringBuilder text = new StringBuilder(String.join(",", columns.keySet())).append('\n');
    for (GraftRow row : rows) {
      List<String> cells =
          columns.values().stream().map(column -> column.apply(row).toString()).toList();
      text.append(String.join(",", cells)).append('\n');
    }
    return text.toString();
  }
}
