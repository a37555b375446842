package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;

/**
 * How wide a text gets, without knowing the reader's font: widths of a wide sans-serif (DejaVu
 * Sans, measured), so that the usual system fonts stay inside.
 */
final class TextWidth {

  /** Advance of U+0020 to U+007E in hundredths of an em, regular weight. */
  private static final int[] ADVANCES = {
    32, 40, 46, 84, 64, 95, 78, 27, 39, 39, 50, 84, 32, 36, 32, 34, // space to /
    64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 34, 34, 84, 84, 84, 53, // 0 to ?
    100, 68, 69, 70, 77, 63, 58, 77, 75, 29, 29, 66, 56, 86, 75, 79, // @ to O
    60, 79, 69, 63, 61, 73, 68, 99, 69, 61, 69, 39, 34, 39, 84, 50, // P to _
    50, 61, 63, 55, 63, 62, 35, 63, 63, 28, 28, 58, 28, 97, 63, 61, // ` to o
    63, 63, 41, 52, 39, 63, 59, 82, 59, 59, 52, 64, 34, 64, 84 // p to ~
  };

  private static final double LATIN_EM = 0.8;
  private static final double WIDE_EM = 1.05;
  private static final int FIRST_WIDE = 0x0590;
  private static final double BOLD_FACTOR = 1.13;
  private static final String ELLIPSIS = "…";
  private static final char NO_BREAK_SPACE = '\u00a0';

  private TextWidth() {}

  /** Width in the units of the font size. */
  static double of(String text, double fontSize, boolean bold) {
    double em = text.codePoints().mapToDouble(TextWidth::advance).sum();
    return em * fontSize * (bold ? BOLD_FACTOR : 1);
  }

  private static double advance(int point) {
    if (point >= ' ' && point <= '~') {
      return ADVANCES[point - ' '] / 100.0;
    }
    if (point == NO_BREAK_SPACE) {
      return ADVANCES[0] / 100.0;
    }
    return point < FIRST_WIDE || (point >= 0x2010 && point <= 0x2027) ? LATIN_EM : WIDE_EM;
  }

  /** The text, or its beginning and an ellipsis, not wider than {@code room}. */
  static String fit(String text, double fontSize, boolean bold, double room) {
    if (of(text, fontSize, bold) <= room) {
      return text;
    }
    int[] points = text.codePoints().toArray();
    int kept = points.length;
    while (kept > 1 && of(new String(points, 0, kept) + ELLIPSIS, fontSize, bold) > room) {
      kept--;
    }
    return new String(points, 0, kept).stripTrailing() + ELLIPSIS;
  }

  /**
   * The text broken at spaces into lines not wider than {@code room}. A longer word is cut; a
   * number stays with its percent sign.
   */
  static List<String> wrap(String text, double fontSize, boolean bold, double room) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : text.strip().replace(" %", NO_BREAK_SPACE + "%").split("\\s+")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && of(longer, fontSize, bold) > room) {
        lines.add(fit(line, fontSize, bold, room));
        line = word;
      } else {
        line = longer;
      }
    }
    lines.add(fit(line, fontSize, bold, room));
    return lines;
  }
}
