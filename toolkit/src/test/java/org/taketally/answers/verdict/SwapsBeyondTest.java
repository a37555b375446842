package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Three cultivars on three stocks; a margin of 10 points; counted by hand. */
class SwapsBeyondTest {

  private static final double MARGIN = 0.1;

  private final SwapsBeyond beyond = new SwapsBeyond(3, 3);

  private boolean add(double[]... takesOfCultivars) {
    return beyond.add(takesOfCultivars, MARGIN);
  }

  private static double[] takes(double... onStocks) {
    return onStocks;
  }

  @Test
  void both_ways_needs_one_cultivar_beyond_the_margin_in_each_direction() {
    assertThat(add(takes(0.5, 0.7, 0.6), takes(0.7, 0.5, 0.6), takes(0.6, 0.6, 0.6))).isTrue();
    assertThat(add(takes(0.5, 0.7, 0.6), takes(0.5, 0.7, 0.6), takes(0.6, 0.6, 0.6))).isFalse();
  }

  @Test
  void a_swap_that_reaches_the_margin_and_no_more_is_not_beyond_it() {
    assertThat(add(takes(0.25, 0.375, 0.3), takes(0.5, 0.375, 0.4), takes(0, 0, 0))).isTrue();
    SwapsBeyond wide = new SwapsBeyond(3, 3);
    double[][] draw = {takes(0.25, 0.375, 0.3), takes(0.5, 0.375, 0.4), takes(0, 0, 0)};
    assertThat(wide.add(draw, 0.125)).isFalse();
  }

  @Test
  void the_example_is_the_pair_and_the_cultivars_surest_in_both_directions() {
    add(takes(0.9, 0.5, 0.5), takes(0.5, 0.5, 0.9), takes(0.5, 0.5, 0.5));
    add(takes(0.9, 0.5, 0.5), takes(0.5, 0.5, 0.9), takes(0.5, 0.9, 0.5));
    add(takes(0.5, 0.5, 0.5), takes(0.5, 0.5, 0.9), takes(0.5, 0.5, 0.5));
    assertThat(beyond.surest()).hasValue(new SwapsBeyond.Surest(2, 0, 1, 0));
  }

  @Test
  void one_stock_has_no_example() {
    assertThat(new SwapsBeyond(3, 1).surest()).isEmpty();
  }
}
