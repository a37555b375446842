package org.taketally.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class TextWidthTest {

  /** Reference: DejaVu Sans 2.37 advances, H 0.752, a 0.613, l 0.278, 1 space 0.318 em. */
  @Test
  void widths_are_those_of_a_wide_sans_serif() {
    assertThat(TextWidth.of("Hal l", 100, false)).isCloseTo(75 + 61 + 28 + 32 + 28, within(1e-9));
    assertThat(TextWidth.of("H", 100, true)).isGreaterThan(TextWidth.of("H", 100, false));
  }

  @Test
  void fit_keeps_what_fits_and_cuts_the_rest_with_an_ellipsis() {
    assertThat(TextWidth.fit("Orrin", 13, false, 100)).isEqualTo("Orrin");
    String cut = TextWidth.fit("Halden seedling from the lower bench", 13, false, 100);

    assertThat(cut).startsWith("Halden").endsWith("…");
    assertThat(TextWidth.of(cut, 13, false)).isLessThanOrEqualTo(100);
  }

  @Test
  void fit_never_splits_a_character_outside_the_basic_plane() {
    assertThat(TextWidth.fit("🍐🍐🍐🍐", 10, false, 32)).isEqualTo("🍐🍐…");
  }

  @Test
  void wrap_breaks_at_spaces_but_not_before_a_percent_sign() {
    List<String> lines = TextWidth.wrap("likely 63 to 90 % of them", 10, false, 80);

    assertThat(lines).allSatisfy(l -> assertThat(TextWidth.of(l, 10, false)).isLessThan(80.001));
    assertThat(String.join(" ", lines)).contains("90\u00a0%");
    assertThat(TextWidth.wrap("", 10, false, 80)).containsExactly("");
  }
}
