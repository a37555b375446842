package org.taketally.answers.counts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Published values are in PublishedChecksTest; here are R's, the edges and refusals. */
class TablesTest {

  /** Reference: R 4.2.2, chisq.test(rbind(c(12,3,0),c(5,9,4)), correct = FALSE), 15 digits. */
  @Test
  void two_way_table_agrees_with_r() {
    TwoWayTable table = TwoWayTable.of(new long[][] {{12, 3, 0}, {5, 9, 4}});
    assertThat(table.pearson().statistic()).isCloseTo(9.689705882352941, within(1e-12));
    assertThat(table.pearson().degreesOfFreedom()).isEqualTo(2);
    assertThat(table.pearson().pValue()).isCloseTo(0.00786877454263133, within(1e-13));
    // 2 * sum(o * log(o / e)) over counts above 0
    assertThat(table.likelihoodRatio().statistic()).isCloseTo(11.381451289949728, within(1e-12));
  }

  @Test
  void empty_rows_and_columns_say_nothing() {
    TwoWayTable plain = TwoWayTable.of(new long[][] {{12, 3}, {5, 9}});
    TwoWayTable padded = TwoWayTable.of(new long[][] {{12, 0, 3}, {0, 0, 0}, {5, 0, 9}});
    assertThat(padded.pearson()).isEqualTo(plain.pearson());
    assertThatThrownBy(() -> TwoWayTable.ofTakes(List.of(new TakeCount(5, 5), new TakeCount(9, 9))))
        .hasMessage("a table needs at least two rows and two columns with counts, got 2 and 1");
    assertThatThrownBy(() -> TwoWayTable.of(new long[][] {{1, -2}, {3, 4}}))
        .hasMessage("counts must be 0 or more, got -2");
  }

  /** Reference: R 4.2.2, fisher.test(rbind(c(12, 8), c(5, 15)))$p.value. */
  @Test
  void fisher_agrees_with_r() {
    assertThat(TwoWayTable.fisher(new TakeCount(12, 20), new TakeCount(5, 20)))
        .isCloseTo(0.0535509925943741, within(1e-12));
    assertThat(TwoWayTable.fisher(new TakeCount(5, 10), new TakeCount(5, 10)))
        .isCloseTo(1, within(1e-12));
  }

  /** Reference: R 4.2.2, loglin(x, pairs, eps = 1e-13) on a table with a count of 0. */
  @Test
  void three_way_table_agrees_with_r() {
    ThreeWayTable table =
        ThreeWayTable.of(new long[][][] {{{12, 8}, {3, 9}, {0, 7}}, {{5, 15}, {9, 11}, {4, 2}}});
    ThreeWayTable.Fit alike = table.noThreeWay();
    assertThat(alike.likelihoodRatio().statistic()).isCloseTo(14.8582220229241, within(1e-9));
    assertThat(alike.pearson().statistic()).isCloseTo(13.0259460920438, within(1e-9));
    assertThat(alike.pearson().degreesOfFreedom()).isEqualTo(2);
    assertThat(table.mutualIndependence().pearson().degreesOfFreedom()).isEqualTo(7);
    assertThat(table.mutualIndependence().likelihoodRatio().statistic())
        .isCloseTo(16.9994767748916, within(1e-10));
  }

  /** Counts made as products of three shares fit exactly. */
  @Test
  void independent_groupings_leave_nothing_over() {
    long[][][] counts = new long[2][3][2];
    for (int i = 0; i < 2; i++) {
      for (int j = 0; j < 3; j++) {
        for (int k = 0; k < 2; k++) {
          counts[i][j][k] = (i + 1L) * (j + 2L) * (3L * k + 1);
        }
      }
    }
    assertThat(ThreeWayTable.of(counts).mutualIndependence().pearson().statistic())
        .isCloseTo(0, within(1e-12));
  }

  @Test
  void refuses_levels_that_never_meet() {
    assertThatThrownBy(() -> ThreeWayTable.of(new long[][][] {{{1, 2}, {0, 0}}, {{3, 4}, {5, 6}}}))
        .hasMessage("each pair of levels must occur at least once; leave out levels that don't");
    assertThatThrownBy(() -> ThreeWayTable.of(new long[][][] {{{1, 2}, {3, 4}}}))
        .hasMessage("a three-way table needs two levels of each grouping");
  }

  @Test
  void chi_square_refuses_nonsense() {
    assertThatThrownBy(() -> new ChiSquare(Double.NaN, 1))
        .hasMessage(
            "a chi-square needs a statistic of 0 or more and at least 1 degree of freedom, got NaN"
                + " with 1");
  }
}
