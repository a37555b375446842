package org.taketally.model.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** BFGS, Nocedal and Wright (2006), eq. 6.19; worked out by hand. */
class CurvatureMemoryTest {

  private static final double[][] UNIT = {{1, 0}, {0, 1}};

  /** I - ss'/s's + yy'/y's with s = (1, 0) and y = (3, 1). */
  @Test
  void the_curvature_explains_the_last_change_of_slope() {
    CurvatureMemory memory = new CurvatureMemory();
    memory.remember(new double[] {1, 0}, new double[] {3, 1});
    assertThat(memory.isEmpty()).isFalse();
    double[][] curvature = memory.correct(UNIT);
    assertThat(curvature[0]).containsExactly(new double[] {3, 1}, within(1e-15));
    assertThat(curvature[1]).containsExactly(new double[] {1, 4 / 3.0}, within(1e-15));
    assertThat(UNIT[0]).containsExactly(1, 0);
  }

  @Test
  void a_step_along_which_the_slope_rose_is_not_remembered() {
    CurvatureMemory memory = new CurvatureMemory();
    memory.remember(new double[] {1, 0}, new double[] {-1, 5});
    assertThat(memory.isEmpty()).isTrue();
  }

  @Test
  void only_the_last_eight_changes_count() {
    CurvatureMemory all = new CurvatureMemory();
    CurvatureMemory late = new CurvatureMemory();
    for (int i = 0; i < 9; i++) {
      double[] step = {Math.cos(i), Math.sin(i)};
      double[] lost = {(2 + i) * step[0], 3 * step[1]};
      all.remember(step, lost);
      if (i > 0) {
        late.remember(step, lost);
      }
    }
    assertThat(all.correct(UNIT)).isEqualTo(late.correct(UNIT));
    all.clear();
    assertThat(all.isEmpty()).isTrue();
  }
}
