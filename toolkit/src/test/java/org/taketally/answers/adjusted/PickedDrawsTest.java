package org.taketally.answers.adjusted;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.SixBeds;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

class PickedDrawsTest {

  private static final int[] TAKES = {155, 130, 148, 118, 132, 105};

  private static TakeFit sixBeds() {
    return TakeModel.ofTakes().varyBy("block").adjustFor("rootstock").fit(SixBeds.of(TAKES));
  }

  @Test
  void equal_weights_pick_every_draw_once() {
    PickedDraws picked = PickedDraws.of(new double[] {-3, -3, -3, -3});
    assertThat(picked.numbers()).containsExactly(0, 1, 2, 3);
    assertThat(picked.effective()).isCloseTo(4, within(1e-12));
  }

  @Test
  void a_draw_that_outweighs_all_others_leaves_one() {
    PickedDraws picked = PickedDraws.of(new double[] {0, -800, 5, -800});
    assertThat(picked.numbers()).containsExactly(2);
    assertThat(picked.effective()).isCloseTo(1, within(0.02));
  }

  @Test
  void picked_draws_say_what_draws_under_the_other_belief_say() {
    AnswerOptions options = AnswerOptions.defaults().withDraws(8000);
    MarginalTakes usual = MarginalTakes.of(sixBeds(), options);
    for (double scale : new double[] {0.5, 2}) {
      MarginalTakes fresh = MarginalTakes.of(sixBeds(), options.withPriorScale(scale));
      MarginalTakes picked = usual.withPriorScale(options, scale).orElseThrow();
      assertThat(mean(picked.draws().sds("block")))
          .isCloseTo(
              mean(fresh.draws().sds("block")), within(0.04 * mean(fresh.draws().sds("block"))));
      assertThat(width(picked)).isCloseTo(width(fresh), within(0.06 * width(fresh)));
      assertThat(mean(usual.draws().sds("block")))
          .isNotCloseTo(
              mean(fresh.draws().sds("block")), within(0.05 * mean(fresh.draws().sds("block"))));
    }
  }

  @Test
  void too_few_draws_that_count_are_not_used() {
    AnswerOptions options = AnswerOptions.defaults();
    assertThat(MarginalTakes.of(sixBeds(), options).withPriorScale(options, 0.01)).isEmpty();
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElseThrow();
  }

  /** Width of the 90 % range of the difference. */
  private static double width(MarginalTakes takes) {
    double[] differences =
        Arrays.stream(takes.takes("rootstock")).mapToDouble(t -> t[0] - t[1]).sorted().toArray();
    return differences[(int) (0.95 * differences.length)]
        - differences[(int) (0.05 * differences.length)];
  }
}
