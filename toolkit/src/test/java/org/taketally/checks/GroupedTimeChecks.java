package org.taketally.checks;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.answers.survival.HazardRegression.Coefficient;
import org.taketally.answers.survival.HazardRegression.Exposure;
import org.taketally.answers.survival.HazardRegressionCalculator;

/** Beetles dying within 13 days of an insecticide, by concentration and sex. */
final class GroupedTimeChecks implements CheckSource {

  private static final String EXAMPLE = "beetles_grouped_time";
  private static final int DAYS = 13;

  @Override
  public void addTo(PublishedChecks checks) {
    List<Coefficient> fit =
        HazardRegressionCalculator.of(exposures(), List.of("concentration", "sex")).coefficients();
    Coefficient concentration = fit.get(0);
    Coefficient sex = fit.get(1);
    checks.check(EXAMPLE, "cloglog concentration").ours(() -> new double[] {concentration.value()});
    checks.check(EXAMPLE, "cloglog sex (1 male, 2 female)").ours(() -> new double[] {sex.value()});
    checks
        .check(EXAMPLE, "SE concentration, sex")
        .ours(() -> new double[] {concentration.standardError(), sex.standardError()})
        .withoutReference(
            "R's are from the expected information; the source's, and ours, observed");
  }

  /** Day by day: alive at its start, died in it. */
  private static List<Exposure> exposures() {
    Map<List<String>, long[]> died = new LinkedHashMap<>();
    for (NamedCsvRecord row : CheckData.rows(EXAMPLE + ".csv")) {
      died.computeIfAbsent(
                  List.of(row.getField("concentration"), row.getField("sex")),
                  key -> new long[DAYS + 1])[CheckData.whole(row, "day") - 1] =
          CheckData.whole(row, "died_that_day_or_alive_after_day13");
    }
    List<Exposure> exposures = new ArrayList<>();
    died.forEach(
        (key, counts) -> {
          double[] values = {Double.parseDouble(key.get(0)), Double.parseDouble(key.get(1))};
          long atRisk = Arrays.stream(counts).sum();
          for (int day = 0; day < DAYS; day++) {
            exposures.add(new Exposure(day, values, atRisk, counts[day]));
            atRisk -= counts[day];
          }
        });
    return exposures;
  }
}
