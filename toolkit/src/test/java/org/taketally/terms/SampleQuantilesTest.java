package org.taketally.terms;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SampleQuantilesTest {

  /** By hand: of 1, 2, 4, 8 type 7 puts 0.4 at place 1.2, type 5 at 1.1, type 1 at the second. */
  @Test
  void agree_with_their_definitions() {
    double[] sorted = {1, 2, 4, 8};
    assertThat(SampleQuantiles.of(sorted, 0.4)).isCloseTo(2.4, within(1e-14));
    assertThat(SampleQuantiles.ofSteps(sorted, 0.4)).isCloseTo(2.2, within(1e-14));
    assertThat(SampleQuantiles.occurring(sorted, new long[] {1, 2, 3, 4}, 0.4)).isEqualTo(2);
    assertThat(SampleQuantiles.of(sorted, 0)).isEqualTo(1);
    assertThat(SampleQuantiles.of(sorted, 1)).isEqualTo(8);
    assertThat(SampleQuantiles.ofSteps(sorted, 0.01)).isEqualTo(1);
    assertThat(SampleQuantiles.ofSteps(sorted, 0.99)).isEqualTo(8);
  }

  /** A value that counts three times is the same as three values alike. */
  @Test
  void counting_is_the_same_as_writing_values_out() {
    SplittableRandom random = new SplittableRandom(5);
    for (int round = 0; round < 200; round++) {
      double[] values = new double[1 + random.nextInt(6)];
      Arrays.setAll(values, i -> random.nextDouble());
      Arrays.sort(values);
      long[] upTo = new long[values.length];
      double[] all = new double[0];
      for (int i = 0; i < values.length; i++) {
        int times = 1 + random.nextInt(4);
        all = Arrays.copyOf(all, all.length + times);
        Arrays.fill(all, all.length - times, all.length, values[i]);
        upTo[i] = all.length;
      }
      double share = random.nextDouble();
      assertThat(SampleQuantiles.of(values, upTo, share)).isEqualTo(SampleQuantiles.of(all, share));
      int place = (int) Math.ceil(share * all.length) - 1;
      assertThat(SampleQuantiles.occurring(values, upTo, share)).isEqualTo(all[Math.max(0, place)]);
    }
  }
}
