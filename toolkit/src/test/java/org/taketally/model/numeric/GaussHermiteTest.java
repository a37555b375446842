package org.taketally.model.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Closed forms: roots of He2, He3 and He4; Abramowitz and Stegun (1972), section 25.4.46. */
class GaussHermiteTest {

  private static void agrees(GaussHermite rule, double[] nodes, double[] weights) {
    assertThat(rule.nodes()).containsExactly(nodes, within(1e-13));
    assertThat(rule.weights()).containsExactly(weights, within(1e-13));
    for (int i = 0; i < nodes.length; i++) {
      assertThat(Math.exp(rule.logWeights()[i] - nodes[i] * nodes[i] / 2))
          .isCloseTo(weights[i], within(1e-13));
    }
  }

  @Test
  void rules_of_one_to_four_nodes_are_those_of_the_roots_in_closed_form() {
    agrees(GaussHermite.of(1), new double[] {0}, new double[] {1});
    agrees(GaussHermite.of(2), new double[] {1, -1}, new double[] {0.5, 0.5});
    double root3 = Math.sqrt(3);
    agrees(
        GaussHermite.of(3),
        new double[] {root3, 0, -root3},
        new double[] {1 / 6.0, 2 / 3.0, 1 / 6.0});
    double root6 = Math.sqrt(6);
    double far = Math.sqrt(3 + root6);
    double near = Math.sqrt(3 - root6);
    double less = (3 - root6) / 12;
    double more = (3 + root6) / 12;
    agrees(
        GaussHermite.of(4),
        new double[] {far, near, -near, -far},
        new double[] {less, more, more, less});
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 10, 15, 20, 25, 31, 40, 50})
  void nodes_fall_and_weights_add_up_to_one(int count) {
    GaussHermite rule = GaussHermite.of(count);
    double sum = 0;
    double variance = 0;
    for (int i = 0; i < count; i++) {
      sum += rule.weights()[i];
      variance += rule.weights()[i] * rule.nodes()[i] * rule.nodes()[i];
      assertThat(i == 0 || rule.nodes()[i] < rule.nodes()[i - 1]).isTrue();
    }
    assertThat(sum).isCloseTo(1, within(1e-12));
    assertThat(variance).isCloseTo(count == 1 ? 0 : 1, within(1e-12));
  }

  /** Moments of N(1, 4): 1 + 6 * 4 + 3 * 16 = 73 of the fourth power; the third 1 + 3 * 4 = 13. */
  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5, 8, 15})
  void averages_hold_every_node_once(int count) {
    GaussHermite rule = GaussHermite.of(count);
    assertThat(rule.average(1, 2, x -> x * x * x * x)).isCloseTo(73, within(1e-10));
    assertThat(rule.average(1, 2, x -> x * x * x)).isCloseTo(13, within(1e-11));
    assertThat(rule.average(7, 2, x -> 1)).isCloseTo(1, within(1e-13));
  }
}
