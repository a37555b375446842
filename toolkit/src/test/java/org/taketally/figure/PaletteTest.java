package org.taketally.figure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** WCAG 2.2, success criteria 1.4.3 (text, 4.5:1) and 1.4.11 (graphics, 3:1). */
class PaletteTest {

  @Test
  void text_stands_out_from_every_ground_it_is_written_on() {
    for (String ground : List.of(Palette.PAPER, Palette.SHADE)) {
      for (String text : List.of(Palette.INK, Palette.SOFT_INK, Palette.BARK)) {
        assertThat(ColourContrast.of(text, ground))
            .as(text + " on " + ground)
            .isGreaterThanOrEqualTo(4.5);
      }
    }
  }

  @Test
  void marks_and_intervals_stand_out_from_paper_and_marks_from_shade_too() {
    for (Mark mark : Mark.values()) {
      assertThat(ColourContrast.of(mark.solid(), Palette.PAPER))
          .as(mark + "")
          .isGreaterThanOrEqualTo(3);
      assertThat(ColourContrast.of(mark.solid(), Palette.SHADE))
          .as(mark + "")
          .isGreaterThanOrEqualTo(3);
      assertThat(ColourContrast.of(mark.soft(), Palette.PAPER))
          .as(mark + "")
          .isGreaterThanOrEqualTo(3);
    }
    assertThat(ColourContrast.of(Palette.SOFT_INK, Palette.SHADE)).isGreaterThanOrEqualTo(3);
    assertThat(ColourContrast.of(Palette.LEAF_SOFT, Palette.PAPER)).isGreaterThanOrEqualTo(3);
  }

  @Test
  void contrast_of_black_on_white_is_21() {
    assertThat(ColourContrast.of("#000000", "#ffffff")).isEqualTo(21);
  }
}
