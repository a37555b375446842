package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.terms.Provenance;

/** Parts of the logit add up to the fixed part of each cell. */
class LogitPartTest {

  private static final int SIZE = 60;
  private static final List<String> STOCKS = List.of("R1", "R2", "R3");
  private static final Cells CELLS = cells();
  private static final TakeFit FIT =
      TakeModel.ofTakes().adjustFor("rootstock").adjustForCurve("storage_days", 3).fit(CELLS);

  private static Cells cells() {
    SplittableRandom random = new SplittableRandom(8);
    int[] stock = new int[SIZE];
    double[] days = new double[SIZE];
    int[] grafts = new int[SIZE];
    int[] takes = new int[SIZE];
    for (int i = 0; i < SIZE; i++) {
      stock[i] = random.nextInt(STOCKS.size());
      days[i] = random.nextInt(12);
      grafts[i] = 9;
      takes[i] = 2 + random.nextInt(6);
    }
    return new Cells(
        List.of(new Factor("rootstock", STOCKS, stock)),
        List.of(new Measure("storage_days", days)),
        grafts,
        takes,
        0,
        Provenance.of("simulated", SIZE));
  }

  @Test
  void intercept_and_parts_are_the_fixed_part() {
    TakeDesign design = FIT.design();
    double[] beta = {0.3, -0.7, 1.1, 0.2, -0.4, 0.6};
    double[] fixed = design.fixedPart(Arrays.copyOf(beta, design.names().size()));
    double[] own = Arrays.copyOf(beta, design.names().size());
    for (int i = 0; i < SIZE; i++) {
      String stock = STOCKS.get(CELLS.factor("rootstock").code(i));
      String days = Double.toString(CELLS.measure("storage_days").values()[i]);
      LogitPart all =
          design
              .intercept()
              .plus(1, design.part("rootstock", stock))
              .plus(1, design.part("storage_days", days));
      assertThat(all.at(own)).isCloseTo(fixed[i], within(1e-12));
      assertThat(design.part("rootstock", stock).at(own))
          .isEqualTo(design.contribution("rootstock", stock, own));
    }
  }

  @Test
  void the_mean_part_counts_each_level_once_and_numbers_not_at_all() {
    TakeDesign design = FIT.design();
    double[] beta = FIT.beta();
    double sum = 0;
    for (String stock : design.levels("rootstock")) {
      sum += design.contribution("rootstock", stock, beta);
    }
    assertThat(design.meanPart("rootstock").at(beta)).isCloseTo(sum / 3, within(1e-12));
    assertThat(design.meanPart("storage_days").at(beta)).isZero();
  }

  @Test
  void names_what_it_knows() {
    assertThatThrownBy(() -> FIT.design().part("site", "Upper Yard"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("site isn't adjusted for");
    assertThatThrownBy(() -> FIT.design().part("rootstock", "R9"))
        .hasMessageContaining("R1, R2, R3");
    assertThatThrownBy(() -> FIT.draws(10, 1).column("rootstock"))
        .hasMessageContaining("rootstock doesn't vary in this fit");
  }
}
