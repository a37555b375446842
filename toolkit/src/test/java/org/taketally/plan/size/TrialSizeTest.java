package org.taketally.plan.size;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.stat.inference.TTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.plan.size.TrialSize.Claim;
import org.taketally.plan.size.TrialSize.Reason;
import org.taketally.wording.TrialSizeWords;

/** The formulas for single grafts against published values are in PublishedChecksTest. */
class TrialSizeTest {

  private static TrialSize single(double first, double second) {
    return TrialSize.of(TrialQuestion.of(first, second), TrialUnits.singleGrafts());
  }

  /** Beds whose grafts have this correlation about a take of 80 %. */
  private static TrialUnits beds(int size, double correlation) {
    return TrialUnits.beds(size, Math.sqrt(correlation * 0.8 * 0.2));
  }

  /** By the textbook formula, two-sided 2 % as the verdict has it, chance 0.8; worked out apart. */
  @ParameterizedTest
  @CsvSource({"0.80, 0.75, 1399", "0.80, 0.70, 376", "0.80, 0.60, 105", "0.60, 0.40, 125"})
  void grafts_for_a_difference(double first, double second, int grafts) {
    TrialSize.Need need = single(first, second).difference();
    assertThat(need.firstGrafts().orElseThrow()).isEqualTo(grafts);
    assertThat(need.secondGrafts().orElseThrow()).isEqualTo(grafts);
  }

  /** Two one-sided 3 % tests, no true difference, chance 0.8; worked out apart. */
  @ParameterizedTest
  @CsvSource({
    "0.9, 0.05, 721", "0.8, 0.05, 1281", "0.6, 0.05, 1921",
    "0.9, 0.10, 181", "0.8, 0.10, 321", "0.6, 0.10, 481",
    "0.9, 0.15, 81", "0.8, 0.15, 143", "0.6, 0.15, 214"
  })
  void grafts_for_equivalence(double take, double margin, int grafts) {
    TrialSize size =
        TrialSize.of(TrialQuestion.of(take, take).withMargin(margin), TrialUnits.singleGrafts());
    assertThat(size.equivalence().firstGrafts().orElseThrow()).isEqualTo(grafts);
    assertThat(size.difference().reason()).isEqualTo(Reason.NOT_TRUE);
  }

  @Test
  void unequal_stocks_cost_grafts() {
    TrialSize uneven =
        TrialSize.of(TrialQuestion.of(0.8, 0.7).withSecondPerFirst(3), TrialUnits.singleGrafts());
    int first = uneven.difference().firstGrafts().orElseThrow();
    int second = uneven.difference().secondGrafts().orElseThrow();
    assertThat(second).isBetween(3 * first - 2, 3 * first);
    assertThat(first + second).isGreaterThan(2 * 376);
    // equivalence: n (1 + 1/3) / 2 of the first, the variance being the same
    assertThat(uneven.equivalence().firstGrafts().orElseThrow())
        .isBetween((int) (321 * 2.0 / 3) - 1, (int) (321 * 2.0 / 3) + 1);
  }

  /** Variance p (1 - p) - V a graft: 0.16 - 0.0144 of a stock that takes 80 %. */
  @Test
  void a_spread_that_both_stocks_share_saves_grafts() {
    TrialQuestion shared = TrialQuestion.of(0.8, 0.7).withSharedSpread(0.12);
    TrialSize size = TrialSize.of(shared, TrialUnits.singleGrafts());
    assertThat(size.equivalence().firstGrafts().orElseThrow())
        .isEqualTo((int) Math.ceil(320.8 * (0.16 - 0.0144) / 0.16));
    assertThat(size.difference().firstGrafts().orElseThrow())
        .isEqualTo((int) Math.ceil(375.2 * (0.37 - 0.0288) / 0.37));
    assertThat(size.chance(320, Claim.EQUIVALENCE)).isGreaterThan(0.83);

    TrialUnits beds = beds(20, 0.05);
    assertThat(TrialSize.of(shared, beds).difference().firstUnits().orElseThrow())
        .isBetween(
            2, TrialSize.of(TrialQuestion.of(0.8, 0.7), beds).difference().firstUnits().getAsInt());
    assertThatThrownBy(() -> shared.withSharedSpread(0.5))
        .hasMessageContaining("0 to 0.28 about takes of 0.8 and 0.7")
        .hasMessageContaining("got 0.5");
  }

