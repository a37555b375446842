package org.taketally.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** What steers a display is written as a code, and comes back whole. */
class ControlSignsTest {

  private static final String PIECES = "aé\\u20E2\u202E\u2066\u001b\u200f\n\t=' |\r\u0000";

  @Test
  void what_looked_like_a_code_before_is_told_from_one() {
    assertThat(ControlSigns.reversible("Or\u202Erin")).isEqualTo("Or\\u202Erin");
    assertThat(ControlSigns.reversible("Or\\u202Erin")).isEqualTo("Or\\u005Cu202Erin");
  }

  @Test
  void every_text_comes_back_whole_and_steers_nothing_meanwhile() {
    Random random = new Random(15);
    for (int text = 0; text < 20_000; text++) {
      StringBuilder typed = new StringBuilder();
      for (int length = random.nextInt(14); length > 0; length--) {
        typed.append(PIECES.charAt(random.nextInt(PIECES.length())));
      }
      String written = ControlSigns.reversible(typed.toString());
      assertThat(ControlSigns.neutral(written)).isEqualTo(written);
      assertThat(ControlSigns.typed(written)).isEqualTo(typed.toString());
    }
  }
}
