package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.terms.Provenance;

/** Beds of two cells; what changes between them takes one of their degrees of freedom. */
class GroupDegreesTest {

  private static final int BEDS = 6;

  /** Means of beds 9 or 11 days, cells {@code apart} to both sides: within, a^2 of 1 + a^2. */
  private static TakeFit fit(double apart, int grafts) {
    int[] bed = IntStream.range(0, 2 * BEDS).map(i -> i / 2).toArray();
    double[] days =
        IntStream.range(0, 2 * BEDS)
            .mapToDouble(i -> 9 + 2 * (bed[i] % 2) + (i % 2 == 0 ? -apart : apart))
            .toArray();
    int[] all = new int[2 * BEDS];
    Arrays.fill(all, grafts);
    int[] takes = {3, 4, 2, 5, 4, 4, 1, 3, 5, 2, 3, 4};
    Cells cells =
        new Cells(
            List.of(
                new Factor("bed", IntStream.range(0, BEDS).mapToObj(b -> "B" + b).toList(), bed)),
            List.of(new Measure("storage_days", days)),
            all,
            takes,
            0,
            Provenance.of("typed in", 2 * BEDS));
    return TakeModel.ofTakes().adjustFor("storage_days").varyBy("bed").fit(cells);
  }

  /**
   * 0.2^2 / 1.04 = 3.8 % lies below the 5 % that count as a change within, 0.25^2 / 1.0625 above.
   */
  @Test
  void a_column_takes_a_degree_where_it_hardly_changes_within_groups() {
    assertThat(fit(0, 7).groupDegrees("bed")).isEqualTo(BEDS - 2);
    assertThat(fit(0.2, 7).groupDegrees("bed")).isEqualTo(BEDS - 2);
    assertThat(fit(0.25, 7).groupDegrees("bed")).isEqualTo(BEDS - 1);
    assertThat(fit(3, 7).groupDegrees("bed")).isEqualTo(BEDS - 1);
  }
}