  @Test
  void off_types_hide_a_difference() {
    TrialSize mixed =
        TrialSize.of(TrialQuestion.of(0.8, 0.6).withOffType(0.2), TrialUnits.singleGrafts());
    assertThat(mixed.difference().firstGrafts())
        .isEqualTo(single(0.8, 0.64).difference().firstGrafts());
    assertThat(mixed.difference().firstGrafts().orElseThrow()).isGreaterThan(105);
  }

  /** Reference: R 4.2.2 power.t.test(n, delta = 1, sd = 1, strict = TRUE), 8 digits. */
  @ParameterizedTest
  @CsvSource({"2, 0.09520176", "3, 0.15879087", "5, 0.28629549", "10, 0.56200665"})
  void power_with_few_units_is_that_of_the_t_test(int units, double power) {
    FewUnitsPower few = new FewUnitsPower(Math.sqrt(2.0 / units), 2 * units - 2);
    assertThat(few.differs(1, 0.05)).isCloseTo(power, within(1e-7));
    assertThat(few.differs(-1, 0.05)).isCloseTo(power, within(1e-7));
  }

  /** Reference: R 4.2.2, integrate() over the quantiles of the chi-square, 8 digits. */
  @Test
  void equivalence_with_few_units() {
    assertThat(new FewUnitsPower(0.08, 8).equivalent(0, 0.2, 0.05))
        .isCloseTo(0.48795250, within(1e-6));
    assertThat(new FewUnitsPower(0.08, 18).equivalent(0.05, 0.2, 0.05))
        .isCloseTo(0.47648675, within(1e-6));
  }

  @Test
  void many_units_come_to_the_design_effect() {
    TrialUnits beds = beds(20, 0.05);
    assertThat(beds.designEffect(0.8)).isCloseTo(1.95, within(1e-12));
    int grafts =
        TrialSize.of(TrialQuestion.of(0.8, 0.75), beds).difference().firstGrafts().orElseThrow();
    assertThat((double) grafts / 1399).isBetween(1.87, 1.95);
  }

  @Test
  void the_spread_of_beds_holds_for_both_stocks_whichever_is_named_first() {
    TrialUnits beds = TrialUnits.beds(20, 0.09);
    TrialSize.Need high = TrialSize.of(TrialQuestion.of(0.99, 0.8), beds).difference();
    TrialSize.Need low = TrialSize.of(TrialQuestion.of(0.8, 0.99), beds).difference();
    assertThat(high).isEqualTo(low);
    assertThat(high.firstGrafts().orElseThrow()).isBetween(80, 200);
  }

  @Test
  void neither_stock_has_more_beds_than_there_can_be_nor_fewer_than_two() {
    TrialQuestion twice = TrialQuestion.of(0.8, 0.6).withSecondPerFirst(2);
    TrialSize.Need need = TrialSize.of(twice, beds(20, 0.05).atMost(20)).difference();
    assertThat(need.secondUnits().orElse(0)).isLessThanOrEqualTo(20);
    TrialSize size = TrialSize.of(twice, beds(2, 0.05).atMost(20));
    assertThat(size.mostUnits()).isEqualTo(10);
    assertThat(TrialSizeWords.of(size).difference())
        .contains("the 10 beds of the first stock and 20 of the second must hold");
    TrialQuestion few = TrialQuestion.of(0.9, 0.4).withSecondPerFirst(0.05);
    assertThat(TrialSize.of(few, beds(20, 0.05)).difference().secondUnits().orElseThrow())
        .isGreaterThanOrEqualTo(2);
    assertThatThrownBy(() -> TrialSize.of(few, beds(20, 0.05).atMost(20)))
        .hasMessageContaining("2 to 20 beds, trays or days of each stock");
  }

  @Test
  void says_when_no_number_of_grafts_helps() {
    TrialUnits threeBeds = beds(20, 0.05).atMost(3);
    TrialSize.Need need = TrialSize.of(TrialQuestion.of(0.8, 0.7), threeBeds).difference();
    assertThat(need.reason()).isEqualTo(Reason.TOO_FEW_UNITS);
    assertThat(need.firstGrafts()).isEmpty();
    assertThat(need.mostChance()).isBetween(0.05, 0.4);
  }

