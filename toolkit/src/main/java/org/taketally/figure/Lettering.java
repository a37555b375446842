package org.taketally.figure;

import java.util.List;

/**
 * A way of writing text in a figure. Text is always horizontal.
 *
 * @param size font size in the figure's units
 * @param colour a colour of {@link Palette}
 * @param bold whether in heavy weight
 */
record Lettering(double size, String colour, boolean bold) {

  static final Lettering TITLE = new Lettering(17, Palette.INK, true);
  static final Lettering SUBTITLE = new Lettering(13, Palette.SOFT_INK, false);
  static final Lettering BODY = new Lettering(13, Palette.INK, false);
  static final Lettering STRONG = new Lettering(13, Palette.INK, true);
  static final Lettering QUIET = new Lettering(12, Palette.SOFT_INK, false);
  static final Lettering HIGHLIGHT = new Lettering(13, Palette.BARK, true);

  /** Which point of the text the position means. */
  enum Anchor {
    START("start"),
    MIDDLE("middle"),
    END("end");

    private final String svg;

    Anchor(String svg) {
      this.svg = svg;
    }
  }

  double width(String text) {
    return TextWidth.of(text, size, bold);
  }

  String fit(String text, double room) {
    return TextWidth.fit(text, size, bold, room);
  }

  List<String> wrap(String text, double room) {
    return TextWidth.wrap(text, size, bold, room);
  }

  double lineHeight() {
    return Math.round(1.4 * size);
  }

  SvgElement at(double x, double baseline, Anchor anchor, String text) {
    SvgElement element =
        SvgElement.of("text", text)
            .with("x", x)
            .with("y", baseline)
            .with("font-size", size)
            .with("fill", colour);
    if (anchor != Anchor.START) {
      element.with("text-anchor", anchor.svg);
    }
    return bold ? element.with("font-weight", "600") : element;
  }

  SvgElement at(double x, double baseline, String text) {
    return at(x, baseline, Anchor.START, text);
  }
}
