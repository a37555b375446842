package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.taketally.terms.Interval;

class UnassessedBoundsTest {

  private static final Interval RANGE = new Interval(-0.02, 0.04, 0.90);

  @Test
  void nothing_unassessed_moves_nothing() {
    assertThat(UnassessedBounds.none(2).widened(RANGE, new double[] {0.7, 0.69}, 0, 1))
        .isEqualTo(RANGE);
  }

  /** 80 and 60 of 100 assessed took; of the second 25 more were not assessed, by hand. */
  @Test
  void widens_to_what_would_be_seen_had_all_failed_or_all_taken() {
    double[] takes = {0.8, 0.6};
    UnassessedBounds bounds = new UnassessedBounds(new double[] {0, 0.2});
    double assessed = 0.8 - 0.6;
    double allFailed = 0.8 - 60 / 125.0;
    double allTaken = 0.8 - 85 / 125.0;
    Interval range = bounds.widened(new Interval(assessed, assessed, 0.9), takes, 0, 1);
    assertThat(range.low()).isCloseTo(allTaken, within(1e-12));
    assertThat(range.high()).isCloseTo(allFailed, within(1e-12));
    assertThat(bounds.largest(takes)).isCloseTo(allFailed - allTaken, within(1e-12));
  }

  @Test
  void as_many_unassessed_on_both_move_equal_takes_by_nothing() {
    UnassessedBounds bounds = new UnassessedBounds(new double[] {0.1, 0.1});
    assertThat(bounds.widened(RANGE, new double[] {0.7, 0.7}, 0, 1).width())
        .isCloseTo(RANGE.width(), within(1e-12));
  }
}
