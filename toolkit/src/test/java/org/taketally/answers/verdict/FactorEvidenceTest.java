package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Simulated;
import org.taketally.answers.adjusted.MarginalTakes;
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
        FactorEvidence.byFittingAgain(main, "rootstock", OPTIONS));
  }

  private static void agree(Routes routes) {
    PairDifferences found = differences(routes.inHand());
    PairDifferences expected = differences(routes.refitted());
    double[] errors = expected.standardErrors();
    assertThat(found.standardErrors())
        .as("standard errors; 4,000 draws leave 1 %, standard deviations held the rest")
        .containsExactly(errors, within(0.06 * Arrays.stream(errors).max().orElseThrow()));
    double[] inHand = PairDifferences.means(routes.inHand().takes());
    double[] refitted = PairDifferences.means(routes.refitted().takes());
    for (int[] pair : expected.places()) {
      assertThat(inHand[pair[0]] - inHand[pair[1]])
          .isCloseTo(refitted[pair[0]] - refitted[pair[1]], within(0.1 * errors[0]));
    }
    assertThat(found.pValueOf(found.largestInErrors()))
        .isCloseTo(expected.pValueOf(expected.largestInErrors()), within(0.05));
    assertThat(routes.inHand().levels()).hasSameElementsAs(routes.refitted().levels());
  }

  private static PairDifferences differences(FactorEvidence evidence) {
    List<String> order = List.of("Halden seedling", "Pellin", "Ostrey");
    int[] place = order.stream().mapToInt(evidence.levels()::indexOf).toArray();
    double[][] takes =
        Arrays.stream(evidence.takes())
            .map(row -> Arrays.stream(place).mapToDouble(l -> row[l]).toArray())
            .toArray(double[][]::new);
    return new PairDifferences(order, takes);
  }

  @ParameterizedTest
  @CsvSource({"0.4,-0.2", "0.06,0.02", "0,0"})
  void many_cells_are_judged_as_if_fitted_again(double first, double second) {
    agree(routes(first, second, MODEL));
  }
}
