package org.taketally.answers.counts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.taketally.answers.counts.MarginPower.Question;

/** Published values are in PublishedChecksTest; here are inverses, edges and refusals. */
class PowerTest {

  private static final DifferencePower DESIGN = DifferencePower.twoSided(0.05);

  @Test
  void size_gives_back_the_power_it_was_asked_for() {
    double grafts = DESIGN.withRatio(3).grafts(0.8, 0.7, 0.85);
    assertThat(DESIGN.withRatio(3).power(0.8, 0.7, grafts)).isCloseTo(0.85, within(1e-9));
    double take = DESIGN.higherTakeFound(0.7, 150, 0.8);
    assertThat(DESIGN.power(0.7, take, 150)).isCloseTo(0.8, within(1e-9));
    MarginPower same = new MarginPower(Question.MUCH_THE_SAME, 0.1, 0.05);
    assertThat(same.power(0.72, 0.7, same.grafts(0.72, 0.7, 0.9))).isCloseTo(0.9, within(1e-9));
  }

  /**
   * Equal takes: closed form n = (z_alpha + z_(beta/2))^2 * 2 p q / margin^2, Chow, Shao and Wang
   * (2008) section 4.2; R 4.2.2: (qnorm(.95) + qnorm(.9))^2 * 2 * .7 * .3 / .01.
   */
  @Test
  void much_the_same_with_equal_takes_is_the_closed_form() {
    MarginPower same = new MarginPower(Question.MUCH_THE_SAME, 0.1, 0.05);
    assertThat(same.grafts(0.7, 0.7, 0.8)).isCloseTo(359.681588728, within(1e-8));
  }

  @Test
  void no_difference_is_found_as_often_as_alpha_says() {
    assertThat(DESIGN.power(0.7, 0.7, 80)).isCloseTo(0.05, within(1e-14));
    assertThat(DifferencePower.oneSided(0.05).power(0.7, 0.7, 80)).isCloseTo(0.05, within(1e-14));
    assertThat(new MarginPower(Question.NOT_WORSE, 0.1, 0.05).power(0.6, 0.7, 400))
        .isCloseTo(0.05, within(1e-12));
  }

  @Test
  void much_the_same_has_no_chance_with_few_grafts() {
    assertThat(new MarginPower(Question.MUCH_THE_SAME, 0.1, 0.05).power(0.7, 0.7, 20)).isZero();
  }

  @Test
  void refuses_what_no_number_of_grafts_can_show() {
    assertThatThrownBy(() -> DESIGN.grafts(0.7, 0.7, 0.8))
        .hasMessage("no number of grafts finds a difference between equal takes (0.7)");
    assertThatThrownBy(
            () -> new MarginPower(Question.MUCH_THE_SAME, 0.1, 0.05).grafts(0.85, 0.7, 0.8))
        .hasMessage(
            "no number of grafts shows much the same by a margin of 0.1 when the true takes are"
                + " 0.85 and 0.7");
    assertThatThrownBy(() -> DESIGN.higherTakeFound(0.9, 10, 0.8))
        .hasMessage("10.0 grafts are too few to find even a take of 1 against 0.9 with chance 0.8");
    assertThatThrownBy(() -> DESIGN.power(1.2, 0.7, 10))
        .hasMessage("a supposed take must lie between 0 and 1, e.g. 0.7, got 1.2");
    assertThatThrownBy(() -> DESIGN.grafts(0.8, 0.7, 0.01))
        .hasMessage("the power wanted must lie between alpha (0.05) and 1, e.g. 0.8, got 0.01");
  }
}
