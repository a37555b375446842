package org.taketally.records.invented;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.records.invented.Scenario.SeasonPlan;

/**
 * The invented records of the Halden Bay growers' circle, made from a known truth and a seed. The
 * same seed gives the same bytes on every machine.
 */
public final class InventedRecords {

  /** Seed of the avocado records in {@code datasets/halden-bay-avocado}. */
  public static final long AVOCADO_SEED = 8;

  /** Seed of the walnut records in {@code datasets/halden-bay-walnut}. */
  public static final long WALNUT_SEED = 2;

  private InventedRecords() {}

  /**
   * Avocado, four seasons: rootstock makes no practical difference.
   *
   * @param seed any number; {@link #AVOCADO_SEED} makes the published files
   * @return file name to content, one sheet per season and {@code assessments.csv}
   */
  public static Map<String, String> avocado(long seed) {
    return files(Scenarios.avocado(seed));
  }

  /**
   * The published avocado records as four volunteers keep them, with the faults listed in {@code
   * planted-faults.csv} of {@code datasets/halden-bay-avocado-messy}.
   *
   * @return file name to content, one sheet per season
   */
  public static Map<String, String> avocadoMessy() {
    return MessySheets.files(avocado(AVOCADO_SEED), PlantedFaults.bundled());
  }

  /**
   * Walnut, three seasons: one rootstock is bad.
   *
   * @param seed any number; {@link #WALNUT_SEED} makes the published files
   * @return file name to content, one sheet per season and {@code assessments.csv}
   */
  public static Map<String, String> walnut(long seed) {
    return files(Scenarios.walnut(seed));
  }

  /**
   * The season after the avocado records, as far as it has come: a fridge batch and a week went
   * wrong in it.
   *
   * @return file name to content: {@code grafts-2026.csv}
   */
  public static Map<String, String> runningSeason() {
    return RunningSeason.files(AVOCADO_SEED);
  }

  private static Map<String, String> files(Scenario scenario) {
    boolean airTemperature = scenario.traps().hotWeekStart() != null;
    Grafting grafting = new Grafting(scenario, Truth.bundled(scenario.folder()));
    Map<String, String> files = new LinkedHashMap<>();
    List<GraftRow> all = new ArrayList<>();
    for (SeasonPlan plan : scenario.seasons()) {
      List<GraftRow> rows = grafting.rows(plan);
      all.addAll(rows);
      files.put(
          "grafts-" + plan.name() + ".csv",
          plan.batches()
              ? RecordSheets.batches(rows, airTemperature)
              : RecordSheets.singles(rows, airTemperature));
    }
    files.put("assessments.csv", RecordSheets.assessments(all));
    return files;
  }
}
