package org.taketally.answers.adjusted;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.model.TakeModel;
import org.taketally.terms.Provenance;
import org.taketally.wording.ModelWords;

class SuggestedModelTest {

  private static final int CELLS = 40;

  private static Cells cells(List<Factor> factors, double[] storageDays) {
    int[] grafts = new int[CELLS];
    int[] takes = new int[CELLS];
    Arrays.fill(grafts, 5);
    Arrays.fill(takes, 3);
    return new Cells(
        factors,
        List.of(new Measure("storage_days", storageDays)),
        grafts,
        takes,
        0,
        Provenance.of("made for a test", CELLS));
  }

  private static Factor factor(String name, int levels, int missing) {
    int[] codes = new int[CELLS];
    for (int i = 0; i < CELLS; i++) {
      codes[i] = i < missing ? Factor.MISSING : i % levels;
    }
    return new Factor(
        name,
        java.util.stream.IntStream.range(0, levels).mapToObj(i -> "level " + i).toList(),
        codes);
  }

  private static double[] days(int distinct) {
    double[] days = new double[CELLS];
    for (int i = 0; i < CELLS; i++) {
      days[i] = i % distinct;
    }
    return days;
  }

  @Test
  void takes_what_is_recorded_and_varied() {
    Cells cells =
        cells(
            List.of(
                factor("method", 3, 0),
                factor("bud_stage", 2, 10),
                factor("stock_condition", 1, 0),
                factor("cultivar", 8, 0),
                factor("grafter", 4, 0),
                factor("season", 1, 0),
                factor("rootstock", 3, 0)),
            days(7));
    SuggestedModel suggested = SuggestedModel.of(cells);
    TakeModel model = suggested.model();
    assertThat(model.adjusted()).containsExactly("method", "rootstock");
    assertThat(model.curves()).containsExactly(java.util.Map.entry("storage_days", 3));
    assertThat(model.varying()).containsExactly("cultivar", "grafter");
    assertThat(model.compared()).contains("rootstock");
    assertThat(suggested.choices().stream().map(ModelWords::of))
        .containsExactly(
            "Adjusted for method.",
            "Not adjusted for bud stage: recorded for 75 % of the grafts only.",
            "Not adjusted for stock condition: all grafts are alike in it.",
            "Adjusted for storage days as a curve.",
            "Varying around a common mean: cultivar and grafter.");
  }

  @Test
  void few_different_storage_days_make_a_straight_line() {
    TakeModel model = SuggestedModel.of(cells(List.of(factor("cultivar", 4, 0)), days(3))).model();
    assertThat(model.adjusted()).containsExactly("storage_days");
    assertThat(model.curves()).isEmpty();
  }

  @Test
  void one_rootstock_leaves_no_question() {
    Cells cells = cells(List.of(factor("cultivar", 4, 0), factor("rootstock", 1, 0)), days(1));
    SuggestedModel suggested = SuggestedModel.of(cells);
    assertThat(suggested.model().compared()).isEmpty();
    assertThat(suggested.choices().stream().map(ModelWords::of))
        .contains("Not adjusted for storage days: all grafts are alike in it.");
  }
}
