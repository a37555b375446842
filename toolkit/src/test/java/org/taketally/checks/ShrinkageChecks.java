package org.taketally.checks;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import org.taketally.answers.counts.BetaRate;
import org.taketally.answers.counts.Shrinkage;
import org.taketally.answers.counts.TakeCount;

/** Batting averages shrunken by hand; twelve hospitals each on its own. */
final class ShrinkageChecks implements CheckSource {

  private static final double MONTE_CARLO = 4e-4;

  @Override
  public void addTo(PublishedChecks checks) {
    addBatting(checks);
    addHospitals(checks);
  }

  private static void addBatting(PublishedChecks checks) {
    String example = "baseball1970";
    List<NamedCsvRecord> rows = CheckData.rows(example + ".csv");
    List<TakeCount> lots =
        rows.stream()
            .map(
                row -> new TakeCount(CheckData.whole(row, "hits"), CheckData.whole(row, "at_bats")))
            .toList();
    Shrinkage drawn = Shrinkage.of(lots);
    checks.check(example, "shrinkage factor c").ours(() -> new double[] {drawn.kept()});
    checks.check(example, "grand mean").ours(() -> new double[] {drawn.mean()});
    checks
        .check(example, "JS Clemente (.212*.400+.788*.265)")
        .ours(() -> new double[] {drawn.takes().get(0)});
    checks
        .check(example, "arcsine scale x for Clemente")
        .ours(() -> new double[] {Shrinkage.evened(lots.get(0))});
    String rest = "R on the same file; its line for Williams is not the one used then (see above)";
    List<Double> counted = lots.stream().map(TakeCount::rate).toList();
    checks
        .check(example, "total squared error raw")
        .ours(() -> new double[] {squaredError(rows, counted)})
        .readAs("0.0857", rest)
        .referenceReadAs("");
    checks
        .check(example, "total squared error JS")
        .ours(() -> new double[] {squaredError(rows, drawn.takes())})
        .readAs("0.0268", rest)
        .referenceReadAs("");
  }

  /** Against what each player did in the rest of the season. */
  private static double squaredError(List<NamedCsvRecord> rows, List<Double> guesses) {
    double sum = 0;
    for (int i = 0; i < rows.size(); i++) {
      double truth =
          (double) CheckData.whole(rows.get(i), "remaining_hits")
              / CheckData.whole(rows.get(i), "remaining_at_bats");
      sum += (guesses.get(i) - truth) * (guesses.get(i) - truth);
    }
    return sum;
  }

  private static void addHospitals(PublishedChecks checks) {
    List<NamedCsvRecord> rows = CheckData.rows("surgical.csv");
    for (int i = 0; i < rows.size(); i++) {
      BetaRate rate =
          new BetaRate(
              new TakeCount(
                  CheckData.whole(rows.get(i), "deaths"),
                  CheckData.whole(rows.get(i), "operations")));
      checks
          .check("surgical", "fixed p[%d] mean (SD)".formatted(i + 1))
          .ours(() -> new double[] {rate.mean(), rate.standardDeviation()})
          .within(MONTE_CARLO, "Monte Carlo error of the published run; ours is exact");
    }
  }
}
