package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.laplace.JointMode;
import org.taketally.terms.Logit;
import org.taketally.terms.Provenance;

/** Levels with nothing drawing them together, and drawn together again; worked out by hand. */
class UnpooledLevelsTest {

  /** 20 of 40 on R1 and 48 of 60 on R2: variances 1 / 10 and 1 / 9.6, difference log 4. */
  private static final TakeFit TWO_STOCKS =
      TakeModel.ofTakes()
          .adjustFor("rootstock")
          .fit(cells(new int[] {40, 60}, new int[] {20, 48}, factor("rootstock", 2, 0, 1)));

  /** Two beds of 20 a stock, further apart than chance. */
  private static final TakeFit BEDS =
      TakeModel.ofTakes()
          .compare("rootstock")
          .varyBy("bed")
          .fit(
              cells(
                  new int[] {20, 20, 20, 20, 20, 20},
                  new int[] {4, 13, 9, 17, 8, 16},
                  factor("rootstock", 2, 0, 0, 0, 1, 1, 1),
                  factor("bed", 6, 0, 1, 2, 3, 4, 5)));

  private static Cells cells(int[] grafts, int[] takes, Factor... factors) {
    return new Cells(
        List.of(factors), List.of(), grafts, takes, 0, Provenance.of("typed in", grafts.length));
  }

  private static Factor factor(String name, int size, int... codes) {
    return new Factor(
        name, IntStream.rangeClosed(1, size).mapToObj(i -> name + " " + i).toList(), codes);
  }

  /** Information is by differences of slopes, good to 5 digits. */
  @Test
  void a_fixed_column_is_tested_by_its_own_error() {
    UnpooledLevels levels = UnpooledLevels.of(TWO_STOCKS, "rootstock").orElseThrow();
    double square = Math.pow(Math.log(4), 2) / (0.1 + 1 / 9.6);
    assertThat(levels.anyDifference().chiSquare()).isCloseTo(square, within(5e-4));
    assertThat(levels.anyDifference().degrees()).isEqualTo(1);
    assertThat(levels.anySpread().chiSquare())
        .isCloseTo(square - 1 - Math.log(square), within(5e-4));
  }

  @Test
  void a_column_that_is_not_in_the_fit_has_no_levels() {
    assertThat(UnpooledLevels.of(TWO_STOCKS, "cultivar")).isEmpty();
  }

  /**
   * Cultivars with 12, 18 and 24 of 36 on six days alike, so days don't spread: logits -log 2, 0
   * and log 2, variances 1/8, 1/9 and 1/8. Squares from their weighted mean 0: 2 * 8 (log 2)^2.
   * Levels held to 10 logits are drawn in by about 0.1 %.
   */
  private static TakeFit cultivarsByDays() {
    int[] cultivar = IntStream.range(0, 18).map(i -> i % 3).toArray();
    int[] day = IntStream.range(0, 18).map(i -> i / 3).toArray();
    int[] grafts = new int[18];
    Arrays.fill(grafts, 6);
    int[] takes = IntStream.range(0, 18).map(i -> 2 + i % 3).toArray();
    return TakeModel.ofTakes()
        .varyBy("cultivar", "day")
        .fit(cells(grafts, takes, factor("cultivar", 3, cultivar), factor("day", 6, day)));
  }

