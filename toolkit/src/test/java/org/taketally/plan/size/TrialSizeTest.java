package org.taketally.plan.size;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.stat.inference.TTest;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.plan.size.TrialQuestion.Claim;
import org.taketally.plan.size.TrialSize.Reason;
import org.taketally.terms.Logit;
import org.taketally.wording.TrialSizeWords;
import org.taketally.wording.figures.TrialSizeFigureWords;

/** The formulas for single grafts against published values are in PublishedChecksTest. */
class TrialSizeTest {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

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

  /**
   * Two one-sided 3 % tests, no true difference, chance 0.8; worked out apart: by the textbook
   * formula, for 0.9 within 0.10 and 0.15 by the sum over all pairs of counts.
   */
  @ParameterizedTest
  @CsvSource({
    "0.9, 0.05, 721", "0.8, 0.05, 1281", "0.6, 0.05, 1921",
    "0.9, 0.10, 182", "0.8, 0.10, 321", "0.6, 0.10, 481",
    "0.9, 0.15, 83", "0.8, 0.15, 143", "0.6, 0.15, 214"
  })
  void grafts_for_equivalence(double take, double margin, int grafts) {
    TrialSize size =
        TrialSize.of(TrialQuestion.of(take, take).withMargin(margin), TrialUnits.singleGrafts());
    assertThat(size.equivalence().firstGrafts().orElseThrow()).isEqualTo(grafts);
    assertThat(size.difference().reason()).isEqualTo(Reason.NOT_TRUE);
  }

  /** Every pair of counts: no window, no search. */
  private static double everyPair(FewGraftsPower.Lot a, FewGraftsPower.Lot b, double margin) {
    double z = NORMAL.inverseSurvivalProbability(margin > 0 ? 0.03 : 0.01);
    double sum = 0;
    for (int y = 0; y <= a.grafts(); y++) {
      double[] first = margin > 0 ? oneAdded(a, y) : modelled(a, y);
      double chance = BinomialDistribution.of(a.grafts(), a.take()).probability(y);
      for (int w = 0; chance > 1e-14 && w <= b.grafts(); w++) {
        double[] second = margin > 0 ? oneAdded(b, w) : modelled(b, w);
        double e = Math.sqrt(first[1] + second[1]);
        double gap = Math.abs(first[0] - second[0]);
        if (margin > 0 ? gap + z * e < margin : gap > z * e) {
          sum += chance * BinomialDistribution.of(b.grafts(), b.take()).probability(w);
        }
      }
    }
    return sum;
  }

  private static double[] oneAdded(FewGraftsPower.Lot lot, int takes) {
    double p = (takes + 1.0) / (lot.grafts() + 2);
    return new double[] {p, p * (1 - p) / (lot.grafts() + 2)};
  }

  /** Mean and variance of a take whose logit is normal, by the trapezoid rule. */
  private static double[] modelled(FewGraftsPower.Lot lot, int takes) {
    double p = Math.max(1, Math.min(lot.grafts() - 1, takes)) / (double) lot.grafts();
    double sd = 1 / Math.sqrt(lot.grafts() * p * (1 - p));
    double weight = 0;
    double mean = 0;
    double square = 0;
    for (double x = -8; x <= 8; x += 0.1) {
      double take = Logit.take(Logit.of(p) + sd * x);
      double w = Math.exp(-x * x / 2);
      weight += w;
      mean += w * take;
      square += w * take * take;
    }
    return new double[] {mean / weight, square / weight - mean * mean / weight / weight};
  }

  @Test
  void the_chance_of_few_grafts_is_the_sum_over_every_pair_of_counts() {
    double[] takes = {0.02, 0.3, 0.5, 0.8, 0.9, 0.98, 0.995};
    int[][] grafts = {{3, 10}, {10, 10}, {21, 21}, {40, 17}, {60, 110}};
    for (int[] n : grafts) {
      for (double first : takes) {
        for (double second : takes) {
          FewGraftsPower.Lot a = new FewGraftsPower.Lot(n[0], first);
          FewGraftsPower.Lot b = new FewGraftsPower.Lot(n[1], second);
          FewGraftsPower power = new FewGraftsPower(a, b);
          assertThat(power.differs(0.02)).isCloseTo(everyPair(a, b, 0), within(1e-9));
          for (double margin : new double[] {0.02, 0.1, 0.3, 0.49}) {
            assertThat(power.equivalent(margin, 0.03))
                .isCloseTo(everyPair(a, b, margin), within(1e-9));
          }
        }
      }
    }
  }

  /**
   * Of 150 or 200 trials made up and judged as records 64.5, 61.5, 72.5, 31, 67 and 71 % showed it,
   * give or take 7; the normal approximation says 81, 69, 80, 56, 80 and 76 %. Sums worked out
   * apart.
   */
  @ParameterizedTest
  @CsvSource({
    "0.98, 0.10, 40, EQUIVALENCE, 0.655", "0.95, 0.10, 80, EQUIVALENCE, 0.604",
    "0.90, 0.30, 20, EQUIVALENCE, 0.755", "0.98, 0.10, 80, DIFFERENCE, 0.382",
    "0.99, 0.20, 48, DIFFERENCE, 0.679", "0.98, 0.30, 28, DIFFERENCE, 0.681"
  })
  void few_failures_are_counted_out(
      double take, double margin, int grafts, Claim claim, double chance) {
    TrialSize size =
        TrialSize.of(
            TrialQuestion.of(take, take - margin).withMargin(margin), TrialUnits.singleGrafts());
    assertThat(size.chance(grafts, claim)).isCloseTo(chance, within(0.001));
  }

