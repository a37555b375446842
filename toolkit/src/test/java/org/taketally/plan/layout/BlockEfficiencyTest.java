package org.taketally.plan.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Published values are in PublishedChecksTest. */
class BlockEfficiencyTest {

  @Test
  void complete_blocks_lose_nothing() {
    BlockEfficiency complete =
        BlockEfficiency.of(List.of(List.of("A", "B", "C"), List.of("C", "A", "B")));
    assertThat(complete.efficiency()).isCloseTo(1, within(1e-12));
    assertThat(complete.worst()).isCloseTo(1, within(1e-12));
  }

  /** Every pair meets once in blocks of two: by the formula of balanced blocks. */
  @Test
  void balanced_blocks_reach_their_formula() {
    BlockEfficiency pairs =
        BlockEfficiency.of(List.of(List.of("A", "B"), List.of("B", "C"), List.of("C", "A")));
    assertThat(pairs.efficiency()).isCloseTo(BlockEfficiency.ifBalanced(3, 2), within(1e-12));
    assertThat(BlockEfficiency.ifBalanced(3, 2)).isCloseTo(0.75, within(1e-15));
  }

  @Test
  void treatments_that_never_meet_leave_nothing() {
    BlockEfficiency apart =
        BlockEfficiency.of(
            List.of(List.of("A", "B"), List.of("B", "A"), List.of("C", "D"), List.of("D", "C")));
    assertThat(apart).isEqualTo(new BlockEfficiency(0, 0));
  }

  /** Unequal replicates and blocks: by hand, A-B twice and B-C once in blocks of two. */
  @Test
  void unequal_replicates_are_weighed() {
    BlockEfficiency unequal =
        BlockEfficiency.of(List.of(List.of("A", "B"), List.of("A", "B"), List.of("B", "C")));
    // the scaled matrix has eigenvalues 0, 1/2 and 1
    assertThat(unequal.worst()).isCloseTo(0.5, within(1e-12));
    assertThat(unequal.efficiency()).isCloseTo(2 / (1 / 0.5 + 1 / 1.0), within(1e-12));
  }

  @Test
  void refuses_impossible_sizes() {
    assertThatThrownBy(() -> BlockEfficiency.of(List.of(List.of("A", "A"))))
        .hasMessage("a layout compares at least two treatments, got [A]");
    assertThatThrownBy(() -> BlockEfficiency.ifBalanced(4, 5))
        .hasMessage("blocks hold 2 to 4 (treatments) plots, got 5");
    assertThatThrownBy(() -> BlockEfficiency.mostIfResolvable(15, 2, 4))
        .hasMessage(
            "a resolvable design needs 2 replicates or more and blocks that divide the treatments,"
                + " got 2 replicates, 15 treatments in blocks of 4");
  }
}
