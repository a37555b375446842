package org.taketally.answers.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.terms.Provenance;

/** How a column of numbers lies within and between groups, on numbers checked by hand. */
class GroupMeansTest {

  private static GroupMeans means(int[] grafts, int[] hands, double... days) {
    Factor hand = new Factor("grafter", List.of("Ada", "Bram", "Cleo"), hands);
    Cells cells =
        new Cells(
            List.of(hand),
            List.of(new Measure("storage_days", days)),
            grafts,
            new int[grafts.length],
            0,
            Provenance.of("typed", grafts.length));
    return new GroupMeans(cells, cells.measure("storage_days"), hand);
  }

  /**
   * By hand: means 2 and 6, of all 4; within 1+1+1+1 = 4, between 2*4 + 2*4 = 16. F = 16 / (4/2) =
   * 8 on 1 and 2; t = sqrt(8) on 2 degrees of freedom has the closed form 1 - sqrt(8 / 10).
   */
  @Test
  void parts_the_spread_into_within_and_between() {
    GroupMeans means = means(new int[] {1, 1, 1, 1}, new int[] {0, 0, 1, 1}, 1, 3, 5, 7);

    assertThat(means.groups()).isEqualTo(2);
    assertThat(means.within()).isCloseTo(0.2, within(1e-12));
    assertThat(means.byLot()).isCloseTo(1 - Math.sqrt(0.8), within(1e-12));
    assertThat(means.measure("mean").values()).containsExactly(2, 2, 6, 6);
  }

  @Test
  void a_batch_counts_as_often_as_it_has_grafts() {
    GroupMeans means = means(new int[] {3, 1}, new int[] {0, 0}, 1, 5);

    assertThat(means.measure("mean").values()).containsExactly(2, 2);
    assertThat(means.within()).isEqualTo(1);
    assertThat(means.byLot()).as("one group can't differ from others").isEqualTo(1);
  }

  @Test
  void what_nobody_wrote_down_is_in_no_mean() {
    int unknown = Factor.MISSING;
    GroupMeans means =
        means(new int[] {1, 1, 1, 1}, new int[] {0, 0, 2, unknown}, 1, Double.NaN, 4, 9);

    assertThat(means.groups()).isEqualTo(2);
    assertThat(means.measure("mean").values()).containsExactly(1, 1, 4, Double.NaN);
  }

  @Test
  void numbers_all_alike_part_nothing() {
    GroupMeans means = means(new int[] {5, 5}, new int[] {0, 1}, 2, 2);

    assertThat(means.within()).isZero();
    assertThat(means.byLot()).isEqualTo(1);
  }
}
