package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Simulated;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.verdict.FactorVerdict.Test;
import org.taketally.model.TakeModel;

/**
 * What many cells are judged by, against fitting every model again; few enough cells that refits
 * look at 128 standard deviations.
 */
class FactorEvidenceTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults().withDraws(4000);

  private static final TakeModel MODEL =
      TakeModel.ofTakes()
          .adjustFor("storage_days")
          .varyBy("cultivar", "rootstock", "pairing", "grafter", "season");

  private record Routes(FactorEvidence inHand, FactorEvidence refitted) {}

  private static Routes routes(double first, double second, TakeModel model) {
    MarginalTakes main =
        MarginalTakes.of(
            model.fit(
                Simulated.grafts(18_000, 4, 11)
                    .cultivars(0.9, 0.5, 0.2, 0, -0.2, -0.4, -0.6, -1)
                    .grafters(0.4, 0.1, -0.1, -0.4)
                    .seasons(0.2, -0.1, 0.1, -0.2)
                    .pairing("Orrin", "Pellin", -0.5)
                    .pairing("Eldra", "Ostrey", 0.4)
                    .rootstocks(first, second, 0)
                    .perDay(-0.05)
                    .cells()),
            OPTIONS);
    return new Routes(
        FactorEvidence.fromFitInHand(main, "rootstock", OPTIONS),
        FactorEvidence.byRefits(main, "rootstock", OPTIONS));
  }

  private static void agree(Routes routes) {
    PairDifferences found = differences(routes.inHand());
    PairDifferences expected = differences(routes.refitted());
    double[] errors = expected.standardErrors();
    assertThat(found.standardErrors())
        .as("standard errors; 4,000 draws leave 1 %, standard deviations held the rest")
        .containsExactly(errors, within(0.06 * Arrays.stream(errors).max().orElseThrow()));
    double[] inHand = PairDifferences.means(routes.inHand().free());
    double[] refitted = PairDifferences.means(routes.refitted().free());
    for (int[] pair : expected.places()) {
      assertThat(inHand[pair[0]] - inHand[pair[1]])
          .isCloseTo(refitted[pair[0]] - refitted[pair[1]], within(0.1 * errors[0]));
    }
    Test wald = routes.inHand().tests().get(0);
    Test likelihood = routes.refitted().tests().get(0);
    assertThat(wald.degrees()).isEqualTo(likelihood.degrees());
    alike(wald, likelihood);
    assertThat(routes.inHand().levels()).hasSameElementsAs(routes.refitted().levels());
  }

  /**
   * Near equality the tests are the same to first order. Far from it they part, the pairings taking
   * over much of the difference where the column is left out, and only the conclusion must agree.
   */
  private static void alike(Test inHand, Test refitted) {
    if (refitted.pValue() < 1e-3) {
      assertThat(inHand.pValue()).isLessThan(1e-3);
    } else {
      assertThat(inHand.statistic())
          .isCloseTo(refitted.statistic(), within(0.2 + 0.1 * refitted.statistic()));
      assertThat(inHand.pValue()).isCloseTo(refitted.pValue(), within(0.03));
    }
  }

  private static PairDifferences differences(FactorEvidence evidence) {
    List<String> order = List.of("Halden seedling", "Pellin", "Ostrey");
    int[] place = order.stream().mapToInt(evidence.levels()::indexOf).toArray();
    double[][] takes =
        Arrays.stream(evidence.free())
            .map(row -> Arrays.stream(place).mapToDouble(l -> row[l]).toArray())
            .toArray(double[][]::new);
    return new PairDifferences(order, takes, 0.95);
  }

  @ParameterizedTest
  @CsvSource({"0.4,-0.2", "0.06,0.02", "0,0"})
  void many_cells_are_judged_as_if_fitted_again(double first, double second) {
    Routes routes = routes(first, second, MODEL);
    agree(routes);
    alike(routes.inHand().tests().get(1), routes.refitted().tests().get(1));
  }

  @ParameterizedTest
  @CsvSource({"0.4,-0.2", "0.06,0.02"})
  void fixed_levels_are_judged_by_their_covariance(double first, double second) {
    Routes routes = routes(first, second, MODEL.without("rootstock").adjustFor("rootstock"));
    agree(routes);
    double[] errors = differences(routes.refitted()).standardErrors();
    double[] inHand = gaps(routes.inHand());
    double[] refitted = gaps(routes.refitted());
    double largest = StatUtils.max(errors);
    assertThat(StatUtils.mean(inHand))
        .as("largest gap, levels drawn toward each other; free ones give %s", freeGap(routes))
        .isCloseTo(StatUtils.mean(refitted), within(0.15 * largest))
        .isLessThan(freeGap(routes));
    assertThat(StatUtils.percentile(inHand, 95))
        .isCloseTo(StatUtils.percentile(refitted, 95), within(0.15 * largest));
    assertThat(routes.inHand().standardDeviation().value())
        .isCloseTo(
            routes.refitted().standardDeviation().value(),
            within(0.35 * routes.refitted().standardDeviation().value()));
  }

  private static double freeGap(Routes routes) {
    return StatUtils.mean(gaps(routes.inHand().free()));
  }

  private static double[] gaps(FactorEvidence evidence) {
    return gaps(evidence.drawn());
  }

  private static double[] gaps(double[][] takes) {
    return Arrays.stream(takes).mapToDouble(r -> StatUtils.max(r) - StatUtils.min(r)).toArray();
  }
}
