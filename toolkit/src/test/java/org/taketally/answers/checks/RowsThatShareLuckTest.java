package org.taketally.answers.checks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.checks.FitChecks.State;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.PlannedLot;
import org.taketally.model.TakeModel;
import org.taketally.terms.Provenance;

/**
 * 80 rows of 20 grafts, four a day, each row with luck of its own (SD 0.7), and the model knows.
 */
class RowsThatShareLuckTest {

  private static final int ROWS = 80;
  private static final TakeModel MODEL =
      TakeModel.ofTakes().varyBy("cultivar", "grafting_day").varyByBatchRow();

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void nothing_speaks_against_the_truth(long seed) {
    FitChecks checks =
        FitChecksCalculator.of(
            MODEL.fit(rows(new Random(seed))), AnswerOptions.defaults().withDraws(1000));
    assertThat(checks.checks())
        .extracting(FitChecks.Check::state)
        .doesNotContain(State.LOOK, State.WRONG);
  }

  /** What others say of a row holds nothing of the row itself: scatter as wide as chance gives. */
  @Test
  void rows_do_not_vouch_for_themselves() {
    double sum = 0;
    for (long seed = 1; seed <= 8; seed++) {
      FitChecks checks =
          FitChecksCalculator.of(
              MODEL.fit(rows(new Random(seed))), AnswerOptions.defaults().withDraws(1000));
      sum +=
          checks.checks().stream()
              .filter(check -> check.kind() == FitChecks.CheckKind.SCATTER_BETWEEN_CELLS)
              .mapToDouble(FitChecks.Check::value)
              .sum();
    }
    assertThat(sum / 8).isBetween(0.9, 1.1);
  }

  /** A row all failed, on a cultivar and day of which little else is known, is no surprise. */
  @Test
  void expects_of_a_lost_row_what_a_fit_without_it_says() {
    Cells cells = rows(new Random(7));
    int[] takes = cells.takes().clone();
    takes[17] = 0;
    Cells lost = cells.withTakes(takes);
    AnswerOptions options = AnswerOptions.defaults().withDraws(1000);
    FitChecks checks = FitChecksCalculator.of(MODEL.fit(lost), options);
    PlannedLot lot =
        PlannedLot.any()
            .with("cultivar", "cultivar " + lost.factor("cultivar").codes()[17])
            .with("grafting_day", "grafting_day 4");
    double again = MODEL.fit(lost.where(i -> i != 17)).predict(lot).take();
    assertThat(again).isLessThan(0.95);
    for (FitChecks.ExtremeCell cell : checks.extremes()) {
      assertThat(cell.predicted()).isCloseTo(again, within(0.02));
    }
  }

  private static Cells rows(Random random) {
    int[] rows = IntStream.range(0, ROWS).toArray();
    double[] cultivars = random.doubles(5, -1, 1).toArray();
    double[] days = random.doubles(ROWS / 4, -0.5, 0.5).toArray();
    int[] cultivar = IntStream.of(rows).map(row -> random.nextInt(cultivars.length)).toArray();
    int[] takes = new int[ROWS];
    for (int row = 0; row < ROWS; row++) {
      double eta = 0.8 + cultivars[cultivar[row]] + days[row / 4] + 0.7 * random.nextGaussian();
      double p = 1 / (1 + Math.exp(-eta));
      takes[row] = (int) random.doubles(20).filter(u -> u < p).count();
    }
    return new Cells(
        List.of(
            named("cultivar", cultivars.length, IntStream.of(cultivar)),
            named("grafting_day", days.length, IntStream.of(rows).map(row -> row / 4)),
            named(Cells.BATCH_ROW, ROWS, IntStream.of(rows))),
        List.of(),
        IntStream.of(rows).map(row -> 20).toArray(),
        takes,
        0,
        Provenance.of("made for a test", 20L * ROWS));
  }

  private static Factor named(String column, int count, IntStream codes) {
    List<String> levels = IntStream.range(0, count).mapToObj(k -> column + " " + k).toList();
    return new Factor(column, levels, codes.toArray());
  }
}
