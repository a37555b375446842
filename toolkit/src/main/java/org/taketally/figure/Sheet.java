package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.taketally.figure.Lettering.Anchor;

/**
 * The paper a figure is drawn on, filled from the top down: title, subtitle, key, body, notes. It
 * carries the name and description that screen readers speak.
 */
final class Sheet {

  private static final String FONTS =
      "system-ui, -apple-system, Segoe UI, Roboto, Helvetica Neue, Arial, DejaVu Sans, sans-serif";
  private static final double WIDE_MARGIN = 22;
  private static final double NARROW_MARGIN = 14;
  private static final double KEY_GAP = 18;
  private static final double KEY_LINE = 21;

  private final FigureSize size;
  private final String title;
  private final String description;
  private final List<SvgElement> drawn = new ArrayList<>();
  private double y;

  Sheet(FigureSize size, String title, String subtitle, String description) {
    this.size = size;
    this.title = title;
    this.description = description;
    this.y = margin() + 4;
    lines(Lettering.TITLE, title);
    y += 1;
    lines(Lettering.SUBTITLE, subtitle);
    y += 8;
  }

  /** An entry of the key: a sample and what it means. */
  record KeyEntry(Sample sample, String words) {
    static KeyEntry of(Mark mark, String words) {
      return new KeyEntry((x, y) -> mark.at(x, y), words);
    }

    static KeyEntry interval(Mark mark, double thickness, String words) {
      return new KeyEntry((x, y) -> mark.interval(x - 7, x + 7, y, thickness), words);
    }
  }

  /** Draws a sample of a mark around a point, about 18 wide. */
  interface Sample {
    SvgElement at(double x, double y);
  }

  FigureSize size() {
    return size;
  }

  double margin() {
    return size.narrow() ? NARROW_MARGIN : WIDE_MARGIN;
  }

  double left() {
    return margin();
  }

  double right() {
    return size.width() - margin();
  }

  /** The first free height. */
  double y() {
    return y;
  }

  void moveTo(double newY) {
    y = newY;
  }

  Sheet add(SvgElement... elements) {
    drawn.addAll(List.of(elements));
    return this;
  }

  /** Wrapped text over the whole width. */
  void lines(Lettering lettering, String text) {
    if (text.isBlank()) {
      return;
    }
    for (String line : lettering.wrap(text, right() - left())) {
      y += lettering.lineHeight();
      add(lettering.at(left(), y - 0.3 * lettering.size(), line));
    }
  }

  /** The key: samples with words, flowing over as many lines as needed. */
  void key(List<KeyEntry> entries) {
    double x = left();
    for (KeyEntry entry : entries) {
      String words = Lettering.QUIET.fit(entry.words(), right() - left() - 24);
      double width = 24 + Lettering.QUIET.width(words);
      if (x > left() && x + width > right()) {
        x = left();
        y += KEY_LINE;
      }
      add(entry.sample().at(x + 9, y + KEY_LINE / 2));
      add(Lettering.QUIET.at(x + 24, y + KEY_LINE / 2 + 4, words));
      x += width + KEY_GAP;
    }
    y += entries.isEmpty() ? 0 : KEY_LINE + 6;
  }

  void note(String text) {
    lines(Lettering.QUIET, text);
  }

  /** The whole picture. */
  String svg() {
    double height = Math.ceil(y + margin());
    String content = size + title + description + drawn.size();
    String id = "f" + String.format(Locale.ROOT, "%08x", content.hashCode());
    SvgElement root =
        SvgElement.of("svg")
            .with("xmlns", "http://www.w3.org/2000/svg")
            .with("viewBox", "0 0 " + size.width() + " " + SvgElement.number(height))
            .with("width", size.width())
            .with("height", height)
            .with("style", "max-width:100%;height:auto")
            .with("role", "img")
            .with("aria-labelledby", id + "t " + id + "d")
            .with("font-family", FONTS);
    root.add(SvgElement.of("title", title).with("id", id + "t"));
    root.add(SvgElement.of("desc", description).with("id", id + "d"));
    root.add(
        SvgElement.rectangle(0.5, 0.5, size.width() - 1, height - 1)
            .with("rx", 8)
            .with("fill", Palette.PAPER)
            .with("stroke", Palette.RULE));
    return root.addAll(drawn).render() + "\n";
  }

  /** Text that ends at the right edge. */
  void rightText(Lettering lettering, double baseline, String text) {
    add(lettering.at(right(), baseline, Anchor.END, text));
  }
}
