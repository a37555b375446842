package org.taketally.publish;

/** Text typed by people, made safe for Markdown with tables. */
final class MarkdownText {

  private static final String SPECIAL = "\\`*_{}[]<>#|~&";

  private MarkdownText() {}

  /** Text that stays text: markup characters escaped, line ends and controls as spaces. */
  static String escape(String raw) {
    StringBuilder out = new StringBuilder(raw.length());
    raw.codePoints()
        .forEach(
            point -> {
              if (Character.isISOControl(point)) {
                out.append(' ');
                return;
              }
              if (SPECIAL.indexOf(point) >= 0) {
                out.append('\\');
              }
              out.appendCodePoint(point);
            });
    return out.toString();
  }
}
