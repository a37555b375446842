package org.taketally.answers.counts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** Published values are in PublishedChecksTest; here is the duality, and the exact definition. */
class EquivalenceTest {

  /** Both one-sided tests reject exactly when the 90 % interval lies within the margin. */
  @Test
  void tests_and_interval_say_the_same() {
    int shown = 0;
    for (int takes = 0; takes <= 200; takes++) {
      Equivalence equivalence =
          Equivalence.ofDifference(new TakeCount(takes, 200), new TakeCount(130, 180), 0.1, 0.05);
      assertThat(equivalence.interval().coverage()).isCloseTo(0.9, within(1e-15));
      boolean inside = equivalence.interval().low() > -0.1 && equivalence.interval().high() < 0.1;
      assertThat(equivalence.isShown()).as("takes %d", takes).isEqualTo(inside);
      shown += inside ? 1 : 0;
    }
    assertThat(shown).isBetween(5, 40);
  }

  @Test
  void too_few_grafts_show_nothing_however_alike() {
    Equivalence few =
        Equivalence.ofDifference(new TakeCount(7, 10), new TakeCount(7, 10), 0.1, 0.05);
    assertThat(few.estimate()).isZero();
    assertThat(few.isShown()).isFalse();
    assertThat(few.pValue()).isBetween(0.25, 0.35);
  }

  /** By definition: the outermost counts that still reject, and the next ones that don't. */
  @Test
  void exact_counts_solve_their_own_definition() {
    ExactEquivalence exact = ExactEquivalence.of(120, 0.6, 0.8, 0.05);
    BinomialDistribution low = BinomialDistribution.of(120, 0.6);
    BinomialDistribution high = BinomialDistribution.of(120, 0.8);
    assertThat(low.survivalProbability(exact.lowest() - 1)).isLessThanOrEqualTo(0.05);
    assertThat(low.survivalProbability(exact.lowest() - 2)).isGreaterThan(0.05);
    assertThat(high.cumulativeProbability(exact.highest())).isLessThanOrEqualTo(0.05);
    assertThat(high.cumulativeProbability(exact.highest() + 1)).isGreaterThan(0.05);
    assertThat(exact.isShownBy(exact.lowest())).isTrue();
    assertThat(exact.isShownBy(exact.highest() + 1)).isFalse();
  }

  @Test
  void no_count_of_few_grafts_can_show_it() {
    ExactEquivalence few = ExactEquivalence.of(20, 0.4, 0.6, 0.05);
    assertThat(few.power(0.5)).isZero();
    assertThat(few.isShownBy(10)).isFalse();
  }

  @Test
  void refuses_margins_limits_and_counts_out_of_range() {
    TakeCount count = new TakeCount(7, 10);
    assertThatThrownBy(() -> Equivalence.ofDifference(count, count, 10, 0.05))
        .hasMessage("the margin must lie between 0 and 1, e.g. 0.1 for 10 points, got 10.0");
    assertThatThrownBy(() -> Equivalence.ofDifference(count, count, 0.1, 0.5))
        .hasMessage("alpha must lie between 0 and 0.5, e.g. 0.05, got 0.5");
    assertThatThrownBy(() -> Equivalence.ofRate(count, 0.8, 0.6, 0.05))
        .hasMessage("limits must rise within 0 to 1, got 0.8 and 0.6");
    assertThatThrownBy(() -> Equivalence.ofRate(new TakeCount(10, 10), 0.6, 0.8, 0.05))
        .hasMessage("this test needs both takes and failures, got 10 of 10; use ExactEquivalence");
    assertThatThrownBy(() -> ExactEquivalence.of(0, 0.6, 0.8, 0.05))
        .hasMessage("grafts must be at least 1, got 0");
  }
}
