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
        assertThat(contrast(text, ground)).as(text + " on " + ground).isGreaterThanOrEqualTo(4.5);
      }
    }
  }

  @Test
  void marks_and_intervals_stand_out_from_paper_and_marks_from_shade_too() {
    for (Mark mark : Mark.values()) {
      assertThat(contrast(mark.solid(), Palette.PAPER)).as(mark + "").isGreaterThanOrEqualTo(3);
      assertThat(contrast(mark.solid(), Palette.SHADE)).as(mark + "").isGreaterThanOrEqualTo(3);
      assertThat(contrast(mark.soft(), Palette.PAPER)).as(mark + "").isGreaterThanOrEqualTo(3);
    }
    assertThat(contrast(Palette.SOFT_INK, Palette.SHADE)).isGreaterThanOrEqualTo(3);
    assertThat(contrast(Palette.LEAF_SOFT, Palette.PAPER)).isGreaterThanOrEqualTo(3);
  }

  @Test
  void contrast_of_black_on_white_is_21() {
    assertThat(contrast("#000000", "#ffffff")).isEqualTo(21);
  }

  static double contrast(String one, String other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  private static double luminance(String colour) {
    int rgb = Integer.parseInt(colour.substring(1), 16);
    return 0.2126 * linear(rgb >> 16)
        + 0.7152 * linear(rgb >> 8 & 255)
        + 0.0722 * linear(rgb & 255);
  }

  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
