package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.terms.Provenance;

class PermutationTestTest {

  private static final int DAYS = 20;

  /** One stratum, two levels: Fisher's exact test, two-sided by the statistic. */
  @Test
  void agrees_with_fishers_exact_test_where_there_is_one_group() {
    Cells cells =
        cells(new int[] {0, 1}, new int[] {0, 0}, new int[] {10, 10}, new int[] {8, 2}, 0);
    PermutationTest test = PermutationTest.of(cells, "rootstock", List.of("day"), 1).orElseThrow();
    // R 4.2.2, fisher.test(matrix(c(8, 2, 2, 8), 2))$p.value is 0.0230, from memory; here by hand:
    double exact = 2 * (45.0 * 45 + 10 * 10 + 1) / 184_756;
    assertThat(exact).isBetween(0.0229, 0.0231);
    assertThat(test.pValue()).isBetween(exact - 0.012, exact + 0.012);
  }

  /** Stocks alike, one used on the bad days: dealing within days is not misled, 200 seeded sets. */
  @Test
  void is_not_misled_by_a_stock_used_on_bad_days() {
    long alarms = IntStream.range(0, 200).filter(seed -> pValue(seed, 0, 1) < 0.05).count();
    assertThat(alarms).isBetween(2L, 20L);
  }

  /** Rows of 10 that share their luck are dealt whole. */
  @Test
  void is_not_misled_by_rows_that_share_their_luck() {
    long alarms = IntStream.range(0, 200).filter(seed -> pValue(seed, 0, 10) < 0.05).count();
    assertThat(alarms).isBetween(2L, 20L);
  }

  @Test
  void sees_a_difference_and_stops_early_where_there_is_none() {
    assertThat(IntStream.range(0, 20).filter(seed -> pValue(seed, -1.2, 1) < 0.05).count())
        .isGreaterThan(17);
    Cells alike =
        cells(new int[] {0, 1}, new int[] {0, 0}, new int[] {20, 20}, new int[] {9, 9}, 0);
    assertThat(PermutationTest.of(alike, "rootstock", List.of("day"), 1).orElseThrow().deals())
        .isLessThan(100);
  }

  /** Rows of 10 and 12 grafts can't be dealt for each other, however large the difference. */
  @Test
  void says_nothing_where_no_rows_of_as_many_grafts_met() {
    int[] level = {0, 1, 0, 1};
    int[] day = {0, 0, 1, 1};
    int[] takes = {9, 2, 8, 1};
    Cells unlike = cells(level, day, new int[] {10, 12, 11, 13}, takes, -1);
    assertThat(PermutationTest.of(unlike, "rootstock", List.of("day"), 1)).isEmpty();

    Cells half = cells(level, day, new int[] {10, 10, 11, 13}, takes, -1);
    assertThat(PermutationTest.of(half, "rootstock", List.of("day"), 1).orElseThrow().grafts())
        .as("only those that can be dealt count")
        .isEqualTo(20);
  }

  @Test
  void says_nothing_where_stocks_never_met() {
    Cells apart =
        cells(new int[] {0, 1}, new int[] {0, 1}, new int[] {20, 20}, new int[] {9, 3}, 0);
    assertThat(PermutationTest.of(apart, "rootstock", List.of("day"), 1)).isEmpty();
  }

  private static double pValue(int seed, double effect, int perRow) {
    Random random = new Random(seed);
    int rows = DAYS * (perRow > 1 ? 60 : 30) / perRow;
    int[] day = new int[rows];
    int[] stock = new int[rows];
    int[] grafts = new int[rows];
    int[] takes = new int[rows];
    double[] luck = random.doubles(DAYS, -1.5, 1.5).toArray();
    Arrays.fill(grafts, perRow);
    for (int i = 0; i < rows; i++) {
      day[i] = i % DAYS;
      stock[i] = random.nextDouble() < (luck[day[i]] < 0 ? 0.8 : 0.2) ? 1 : 0;
      double logit =
          0.5 + luck[day[i]] + effect * stock[i] + (perRow > 1 ? 0.8 * random.nextGaussian() : 0);
      for (int g = 0; g < perRow; g++) {
        takes[i] += random.nextDouble() < 1 / (1 + Math.exp(-logit)) ? 1 : 0;
      }
    }
    Cells cells = cells(stock, day, grafts, takes, perRow > 1 ? 1 : 0);
    return PermutationTest.of(cells, "rootstock", List.of("day"), seed).orElseThrow().pValue();
  }

  private static Cells cells(
      int[] stock, int[] day, int[] grafts, int[] takes, double coefficients) {
    return new Cells(
        List.of(
            new Factor("rootstock", List.of("Pellin", "Ostrey"), stock),
            new Factor("day", IntStream.range(0, DAYS).mapToObj(d -> "day " + d).toList(), day)),
        List.of(),
        grafts,
        takes,
        coefficients,
        Provenance.of("simulated", grafts.length));
  }
}
