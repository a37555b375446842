package org.taketally.files;

/** Text typed by people, made safe for pictures and pages. */
public final class XmlText {

  private XmlText() {}

  /**
   * Text that stays text inside elements and quoted attributes of XML and HTML.
   *
   * @param raw as typed
   * @return markup characters as references; characters XML can't hold, and those that turn the
   *     direction of what follows, as U+FFFD, so that one sees that something stood there
   */
  public static String escape(String raw) {
    return inElement(raw).replace("'", "&#39;");
  }

  /**
   * The same for inside elements and attributes in double quotation marks.
   *
   * @param raw as typed
   * @return as {@link #escape}, with apostrophes as they are
   */
  public static String inElement(String raw) {
    StringBuilder out = new StringBuilder(raw.length());
    raw.codePoints()
        .forEach(
            point -> {
              switch (point) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                default -> out.appendCodePoint(allowed(point) ? point : '\uFFFD');
              }
            });
    return out.toString();
  }

  private static boolean allowed(int point) {
    boolean control = point < 0x20 && point != '\t' && point != '\n' && point != '\r';
    boolean surrogate = point >= 0xD800 && point <= 0xDFFF;
    boolean noCharacter = point == 0xFFFE || point == 0xFFFF;
    return !(control || surrogate || noCharacter || ControlSigns.turns(point));
  }
}
