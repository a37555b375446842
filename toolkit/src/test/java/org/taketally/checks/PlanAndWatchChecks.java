package org.taketally.checks;

import java.util.regex.Pattern;
import org.taketally.plan.order.BetaBinomialTakes;
import org.taketally.plan.order.GraftsNeeded;
import org.taketally.watch.chart.BernoulliCusum;
import org.taketally.watch.chart.NormalCusum;
import org.taketally.watch.chart.NormalEwma;

/** Run lengths of control charts, and grafts for an order: every row of plan_and_watch.csv. */
final class PlanAndWatchChecks implements CheckSource {

  private static final Pattern NUMBER = Pattern.compile("\\d+(\\.\\d+)?");

  @Override
  public void addTo(PublishedChecks checks) {
    for (PublishedAnswer answer : PublishedAnswer.planAndWatch()) {
      double[] n = numbers(answer.quantity());
      checks
          .check(answer.example(), answer.quantity())
          .ours(() -> new double[] {ours(answer.example(), n)});
    }
  }

  private static double ours(String example, double[] n) {
    return switch (example) {
      case "normal_cusum" -> new NormalCusum(n[0], n[1]).averageRunLength(n[2]);
      case "normal_cusum_two" -> new NormalCusum(n[0], n[1]).averageRunLengthTwoSided(n[2]);
      case "normal_ewma" -> new NormalEwma(n[0], n[1]).averageRunLength(n[2]);
      // "+2, -1, floor 0, start 0, alarm at 8, chance 0.1"
      case "bernoulli_cusum" -> new BernoulliCusum((int) n[0], (int) n[4]).averageRunLength(n[5]);
      // "20 take with chance 0.8; take 0.5, correlation 0"
      case "grafts_for_order" ->
          GraftsNeeded.fewest(new BetaBinomialTakes(n[2], n[3]), (int) n[0], n[1]).orElse(-1);
      default -> throw new IllegalStateException("no computation for " + example);
    };
  }

  private static double[] numbers(String quantity) {
    return NUMBER
        .matcher(quantity)
        .results()
        .mapToDouble(match -> Double.parseDouble(match.group()))
        .toArray();
  }
}
