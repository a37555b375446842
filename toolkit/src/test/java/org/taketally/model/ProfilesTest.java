package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.taketally.model.compare.Profiles;
import org.taketally.terms.Interval;

/** Reference: lme4 1.1-31, confint(method = "profile"), src/test/r/intervals.R. */
class ProfilesTest {

  private static final TakeFit FIT =
      TakeModel.ofTakes().adjustFor("period").varyBy("herd").fit(PublishedMixedModelTest.cbpp());

  /** lme4 interpolates its profile, hence 5e-4. */
  @Test
  void fixed_effects_agree_with_lme4() {
    double[][] expected = {
      {-1.90115611, -0.94779139},
      {-1.61667866, -0.40784052},
      {-1.80091763, -0.51161031},
      {-2.50060071, -0.80083104}
    };
    for (int j = 0; j < expected.length; j++) {
      Interval interval = Profiles.of(FIT).fixed(j, 0.95);
      assertThat(interval.low()).isCloseTo(expected[j][0], within(5e-4));
      assertThat(interval.high()).isCloseTo(expected[j][1], within(5e-4));
    }
  }

  @Test
  void standard_deviation_agrees_with_lme4() {
    Interval interval = Profiles.of(FIT).standardDeviation("herd", 0.95);
    assertThat(interval.low()).isCloseTo(0.34609446, within(5e-4));
    assertThat(interval.high()).isCloseTo(1.09988190, within(5e-4));
  }
}
