package org.taketally.checks;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.plan.layout.BlockEfficiency;
import org.taketally.watch.chart.CusumWeight;

/** Efficiency of block designs; weights of a risk-adjusted CUSUM. */
final class DesignChecks implements CheckSource {

  private static final String NOT_TAKES = "an analysis of yields; Taketally analyses takes";

  @Override
  public void addTo(PublishedChecks checks) {
    addBlocks(checks);
    addWeights(checks);
  }

  private static void addBlocks(PublishedChecks checks) {
    BlockEfficiency alpha = BlockEfficiency.of(blocks("alpha_15x3x2", "block", "treatment"));
    checks
        .check("alpha_15x3x2", "efficiency as printed (upper-bound formula)")
        .ours(() -> new double[] {BlockEfficiency.mostIfResolvable(15, 2, 3)})
        .referenceReadAs("0.6363636");
    checks
        .check("alpha_15x3x2", "harmonic-mean canonical efficiency of the printed sketch")
        .ours(() -> new double[] {alpha.efficiency(), alpha.worst()});
    checks
        .check("bib_5_4", "BIB t=5 k=4 efficiency")
        .ours(
            () ->
                new double[] {
                  BlockEfficiency.of(blocks("bib_5_4", "block", "treatment")).efficiency()
                });
    checks
        .check("cochran_bib", "BIB t=13 k=4 r=4 lambda=1 efficiency")
        .ours(
            () ->
                new double[] {
                  BlockEfficiency.of(blocks("cochran_bib", "loc", "gen")).efficiency()
                });
    checks
        .check("cochran_bib", "intra-block ANOVA: gen F (12,27), p, residual MS")
        .notOffered(NOT_TAKES);
    checks
        .check("cochran_latin", "Latin square 6x6 operator F (5,20), p, residual MS")
        .notOffered(NOT_TAKES);
    checks.check("cochran_latin", "row, col F").notOffered(NOT_TAKES);
  }

  private static List<List<String>> blocks(String example, String block, String treatment) {
    Map<String, List<String>> blocks = new LinkedHashMap<>();
    CheckData.rows(example + ".csv")
        .forEach(
            row ->
                blocks
                    .computeIfAbsent(row.getField(block), key -> new ArrayList<>())
                    .add(row.getField(treatment)));
    return List.copyOf(blocks.values());
  }

  private static void addWeights(PublishedChecks checks) {
    addWeights(checks, "odds ratio 2, score 0, survived / died", 2, -3.68);
    addWeights(checks, "odds ratio 2, score 50, survived / died", 2, -3.68 + 0.077 * 50);
    addWeights(checks, "odds ratio 1/2, score 0", 0.5, -3.68);
    addWeights(checks, "odds ratio 1/2, score 50", 0.5, -3.68 + 0.077 * 50);
    addWeights(checks, "logit -3.67+0.077s, s=19, OR 2: survived / died", 2, -3.67 + 0.077 * 19)
        .readAs("-0.0945, 0.5986", "misprint in the source");
    addWeights(checks, "s=0", 2, -3.67);
    double alive = 1 - died(-3.67 + 0.077 * 19);
    checks
        .check("risk_adjusted_cusum_weights", "s=19, OR 1/2 survived")
        .ours(() -> new double[] {new CusumWeight(0.5).ofTake(alive)});
  }

  private static Check addWeights(
      PublishedChecks checks, String quantity, double oddsRatio, double logit) {
    CusumWeight weight = new CusumWeight(oddsRatio);
    double alive = 1 - died(logit);
    return checks
        .check("risk_adjusted_cusum_weights", quantity)
        .ours(() -> new double[] {weight.ofTake(alive), weight.ofFailure(alive)});
  }

  private static double died(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }
}
