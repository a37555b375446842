package org.taketally.answers.counts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.junit.jupiter.api.Test;

/** Published values are in PublishedChecksTest. */
class ShrinkageTest {

  private static TakeCount of20(long takes) {
    return new TakeCount(takes, 20);
  }

  @Test
  void lots_no_further_apart_than_chance_are_drawn_in_wholly() {
    Shrinkage drawn = Shrinkage.of(List.of(of20(10), of20(11), of20(10), of20(9), of20(10)));
    assertThat(drawn.kept()).isZero();
    assertThat(drawn.takes()).allSatisfy(take -> assertThat(take).isCloseTo(0.5, within(1e-15)));
  }

  @Test
  void order_and_mean_are_kept() {
    Shrinkage drawn = Shrinkage.of(List.of(of20(2), of20(8), of20(14), of20(18)));
    assertThat(drawn.takes()).isSorted();
    assertThat(drawn.takes().stream().mapToDouble(take -> take).average().orElseThrow())
        .isCloseTo(drawn.mean(), within(1e-15));
    assertThat(drawn.kept()).isBetween(0.9, 1.0);
  }

  @Test
  void refuses_lots_it_is_not_made_for() {
    assertThatThrownBy(() -> Shrinkage.of(List.of(of20(1), of20(2), of20(3))))
        .hasMessage("drawing in needs at least 4 lots, got 3");
    assertThatThrownBy(() -> Shrinkage.of(List.of(of20(1), of20(2), of20(3), new TakeCount(1, 9))))
        .hasMessage(
            "shrinking by hand needs lots of one size; use the model for lots of unequal size");
    assertThatThrownBy(() -> Shrinkage.of(List.of(of20(3), of20(3), of20(3), of20(3))))
        .hasMessage("all lots have the same take, nothing to shrink");
  }

  /** Against the beta distribution of commons-statistics. */
  @Test
  void beta_rate_has_the_moments_of_its_distribution() {
    BetaRate rate = new BetaRate(new TakeCount(3, 11));
    BetaDistribution beta = BetaDistribution.of(4, 9);
    assertThat(rate.mean()).isCloseTo(beta.getMean(), within(1e-15));
    assertThat(rate.standardDeviation()).isCloseTo(Math.sqrt(beta.getVariance()), within(1e-15));
  }
}
