package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.taketally.terms.Interval;

/** Counts of a lot whose take is known: binomial, worked out by hand. */
class LotCountsTest {

  private static final LotPrediction EVEN = new LotPrediction(new double[] {0.5, 0.5});

  /** Of 10 at 1 in 2: up to 1 in 11 / 1024, up to 2 in 56, up to 3 in 176 of 1024. */
  @Test
  void counts_leave_out_no_more_than_half_of_what_is_left_on_each_side() {
    assertThat(EVEN.count(10, 0.9)).isEqualTo(new Interval(2, 8, 0.9));
    assertThat(EVEN.count(10, 0.88)).isEqualTo(new Interval(3, 7, 0.88));
    assertThat(EVEN.count(10, 0.99)).isEqualTo(new Interval(1, 9, 0.99));
  }

  /** One graft that fails in one draw of four: exactly the half of 50 % that may be left out. */
  @Test
  void a_tail_of_exactly_half_of_what_is_left_is_left_out() {
    LotPrediction mixed = new LotPrediction(new double[] {1, 0, 1, 1});
    assertThat(mixed.count(1, 0.5)).isEqualTo(new Interval(1, 1, 0.5));
  }

  @Test
  void the_range_is_lopsided_where_takes_are() {
    LotPrediction good = new LotPrediction(new double[] {0.9}); // 9^10, 10 * 9^9, ... of 10^10
    assertThat(good.count(10, 0.9)).isEqualTo(new Interval(7, 10, 0.9));
    LotPrediction poor = new LotPrediction(new double[] {0.1});
    assertThat(poor.count(10, 0.9)).isEqualTo(new Interval(0, 3, 0.9));
  }

  @Test
  void a_lot_that_fails_or_takes_for_sure_has_one_count() {
    assertThat(new LotPrediction(new double[] {0}).count(7, 0.9))
        .isEqualTo(new Interval(0, 0, 0.9));
    assertThat(new LotPrediction(new double[] {1}).count(7, 0.9))
        .isEqualTo(new Interval(7, 7, 0.9));
  }

  /** Half the time 1 in 2, half the time all: (1/4 + 0) / 2, (2/4 + 0) / 2, (1/4 + 1) / 2. */
  @Test
  void chances_are_averages_over_the_draws() {
    LotPrediction mixed = new LotPrediction(new double[] {1, 0.5});
    assertThat(mixed.counts(2)).containsExactly(new double[] {0.125, 0.25, 0.625}, within(1e-14));
    assertThat(mixed.probabilityOfAtLeast(1, 2)).isCloseTo(0.875, within(1e-14));
    assertThat(mixed.probabilityOfAtLeast(3, 2)).isZero();
    assertThat(mixed.take()).isEqualTo(0.75);
    assertThat(mixed.draws()).containsExactly(1, 0.5);
  }

  /** Between neighbours, straight: of 0, 0.1, ... 1 the middle 80 % are 0.1 to 0.9. */
  @Test
  void the_range_of_takes_leaves_out_half_on_each_side() {
    double[] takes = new double[11];
    for (int i = 0; i <= 10; i++) {
      takes[i] = (10 - i) / 10.0;
    }
    Interval range = new LotPrediction(takes).take(0.8);
    assertThat(range.low()).isCloseTo(0.1, within(1e-12));
    assertThat(range.high()).isCloseTo(0.9, within(1e-12));
  }

  @Test
  void a_number_of_a_planned_lot_is_kept_as_it_reads() {
    assertThat(PlannedLot.any().with("storage_days", 2.5).value("storage_days")).contains("2.5");
    assertThat(PlannedLot.any().value("storage_days")).isEmpty();
  }
}
