package org.taketally.answers.counts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.answers.survival.FollowUp;
import org.taketally.answers.survival.HazardRatio;
import org.taketally.answers.survival.LikelyHazardRatio;
import org.taketally.answers.survival.Watched;

/** Published values: see SurvivalChecks. */
class LikelyHazardRatioTest {

  private static final List<FollowUp> NONE_LOST = List.of(new FollowUp(90, false, 20));
  private static final List<FollowUp> SOME_LOST =
      List.of(new FollowUp(30, true, 3), new FollowUp(60, true, 2), new FollowUp(90, false, 15));

  private static List<Watched> lots(List<FollowUp> first, List<FollowUp> second) {
    return List.of(Watched.of("Linnock", first), Watched.of("Orrin", second));
  }

  /** With many losses a posterior is normal about the estimate. */
  @Test
  void nears_the_estimate_when_losses_are_many() {
    List<Watched> many =
        lots(
            List.of(new FollowUp(30, true, 3000), new FollowUp(60, false, 7000)),
            List.of(new FollowUp(30, true, 2000), new FollowUp(60, false, 8000)));
    HazardRatio best = HazardRatio.of(many, HazardRatio.Ties.BRESLOW);
    LikelyHazardRatio likely = LikelyHazardRatio.of(many, 1000, 0.95);
    assertThat(likely.logRatio()).isCloseTo(best.logRatio(), within(5e-4));
    assertThat(likely.logRatioSd()).isCloseTo(best.standardError(), within(5e-5));
    assertThat(likely.interval().low()).isCloseTo(best.interval(0.95).low(), within(2e-3));
    assertThat(likely.interval().high()).isCloseTo(best.interval(0.95).high(), within(2e-3));
  }

  @Test
  void has_a_range_where_one_lot_had_no_loss() {
    List<Watched> lots = lots(NONE_LOST, SOME_LOST);
    assertThatThrownBy(() -> HazardRatio.of(lots, HazardRatio.Ties.BRESLOW))
        .isInstanceOf(ArithmeticException.class);
    LikelyHazardRatio likely = LikelyHazardRatio.of(lots, 2, 0.95);
    assertThat(likely.interval().low()).isPositive().isLessThan(0.05);
    assertThat(likely.interval().high()).isBetween(0.2, 1.2);
    LikelyHazardRatio surer = LikelyHazardRatio.of(lots, 1, 0.95);
    assertThat(surer.logRatio()).isGreaterThan(likely.logRatio()).isNegative();
  }

  @Test
  void swapping_the_lots_mirrors_it() {
    LikelyHazardRatio one = LikelyHazardRatio.of(lots(NONE_LOST, SOME_LOST), 2, 0.9);
    LikelyHazardRatio other = LikelyHazardRatio.of(lots(SOME_LOST, NONE_LOST), 2, 0.9);
    assertThat(other.logRatio()).isCloseTo(-one.logRatio(), within(1e-8));
    assertThat(other.logRatioSd()).isCloseTo(one.logRatioSd(), within(1e-8));
    assertThat(other.interval().low() * one.interval().high()).isCloseTo(1, within(1e-6));
  }

  @Test
  void refuses_what_has_no_answer() {
    assertThatThrownBy(() -> LikelyHazardRatio.of(lots(NONE_LOST, NONE_LOST), 2, 0.95))
        .hasMessage("no hazard ratio: nothing was lost while both were watched");
    assertThatThrownBy(() -> LikelyHazardRatio.of(lots(NONE_LOST, SOME_LOST), 0, 0.95))
        .hasMessage("the prior's deviation must be above 0, got 0.0");
  }
}
