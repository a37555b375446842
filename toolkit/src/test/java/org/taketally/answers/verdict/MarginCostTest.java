package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.taketally.wording.AnswerTable;
import org.taketally.wording.Wording;

class MarginCostTest {

  /**
   * Cost per success is c / p: from 80 %, 5 points less are 6.7 %, 10 points less 14.3 % dearer.
   */
  @Test
  void ten_points_from_eighty_make_a_tree_a_seventh_dearer() {
    assertThat(MarginCostCalculator.of(10, 0.8, 0.05).atMargin().dearerBy())
        .isCloseTo(1 / 15.0, within(1e-12));
    MarginCost cost = MarginCostCalculator.of(10, 0.8, 0.1);
    assertThat(cost.atMargin().dearerBy()).isCloseTo(1 / 7.0, within(1e-12));
    assertThat(Wording.of(cost).headline())
        .isEqualTo(
            "At a take of 80 % a saleable tree costs 12.50; 10 points less make it 14.29, 14 %"
                + " dearer.");
  }

  @Test
  void late_losses_make_every_tree_dearer_alike() {
    MarginCost cost =
        MarginCostCalculator.of(
            new MarginCostCalculator.Costs(10, 0.2, OptionalDouble.empty()), 0.8, 0.1);
    assertThat(cost.now().perTree()).isCloseTo(10 / (0.8 * 0.8), within(1e-12));
    assertThat(cost.atMargin().dearerBy()).isCloseTo(1 / 7.0, within(1e-12));
  }

  @Test
  void table_runs_from_no_drop_to_the_largest_below_the_take() {
    AnswerTable table = Wording.of(MarginCostCalculator.of(1, 0.12, 0.1)).table();
    assertThat(table.rows()).extracting(row -> row.get(0)).containsExactly(0.0, 0.02, 0.05, 0.1);
  }

  @Test
  void refuses_what_makes_no_sense() {
    assertThatThrownBy(() -> MarginCostCalculator.of(0, 0.8, 0.1))
        .hasMessage("the cost of a graft must be above 0, got 0.0");
    assertThatThrownBy(() -> MarginCostCalculator.of(1, 0.1, 0.1))
        .hasMessage("the margin must be above 0 and below the take (0.1), got 0.1");
    assertThatThrownBy(() -> MarginCostCalculator.of(1, 80, 0.1))
        .hasMessage("take must be above 0 and at most 1 (0.8 for 80 %), got 80.0");
  }
}
