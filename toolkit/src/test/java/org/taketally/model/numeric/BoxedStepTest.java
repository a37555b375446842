package org.taketally.model.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Two parameters that pull each other along, B = [1, -0.9; -0.9, 1]; worked out by hand. */
class BoxedStepTest {

  private static final double[][] CURVATURE = {{1, -0.9}, {-0.9, 1}};
  private static final double[] FLOOR = {0, -10};
  private static final double[] ROOF = {10, 10};

  private static BoxedStep step(double... slope) {
    return BoxedStep.of(CURVATURE, slope, FLOOR, ROOF);
  }

  /** At its floor and falling, until the other moves: B d = g at (0.8, 0.91) / 0.19. */
  @Test
  void a_parameter_at_its_bound_leaves_it_where_others_pull_it_away() {
    BoxedStep step = step(-0.1, 1);
    assertThat(step.step()).containsExactly(new double[] {0.8 / 0.19, 0.91 / 0.19}, within(1e-12));
    assertThat(step.gain()).isCloseTo((-0.08 + 0.91) / 0.19 / 2, within(1e-12));
  }

  /** Left at the floor its slope is -0.1 + 0.9 * 0.05 = -0.055. */
  @Test
  void a_parameter_at_its_bound_stays_where_nothing_pulls_it_away() {
    BoxedStep step = step(-0.1, 0.05);
    assertThat(step.step()).containsExactly(new double[] {0, 0.05}, within(1e-15));
    assertThat(step.gain()).isCloseTo(0.05 * 0.05 / 2, within(1e-15));
  }

  /** Unbounded it would end at (21.9, 20.7): the first stops at 10, the second at 1 + 0.9 * 10. */
  @Test
  void a_parameter_that_meets_its_bound_stops_there_and_the_others_go_on() {
    BoxedStep step = step(3.3, 1);
    assertThat(step.step()).containsExactly(new double[] {10, 10}, within(1e-12));
    assertThat(step(3.3, -1).step()).containsExactly(new double[] {10, 8}, within(1e-12));
  }

  @Test
  void where_nothing_can_move_nothing_is_gained() {
    BoxedStep step =
        BoxedStep.of(CURVATURE, new double[] {-1, 2}, new double[] {0, 0}, new double[] {0, 0});
    assertThat(step.step()).containsExactly(0, 0);
    assertThat(step.gain()).isZero();
  }
}
