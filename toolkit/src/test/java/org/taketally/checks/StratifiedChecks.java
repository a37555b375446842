package org.taketally.checks;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.answers.counts.ChiSquare;
import org.taketally.answers.counts.PooledEstimate;
import org.taketally.answers.counts.StratifiedTable;
import org.taketally.answers.counts.Stratum;
import org.taketally.answers.counts.TakeCount;

/** Stratified two by two tables: admissions, five small strata, plum cuttings, hickory grafts. */
final class StratifiedChecks implements CheckSource {

  private static final double LEVEL = 0.95;

  @Override
  public void addTo(PublishedChecks checks) {
    addNumbered(checks, "stratified_sm5", "Breslow-Day (4 df)");
    addNumbered(checks, "ucb_statsmodels_variant", "Breslow-Day");
    addAdmissions(checks);
    addPlums(checks);
    addHickories(checks);
  }

  private static void addNumbered(PublishedChecks checks, String example, String breslowDay) {
    StratifiedTable table = numbered(example + ".csv");
    checks.check(example, "MH OR").ours(() -> new double[] {ratio(table).value()});
    checks.check(example, "RBG CI").ours(() -> limits(ratio(table)));
    checks.check(example, "CMH corrected chi2").ours(() -> new double[] {test(table).statistic()});
    checks.check(example, "CMH p").ours(() -> new double[] {test(table).pValue()});
    checks.check(example, breslowDay).ours(() -> new double[] {breslowDay(table).statistic()});
    checks.check(example, "BD p").ours(() -> new double[] {breslowDay(table).pValue()});
    Check tarone =
        checks.check(example, "Tarone").ours(() -> new double[] {tarone(table).statistic()});
    if (example.equals("ucb_statsmodels_variant")) {
      tarone.readAs(
          "18.8330",
          "the source repeats its uncorrected Breslow-Day value here, right to the 4 places asked");
    }
  }

  private static void addAdmissions(PublishedChecks checks) {
    StratifiedTable table = admissions();
    String example = "ucb_admissions";
    checks
        .check(example, "CMH corrected chi2; p")
        .ours(() -> new double[] {test(table).statistic(), test(table).pValue()});
    checks.check(example, "MH OR; RBG CI").ours(() -> withLimits(ratio(table)));
    checks
        .check(example, "Breslow-Day (5 df); p")
        .ours(() -> new double[] {breslowDay(table).statistic(), breslowDay(table).pValue()});
    checks.check(example, "Tarone").ours(() -> new double[] {tarone(table).statistic()});
  }

  private static void addPlums(PublishedChecks checks) {
    StratifiedTable table = plums();
    String example = "plum_cuttings";
    checks
        .check(example, "CMH chi2 no correction")
        .ours(() -> new double[] {table.test(false).orElseThrow().statistic()});
    checks.check(example, "CMH chi2 corrected").ours(() -> new double[] {test(table).statistic()});
    checks.check(example, "MH common OR (RBG 95% CI)").ours(() -> withLimits(ratio(table)));
  }

  private static void addHickories(PublishedChecks checks) {
    StratifiedTable table = hickories();
    checks
        .check(
            "graft_hickory_bixby_1924",
            "1924 mockernut v pignut stratified by 7 shared varieties: MH OR (CI), CMH chi2"
                + " uncorrected, p")
        .ours(
            () -> {
              ChiSquare test = table.test(false).orElseThrow();
              PooledEstimate ratio = ratio(table);
              return new double[] {
                ratio.value(),
                ratio.interval().low(),
                ratio.interval().high(),
                test.statistic(),
                test.pValue()
              };
            });
  }

  private static PooledEstimate ratio(StratifiedTable table) {
    return table.oddsRatio(LEVEL).orElseThrow();
  }

  private static ChiSquare test(StratifiedTable table) {
    return table.test(true).orElseThrow();
  }

  private static ChiSquare breslowDay(StratifiedTable table) {
    return table.agreement().breslowDay().orElseThrow();
  }

  private static ChiSquare tarone(StratifiedTable table) {
    return table.agreement().tarone().orElseThrow();
  }

  private static double[] limits(PooledEstimate estimate) {
    return new double[] {estimate.interval().low(), estimate.interval().high()};
  }

  private static double[] withLimits(PooledEstimate estimate) {
    return new double[] {estimate.value(), estimate.interval().low(), estimate.interval().high()};
  }

  /** Files with stratum, row, col, count: the first column counts as taken. */
  private static StratifiedTable numbered(String file) {
    Map<String, long[]> counts = new LinkedHashMap<>();
    for (NamedCsvRecord row : CheckData.rows(file)) {
      int place = 2 * (CheckData.whole(row, "row") - 1) + CheckData.whole(row, "col") - 1;
      counts.computeIfAbsent(row.getField("stratum"), k -> new long[4])[place] =
          CheckData.whole(row, "count");
    }
    return table(counts);
  }

  /** Admitted counts as taken; men are the first lot. */
  private static StratifiedTable admissions() {
    Map<String, long[]> counts = new LinkedHashMap<>();
    for (NamedCsvRecord row : CheckData.rows("ucb_admissions.csv")) {
      int place =
          (row.getField("Gender").equals("Male") ? 0 : 2)
              + (row.getField("Admit").equals("Admitted") ? 0 : 1);
      counts.computeIfAbsent(row.getField("Dept"), k -> new long[4])[place] =
          CheckData.whole(row, "Freq");
    }
    return table(counts);
  }

  /** Planted at once against in spring, within cuttings of each length. */
  private static StratifiedTable plums() {
    Map<String, long[]> counts = new LinkedHashMap<>();
    for (NamedCsvRecord row : CheckData.rows("plum_cuttings.csv")) {
      int place = row.getField("time").equals("now") ? 0 : 2;
      long[] four = counts.computeIfAbsent(row.getField("length"), k -> new long[4]);
      four[place] = CheckData.whole(row, "alive");
      four[place + 1] = CheckData.whole(row, "dead");
    }
    return table(counts);
  }

  /** Mockernut against pignut within each variety, 1924; varieties on one of them only drop out. */
  private static StratifiedTable hickories() {
    Map<String, TakeCount> mockernut = new LinkedHashMap<>();
    Map<String, TakeCount> pignut = new LinkedHashMap<>();
    for (NamedCsvRecord row : CheckData.rows("graft_hickory_bixby_1924.csv")) {
      TakeCount count =
          new TakeCount(CheckData.whole(row, "catches"), CheckData.whole(row, "grafts_set"));
      switch (row.getField("stock")) {
        case "mockernut" -> mockernut.put(row.getField("variety"), count);
        case "pignut" -> pignut.put(row.getField("variety"), count);
        default -> {}
      }
    }
    TakeCount none = new TakeCount(0, 0);
    return StratifiedTable.of(
        mockernut.entrySet().stream()
            .map(
                entry ->
                    new Stratum(
                        entry.getKey(),
                        entry.getValue(),
                        pignut.getOrDefault(entry.getKey(), none)))
            .toList());
  }

  private static StratifiedTable table(Map<String, long[]> counts) {
    List<Stratum> strata = new ArrayList<>();
    counts.forEach(
        (name, four) ->
            strata.add(
                new Stratum(
                    name,
                    new TakeCount(four[0], four[0] + four[1]),
                    new TakeCount(four[2], four[2] + four[3]))));
    return StratifiedTable.of(strata);
  }
}
