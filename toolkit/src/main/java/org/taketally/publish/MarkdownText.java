package org.taketally.publish;

import org.taketally.files.ControlSigns;

/** Text typed by people, made safe for Markdown with tables. */
final class MarkdownText {

  private static final String SPECIAL = "\\`*_{}[]<>#|~&";

  private MarkdownText() {}

  /**
   * Text that stays text: markup characters escaped, line ends, controls and turns of direction as
   * spaces.
   */
  static String escape(String raw) {
    StringBuilder out = new StringBuilder(raw.length());
    raw.codePoints()
        .forEach(
            point -> {
              if (Character.isISOControl(point) || ControlSigns.turns(point)) {
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