  @Test
  void says_when_fewer_but_larger_units_would_do() {
    TrialUnits fewBeds = beds(5, 0.02).atMost(6);
    TrialSize.Need need = TrialSize.of(TrialQuestion.of(0.8, 0.6), fewBeds).difference();
    assertThat(need.reason()).isEqualTo(Reason.LARGER_UNITS);
    assertThat(need.unitSize()).isGreaterThan(5);
    assertThat(need.firstUnits().orElseThrow()).isEqualTo(6);
    assertThat(need.firstGrafts().orElseThrow()).isEqualTo(6 * need.unitSize());
  }

  @Test
  void the_chance_at_the_size_is_the_chance_wanted() {
    for (TrialUnits units : new TrialUnits[] {TrialUnits.singleGrafts(), beds(10, 0.05)}) {
      TrialSize size = TrialSize.of(TrialQuestion.of(0.8, 0.65), units);
      int difference = size.difference().firstGrafts().orElseThrow();
      int same = size.equivalence().firstGrafts().orElseThrow();
      assertThat(size.chance(difference, Claim.DIFFERENCE)).isBetween(0.8, 0.83);
      assertThat(size.chance(same, Claim.EQUIVALENCE)).isBetween(0.8, 0.83);
      assertThat(size.chance(difference / 2, Claim.DIFFERENCE)).isLessThan(0.8);
    }
  }

  /**
   * Trials made up bed by bed, and the t test a person would do: 4,000 trials, error 0.8 points.
   */
  @Test
  void the_chance_is_what_trials_give() {
    TrialUnits units = beds(30, 0.04);
    TrialSize size = TrialSize.of(TrialQuestion.of(0.8, 0.6), units);
    int beds = size.difference().firstUnits().orElseThrow();
    Random random = new Random(4);
    int found = 0;
    for (int trial = 0; trial < 4000; trial++) {
      double[] a = means(random, 0.8, 0.04, beds, 30);
      double[] b = means(random, 0.6, 0.04 * 0.16 / 0.24, beds, 30);
      found += new TTest().homoscedasticTTest(a, b) < TrialQuestion.FALSE_DIFFERENCE ? 1 : 0;
    }
    double stated = size.chance(beds * 30, Claim.DIFFERENCE);
    assertThat(found / 4000.0).isCloseTo(stated, within(0.03));
  }

  private static double[] means(Random random, double take, double rho, int beds, int size) {
    double total = (1 - rho) / rho;
    BetaDistribution luck =
        new BetaDistribution(new Well19937c(random.nextLong()), take * total, (1 - take) * total);
    double[] means = new double[beds];
    for (int bed = 0; bed < beds; bed++) {
      double p = luck.sample();
      for (int graft = 0; graft < size; graft++) {
        means[bed] += random.nextDouble() < p ? 1.0 / size : 0;
      }
    }
    return means;
  }

  @Test
  void refuses_nonsense_with_the_remedy() {
    assertThatThrownBy(() -> TrialQuestion.of(0.8, 0.7).withPower(1.2))
        .hasMessage(
            "the chance wanted must lie between 0.05 and 1, e.g. 0.8 for 8 trials in 10, got 1.2");
    assertThatThrownBy(() -> TrialQuestion.of(0, 0.7))
        .hasMessage("a supposed take must lie between 0 and 1, e.g. 0.7, got 0.0");
    assertThatThrownBy(() -> beds(10, 0.05).atMost(1))
        .hasMessage(
            "with 1 bed, tray or day of each stock the stock can't be told from the bed; at least 2"
                + " of each are needed");
    assertThatThrownBy(() -> TrialUnits.beds(10, 0.5))
        .hasMessageStartingWith("the spread of the takes of beds");
    assertThatThrownBy(() -> TrialSize.of(TrialQuestion.of(0.8, 0.99), TrialUnits.beds(10, 0.2)))
        .hasMessageContaining("can't differ by 0.2 about a take of 0.99");
  }
}
