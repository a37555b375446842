package org.taketally.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Figures as PNG pictures: marks stand where the figure says, in its colours. */
class FigurePngTest {

  private static final String FIGURE =
      """
      <svg xmlns="http://www.w3.org/2000/svg" width="100" height="60"><title>t</title>
      <rect x="0" y="0" width="100" height="60" fill="#fcfbf7"/>
      <rect x="10" y="10" width="20" height="10" fill="#2f6f4f"/>
      <g><circle cx="60" cy="20" r="6" fill="#9a3d14"/></g>
      <polygon points="80,10 90,10 90,20 80,20" fill="#7a5c0a"/>
      <line x1="10" y1="40" x2="90" y2="40" stroke="#1f2a25" stroke-width="2"/>
      <path d="M10 50 L50 50 M60 50 L90 50" fill="none" stroke="#54605a" stroke-width="2"/>
      <text x="50" y="35" font-size="10" fill="#000000" text-anchor="middle">take</text>
      </svg>
      """;

  private static int[] colour(BufferedImage image, double x, double y) {
    int rgb = image.getRGB((int) (2 * x), (int) (2 * y));
    return new int[] {rgb >> 16 & 0xff, rgb >> 8 & 0xff, rgb & 0xff};
  }

  @Test
  void marks_stand_in_their_places_and_colours() throws Exception {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(FigurePng.of(FIGURE)));
    assertThat(image.getWidth()).isEqualTo(200);
    assertThat(image.getHeight()).isEqualTo(120);
    assertThat(colour(image, 5, 5)).containsExactly(0xfc, 0xfb, 0xf7);
    assertThat(colour(image, 20, 15)).containsExactly(0x2f, 0x6f, 0x4f);
    assertThat(colour(image, 60, 20)).containsExactly(0x9a, 0x3d, 0x14);
    assertThat(colour(image, 85, 15)).containsExactly(0x7a, 0x5c, 0x0a);
    assertThat(colour(image, 70, 40)).containsExactly(0x1f, 0x2a, 0x25);
    assertThat(colour(image, 30, 50)).containsExactly(0x54, 0x60, 0x5a);
    assertThat(colour(image, 55, 50)).as("between two lines").containsExactly(0xfc, 0xfb, 0xf7);
  }

  @Test
  void words_are_drawn() throws Exception {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(FigurePng.of(FIGURE)));
    int dark = 0;
    for (int x = 80; x < 120; x++) {
      for (int y = 50; y < 72; y++) {
        dark += (image.getRGB(x, y) >> 16 & 0xff) < 100 ? 1 : 0;
      }
    }
    assertThat(dark).isGreaterThan(20);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<svg",
        "<p/>",
        "<svg/>",
        "<svg width=\"10\" height=\"10\"><image/></svg>",
        "<!DOCTYPE svg [<!ENTITY a SYSTEM \"file:///etc/passwd\">]><svg width=\"1\" height=\"1\"/>"
      })
  void what_is_no_figure_of_ours_is_refused(String svg) {
    assertThatThrownBy(() -> FigurePng.of(svg)).isInstanceOf(IllegalArgumentException.class);
  }
}
