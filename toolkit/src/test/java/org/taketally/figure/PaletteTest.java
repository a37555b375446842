package org.taketally.figure;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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

  /**
   * Pages show figures on dark ground by a filter; what it makes of the colours is worked out here.
   */
  @Test
  void text_and_marks_stand_out_where_a_page_is_dark() throws IOException {
    String paper = dark(Palette.PAPER);
    String shade = dark(Palette.SHADE);
    assertThat(ColourContrast.of(paper, "#ffffff")).isGreaterThan(12);
    for (String text : List.of(Palette.INK, Palette.SOFT_INK, Palette.BARK)) {
      assertThat(ColourContrast.of(dark(text), paper)).as(text).isGreaterThanOrEqualTo(4.5);
      assertThat(ColourContrast.of(dark(text), shade)).as(text).isGreaterThanOrEqualTo(4.5);
    }
    for (Mark mark : Mark.values()) {
      assertThat(ColourContrast.of(dark(mark.solid()), shade)).as(mark + "").isGreaterThan(3);
      assertThat(ColourContrast.of(dark(mark.soft()), paper)).as(mark + "").isGreaterThan(3);
    }
  }

  /**
   * A colour behind the page's filter.
   *
   * @see <a href="https://www.w3.org/TR/filter-effects-1/#invertEquivalent">invert, and below it
   *     hue-rotate</a>
   */
  private static String dark(String colour) throws IOException {
    double invert = inverted();
    int rgb = Integer.parseInt(colour.substring(1), 16);
    double[] channels = new double[3];
    for (int i = 0; i < 3; i++) {
      channels[i] = invert + (1 - 2 * invert) * (rgb >> (16 - 8 * i) & 255) / 255;
    }
    double[] weights = {0.213, 0.715, 0.072};
    double grey = 0;
    for (int i = 0; i < 3; i++) {
      grey += weights[i] * channels[i];
    }
    int turned = 0;
    for (double channel : channels) {
      double value = Math.max(0, Math.min(1, 2 * grey - channel)); // by 180 degrees
      turned = turned << 8 | (int) Math.round(255 * value);
    }
    return "#%06x".formatted(turned);
  }

  private static double inverted() throws IOException {
    try (InputStream css =
        PaletteTest.class.getResourceAsStream("/org/taketally/publish/page.css")) {
      Matcher filter =
          Pattern.compile("figure svg \\{ filter: invert\\(([\\d.]+)\\) hue-rotate\\(180deg\\)")
              .matcher(new String(css.readAllBytes(), StandardCharsets.UTF_8));
      assertThat(filter.find()).isTrue();
      return Double.parseDouble(filter.group(1));
    }
  }

  @Test
  void contrast_of_black_on_white_is_21() {
    assertThat(ColourContrast.of("#000000", "#ffffff")).isEqualTo(21);
  }
}