  @Test
  void from_the_size_on_the_chance_never_falls_short() {
    for (double take : new double[] {0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 0.99}) {
      for (double margin : new double[] {0.1, 0.2, 0.3, 0.49}) {
        TrialQuestion asked = TrialQuestion.of(take, take - margin).withMargin(margin);
        TrialSize size = TrialSize.of(asked, TrialUnits.singleGrafts());
        for (Claim claim : Claim.values()) {
          TrialSize.Need need = claim == Claim.DIFFERENCE ? size.difference() : size.equivalence();
          int enough = need.firstGrafts().orElseThrow();
          assertThat(enough).isGreaterThanOrEqualTo(10);
          for (int more = enough; more < 2 * enough; more++) {
            assertThat(size.chance(more, claim)).isGreaterThanOrEqualTo(0.8);
          }
          if (enough > 10) {
            assertThat(size.chance(enough - 1, claim)).isLessThan(0.81);
          }
        }
      }
    }
  }

  /** A level of fewer than 10 grafts isn't judged. */
  @Test
  void fewer_than_ten_grafts_of_a_stock_show_nothing() {
    TrialSize wide =
        TrialSize.of(TrialQuestion.of(0.99, 0.1).withMargin(0.9), TrialUnits.singleGrafts());
    assertThat(wide.difference().firstGrafts()).hasValue(10);
    assertThat(wide.equivalence().secondGrafts()).hasValue(10);
    assertThat(wide.chance(9, Claim.DIFFERENCE)).isZero();
    TrialSize uneven =
        TrialSize.of(
            TrialQuestion.of(0.95, 0.2).withSecondPerFirst(0.25), TrialUnits.singleGrafts());
    assertThat(uneven.difference().firstGrafts().orElseThrow()).isGreaterThanOrEqualTo(37);
    assertThat(uneven.difference().secondGrafts().orElseThrow()).isGreaterThanOrEqualTo(10);
    TrialSize beds = TrialSize.of(TrialQuestion.of(0.95, 0.1), TrialUnits.beds(2, 0.01));
    assertThat(beds.difference().firstGrafts().orElseThrow()).isGreaterThanOrEqualTo(10);
    assertThat(beds.chance(8, Claim.DIFFERENCE)).isZero();
  }

  @Test
  void the_chance_said_is_that_of_whole_beds_and_the_table_counts_whole_beds() {
    TrialSize size =
        TrialSize.of(TrialQuestion.of(0.95, 0.15).withMargin(0.8), TrialUnits.beds(7, 0.05));
    TrialSizeWords words = TrialSizeWords.of(size);
    assertThat(size.chance(size.difference().firstGrafts().orElseThrow(), Claim.DIFFERENCE))
        .isGreaterThan(0.9);
    assertThat(words.difference()).doesNotContain("a chance of 80 %");
    assertThat(words.table().stream().map(row -> row.get(0)).limit(4))
        .containsExactly("14", "21", "42", "63");
    TrialSize ten =
        TrialSize.of(TrialQuestion.of(0.99, 0.1).withMargin(0.9), TrialUnits.singleGrafts());
    assertThat(TrialSizeWords.of(ten).difference())
        .contains("10 grafts on each stock", "with a chance of over 99 %");
    TrialSize alone = TrialSize.of(TrialQuestion.of(0.8, 0.7), TrialUnits.beds(1, 0.05).atMost(4));
    assertThat(TrialSizeWords.of(alone).more().get(0))
        .contains("a bed of 1 graft tells as much as 1 independent graft.");
    TrialSize mixed =
        TrialSize.of(TrialQuestion.of(0.8, 0.7).withOffType(0.125), TrialUnits.singleGrafts());
    assertThat(String.join(" ", TrialSizeWords.of(mixed).more()))
        .contains("With 12.5 % of the seedlings off type a difference of 10 points looks like one")
        .contains("of 8.75 points, and \"no difference\" is shown of the mixed lot");
    assertThat(new TrialSizeFigureWords(single(0.825, 0.8)).subtitle())
        .isEqualTo("82.5 % against 80 %; margin 10 points");
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
    assertThatThrownBy(() -> single(0.8, 0.799999))
        .hasMessage(
            "to tell takes of 0.8 and 0.799999 apart would take more than 1,000,000,000 grafts on"
                + " one stock; suppose takes farther apart, a lower chance, or numbers of grafts on"
                + " the two stocks nearer to each other");
    assertThatThrownBy(
            () ->
                TrialSize.of(
                    TrialQuestion.of(0.8, 0.7).withMargin(1e-6), TrialUnits.singleGrafts()))
        .hasMessageContaining("to show no difference of 1.0E-6")
        .hasMessageContaining("give a wider margin");
    assertThatThrownBy(
            () ->
                TrialSize.of(
                    TrialQuestion.of(0.99, 0.8).withSecondPerFirst(1e9), TrialUnits.singleGrafts()))
        .hasMessageContaining("nearer to each other");
    assertThat(single(0.9999999, 0.99).difference().firstGrafts().orElseThrow())
        .isBetween(900, 1500);
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
