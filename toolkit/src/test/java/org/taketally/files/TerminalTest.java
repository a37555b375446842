package org.taketally.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringWriter;
import org.junit.jupiter.api.Test;

/** Nothing in the records can steer a terminal. */
class TerminalTest {

  private static String printed(String text) {
    StringWriter out = new StringWriter();
    try (Terminal terminal = Terminal.on(out)) {
      terminal.print(text);
    }
    return out.toString();
  }

  @Test
  void control_and_direction_signs_are_shown_as_codes() {
    assertThat(printed("a\u001b[2Jb\u0007c\rd\u009bm\u202Ee\u2066f\u007f\u200f"))
        .isEqualTo("a\\u001B[2Jb\\u0007c\\u000Dd\\u009Bm\\u202Ee\\u2066f\\u007F\\u200F");
  }

  @Test
  void line_feeds_tabs_and_letters_of_all_scripts_stay() {
    String text = "Größe\tשלום\n数 \ud83c\udf31 é\n";
    assertThat(printed(text)).isEqualTo(text);
  }

  @Test
  void every_control_sign_is_caught() {
    for (char sign = 0; sign < 0x2100; sign++) {
      boolean control = Character.isISOControl(sign) && sign != '\n' && sign != '\t';
      byte direction = Character.getDirectionality(sign);
      boolean turns =
          direction >= Character.DIRECTIONALITY_LEFT_TO_RIGHT_EMBEDDING
              && direction != Character.DIRECTIONALITY_NONSPACING_MARK
              && direction != Character.DIRECTIONALITY_BOUNDARY_NEUTRAL;
      if (control || turns) {
        assertThat(printed("x" + sign)).isEqualTo("x\\u%04X".formatted((int) sign));
      }
    }
  }

  @Test
  void only_the_program_itself_goes_back_to_the_start_of_a_line() {
    StringWriter out = new StringWriter();
    try (Terminal terminal = Terminal.on(out)) {
      terminal.print("cell 1\r");
      terminal.restartLine();
      terminal.print("cell 2");
    }
    assertThat(out.toString()).isEqualTo("cell 1\\u000D\rcell 2");
  }
}
