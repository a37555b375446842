package org.taketally.answers.counts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.taketally.terms.Interval;

/** Published values are in PublishedChecksTest; here are the edges, and Sato's interval. */
class StratifiedTableTest {

  private static final TakeCount NONE = new TakeCount(0, 0);

  private static Stratum stratum(String name, long x1, long n1, long x2, long n2) {
    return new Stratum(name, new TakeCount(x1, n1), new TakeCount(x2, n2));
  }

  private static final List<Stratum> INFORMATIVE =
      List.of(
          stratum("Orrin", 12, 20, 5, 20),
          stratum("Talla", 7, 10, 9, 20),
          stratum("Sedge Gold", 2, 8, 1, 9));

  private static StratifiedTable withSilentStrata() {
    List<Stratum> all = new ArrayList<>(INFORMATIVE);
    all.add(1, stratum("all took", 4, 4, 6, 6));
    all.add(2, stratum("all failed", 0, 3, 0, 9));
    all.add(new Stratum("one stock only", new TakeCount(5, 9), NONE));
    all.add(new Stratum("empty", NONE, NONE));
    return StratifiedTable.of(all);
  }

  /** Reference: R 4.2.2, mantelhaen.test on the informative strata, src/test/r/counts.R. */
  @Test
  void strata_without_information_leave_ratio_and_test_alone() {
    StratifiedTable table = withSilentStrata();
    assertThat(table.informative()).isEqualTo(INFORMATIVE);
    ChiSquare test = table.test(false).orElseThrow();
    assertThat(test.statistic()).isCloseTo(6.7910223793577815, within(1e-12));
    assertThat(test.pValue()).isCloseTo(0.00916174240797959, within(1e-12));
    PooledEstimate ratio = table.oddsRatio(0.95).orElseThrow();
    assertThat(ratio.value()).isCloseTo(3.5543951261966926, within(1e-13));
    assertThat(ratio.interval().low()).isCloseTo(1.3581096006917792, within(1e-12));
    assertThat(ratio.interval().high()).isCloseTo(9.302433843848515, within(1e-12));
  }

  /** All taking alike is evidence about the difference, though not about the odds ratio. */
  @Test
  void strata_where_all_took_count_in_the_difference() {
    // by hand: weights 10, 20/3, 2.4, 2.25, 72/17 and differences .35, .25, 0, 0, 5/36
    double weighted = 10 * 0.35 + 20.0 / 3 * 0.25 + 72.0 / 17 * (2.0 / 8 - 1.0 / 9);
    double weights = 10 + 20.0 / 3 + 2.4 + 2.25 + 72.0 / 17;
    assertThat(withSilentStrata().difference(0.95).orElseThrow().value())
        .isCloseTo(weighted / weights, within(1e-14));
  }

  /** With one stratum of equal lots Sato's variance is the textbook one: by algebra. */
  @Test
  void difference_of_one_stratum_is_the_plain_one() {
    TakeCount first = new TakeCount(14, 20);
    TakeCount second = new TakeCount(9, 20);
    Interval pooled =
        StratifiedTable.of(List.of(new Stratum("one", first, second)))
            .difference(0.95)
            .orElseThrow()
            .interval();
    Interval plain = TakeDifference.wald(first, second, 0.95);
    assertThat(pooled.low()).isCloseTo(plain.low(), within(1e-14));
    assertThat(pooled.high()).isCloseTo(plain.high(), within(1e-14));
  }

  /**
   * Sato's variance holds both for few large and for many small strata: 40 strata of 3 against 5
   * grafts with a true difference of 0.2. 4,000 seeded trials; the tolerance is three standard
   * errors of a 95 % rate.
   */
  @Test
  void difference_covers_the_truth_in_many_small_strata() {
    SplittableRandom random = new SplittableRandom(20240611);
    int covered = 0;
    int trials = 4000;
    for (int trial = 0; trial < trials; trial++) {
      List<Stratum> strata = new ArrayList<>();
      for (int k = 0; k < 40; k++) {
        double base = 0.2 + 0.5 * k / 40;
        strata.add(stratum("k" + k, takes(random, 3, base + 0.2), 3, takes(random, 5, base), 5));
      }
      Interval interval = StratifiedTable.of(strata).difference(0.95).orElseThrow().interval();
      covered += interval.contains(0.2) ? 1 : 0;
    }
    assertThat((double) covered / trials).isBetween(0.95 - 0.0104, 0.95 + 0.0104);
  }

  private static int takes(SplittableRandom random, int grafts, double rate) {
    int takes = 0;
    for (int i = 0; i < grafts; i++) {
      takes += random.nextDouble() < rate ? 1 : 0;
    }
    return takes;
  }

  @Test
  void strata_that_disagree_flag_the_pooled_figure() {
    StratifiedTable table =
        StratifiedTable.of(
            List.of(stratum("Orrin", 90, 100, 50, 100), stratum("Talla", 50, 100, 90, 100)));
    PooledEstimate ratio = table.oddsRatio(0.95).orElseThrow();
    assertThat(ratio.value()).isCloseTo(1, within(1e-14));
    assertThat(ratio.isFlagged()).isTrue();
    assertThat(ratio.agreement().verdict()).isEqualTo(Agreement.Verdict.DISAGREE);
  }

  @Test
  void strata_that_agree_say_so() {
    Agreement agreement = StratifiedTable.of(INFORMATIVE).agreement();
    assertThat(agreement.verdict()).isEqualTo(Agreement.Verdict.AGREE);
    assertThat(agreement.strata()).isEqualTo(3);
  }

  @Test
  void nothing_is_made_up_where_nothing_can_be_said() {
    StratifiedTable empty = StratifiedTable.of(List.of());
    assertThat(empty.oddsRatio(0.95)).isEmpty();
    assertThat(empty.difference(0.95)).isEmpty();
    assertThat(empty.test(true)).isEmpty();
    assertThat(empty.agreement().verdict()).isEqualTo(Agreement.Verdict.NOT_COMPARABLE);
    assertThat(empty.agreement().pValue()).isNaN();

    StratifiedTable infinite = StratifiedTable.of(List.of(stratum("Orrin", 5, 5, 2, 6)));
    assertThat(infinite.oddsRatio(0.95)).isEmpty();
    assertThat(infinite.difference(0.95).orElseThrow().value()).isCloseTo(2.0 / 3, within(1e-15));
    assertThat(infinite.test(true)).isPresent();
  }

  /** A gap below a half graft is not corrected to more than it is: as R's mantelhaen.test. */
  @Test
  void continuity_correction_never_makes_a_gap() {
    StratifiedTable even = StratifiedTable.of(List.of(stratum("Orrin", 5, 10, 5, 10)));
    assertThat(even.test(true).orElseThrow().statistic()).isZero();
  }

  /** The margins stay and the odds ratio of the table comes out as asked, 1 included. */
  @Test
  void takes_at_an_odds_ratio_have_that_ratio() {
    Stratum stratum = stratum("Orrin", 12, 20, 5, 30);
    for (double ratio : new double[] {1e-4, 0.3, 1, 1 + 1e-9, 7, 1e5}) {
      double a = stratum.takesAtOddsRatio(ratio);
      double back = a * (30 - 17 + a) / ((20 - a) * (17 - a));
      assertThat(back / ratio).isCloseTo(1, within(1e-9));
    }
  }
}