  @Test
  void a_varying_column_is_tested_as_if_its_levels_were_fixed() {
    TakeFit fit = cultivarsByDays();
    assertThat(fit.varying("day").standardDeviation()).isZero();
    UnpooledLevels levels = UnpooledLevels.of(fit, "cultivar").orElseThrow();
    double square = 16 * Math.pow(Math.log(2), 2);
    assertThat(levels.anyDifference().chiSquare()).isCloseTo(square, within(0.01 * square));
    assertThat(levels.anyDifference().degrees()).isEqualTo(2);
    assertThat(UnpooledLevels.of(fit, "day")).isEmpty();
    TakeDraws draws = levels.draws(2_000, 3);
    assertThat(draws.count()).isEqualTo(2_000);
    double[] first = draws.effects("cultivar", "cultivar 1");
    double[] last = draws.effects("cultivar", "cultivar 3");
    double[] apart = IntStream.range(0, 2_000).mapToDouble(d -> last[d] - first[d]).toArray();
    double mean = Arrays.stream(apart).average().orElseThrow();
    double spread = Arrays.stream(apart).map(x -> (x - mean) * (x - mean)).sum() / 2_000;
    assertThat(mean).isCloseTo(2 * Math.log(2), within(0.05)); // error 0.5 / sqrt(2000) = 0.011
    assertThat(spread).isCloseTo(0.25, within(0.03));
    assertThat(levels.drawnTogether(draws, 4)).isSameAs(draws);
  }

  /** Covariance of base and difference is -1/10, so the base moves back by 0.1 / (0.1 + 1/9.6). */
  @Test
  void the_base_moves_along_with_the_difference_drawn_in() {
    UnpooledLevels levels = UnpooledLevels.of(TWO_STOCKS, "rootstock").orElseThrow();
    TakeDraws free = levels.draws(200, 3);
    TakeDraws together = levels.drawnTogether(free, 9);
    double moved = 0;
    for (int d = 0; d < 200; d++) {
      double move = together.beta(d)[1] - free.beta(d)[1];
      assertThat(together.beta(d)[0] - free.beta(d)[0])
          .isCloseTo(-0.1 / (0.1 + 1 / 9.6) * move, within(1e-5));
      moved += Math.abs(move);
    }
    assertThat(together.count()).isEqualTo(200);
    assertThat(moved / 200).isGreaterThan(0.03);
  }

  /** 100,000 grafts tell the difference to 0.014: it stays where each draw has it. */
  @Test
  void levels_known_well_are_hardly_drawn_in() {
    TakeFit fit =
        TakeModel.ofTakes()
            .adjustFor("rootstock")
            .fit(
                cells(
                    new int[] {40_000, 60_000},
                    new int[] {20_000, 48_000},
                    factor("rootstock", 2, 0, 1)));
    TakeDraws free = fit.draws(50, 3);
    TakeDraws together = UnpooledLevels.of(fit, "rootstock").orElseThrow().drawnTogether(free, 9);
    for (int d = 0; d < 50; d++) {
      assertThat(together.beta(d)[1]).isCloseTo(free.beta(d)[1], within(0.01));
      assertThat(free.beta(d)[1]).isCloseTo(Math.log(4), within(0.08));
    }
  }

  /**
   * Given its logit without it, a bed of n grafts with take p has its mode where it gives back w
   * tau / (1 + w tau) of what the rest moves by, w = n p (1 - p).
   */
  @Test
  void deviations_give_back_what_the_levels_over_them_move_by() {
    double tau = BEDS.point().tau[0];
    assertThat(tau).isGreaterThan(0.05);
    JointMode mode = BEDS.engine().joint(BEDS.point().tau, BEDS.beta());
    double[] beta = mode.beta();
    double[] beds = BEDS.engine().split(mode.mode)[0].clone();
    TakeDraws free = BEDS.draws(50, 3);
    TakeDraws together = UnpooledLevels.of(BEDS, "rootstock").orElseThrow().drawnTogether(free, 9);
    double moved = 0;
    for (int d = 0; d < 50; d++) {
      double base = together.beta(d)[0] - free.beta(d)[0];
      double difference = together.beta(d)[1] - free.beta(d)[1];
      for (int bed = 0; bed < 6; bed++) {
        int stock = bed / 3;
        double take = Logit.take(beta[0] + stock * beta[1] + beds[bed]);
        double w = 20 * take * (1 - take) * tau;
        assertThat(together.effects("bed", d)[bed] - free.effects("bed", d)[bed])
            .isCloseTo(-w / (1 + w) * (base + stock * difference), within(1e-6));
      }
      moved += Math.abs(difference);
    }
    assertThat(moved / 50).isGreaterThan(0.03);
  }
}
