package org.taketally.watch.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Published values are in PublishedChecksTest. */
class CusumWeightTest {

  /** A likelihood ratio has mean 1 while all is as expected. */
  @Test
  void weights_balance_while_all_is_as_expected() {
    for (double ratio : new double[] {0.25, 0.5, 1.5, 2, 8}) {
      CusumWeight weight = new CusumWeight(ratio);
      for (double take = 0; take <= 1; take += 0.125) {
        double mean =
            take * Math.exp(weight.ofTake(take)) + (1 - take) * Math.exp(weight.ofFailure(take));
        assertThat(mean).isCloseTo(1, within(1e-14));
      }
    }
  }

  @Test
  void refuses_odds_and_takes_out_of_range() {
    assertThatThrownBy(() -> new CusumWeight(0))
        .hasMessage("the odds ratio to watch for must be above 0, e.g. 2, got 0.0");
    assertThatThrownBy(() -> new CusumWeight(2).ofTake(Double.NaN))
        .hasMessage("an expected take must lie within 0 to 1, got NaN");
  }
}
