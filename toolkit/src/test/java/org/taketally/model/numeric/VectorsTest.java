package org.taketally.model.numeric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Products summed side by side against the plain sum; whole numbers, so that both are exact. */
class VectorsTest {

  private static final Random RANDOM = new Random(4);

  private static double[] whole(int count) {
    return RANDOM.ints(count, -50, 50).asDoubleStream().toArray();
  }

  @Test
  void products_are_the_plain_sum_of_any_part() {
    for (int count = 0; count < 14; count++) {
      for (int from = 0; from < 3; from++) {
        double[] a = whole(count + from + 2);
        double[] b = whole(count + 7);
        double sum = 0;
        for (int i = 0; i < count; i++) {
          sum += a[from + i] * b[5 + i];
        }
        assertThat(Vectors.dot(a, from, b, 5, count)).as("%d from %d", count, from).isEqualTo(sum);
      }
    }
    assertThat(Vectors.dot(new double[] {1, 2, 3}, new double[] {4, 5, 6})).isEqualTo(32);
  }

  @Test
  void places_are_looked_up() {
    for (int from = 0; from < 3; from++) {
      for (int to = from; to < 16; to++) {
        double[] a = whole(16);
        double[] b = whole(9);
        int[] place = RANDOM.ints(16, 0, 9).toArray();
        double sum = 0;
        for (int i = from; i < to; i++) {
          sum += a[i] * b[place[i]];
        }
        assertThat(Vectors.dotAt(a, b, place, from, to)).as("%d to %d", from, to).isEqualTo(sum);
      }
    }
  }

  @Test
  void sums_leave_both_as_they_were() {
    double[] a = {1, 2};
    double[] b = {10, 20};
    assertThat(Vectors.plus(a, -2, b)).containsExactly(-19, -38);
    assertThat(Arrays.asList(a[0], a[1], b[0], b[1])).containsExactly(1.0, 2.0, 10.0, 20.0);
  }
}
