package org.taketally.notebook.kernel.engine.source;

import java.util.regex.Pattern;

/** Javadoc comments as plain text. */
public final class JavadocText {

  private static final Pattern INLINE =
      Pattern.compile("\\{@(\\w+)\\s+([^{}]*(?:\\{[^{}]*\\}[^{}]*)*)\\}");
  private static final Pattern LABEL = Pattern.compile("\\S+\\s+(.+)", Pattern.DOTALL);

  private JavadocText() {}

  public static String plain(String comment) {
    String text =
        INLINE
            .matcher(comment)
            .replaceAll(
                tag ->
                    java.util.regex.Matcher.quoteReplacement(inline(tag.group(1), tag.group(2))));
    text =
        text.replaceAll("(?i)<p>\\s*", "\n\n")
            .replaceAll("(?i)<li>\\s*", "\n- ")
            .replaceAll("(?s)<[^>]+>", "")
            .replace("&lt;", "<")
            .replace("&gt;", ">")
            .replace("&nbsp;", " ")
            .replace("&amp;", "&");
    text = text.replaceAll("(?m)^[ \\t]+", "").replaceAll("(?m)^@param\\s+(\\S+)\\s+", "$1: ");
    text = text.replaceAll("(?m)^@return\\s+", "returns ");
    text =
        text.replaceAll("(?m)^@throws\\s+(\\S+)\\s+", "throws $1 ")
            .replaceAll("(?m)^@see\\s+", "see ");
    return text.replaceAll("\\n{3,}", "\n\n").strip();
  }

  private static String inline(String tag, String content) {
    String text = content.strip();
    if (tag.startsWith("link")) {
      var label = LABEL.matcher(text);
      String shown = label.matches() ? label.group(1) : text;
      return shown
          .replaceFirst("^#", "")
          .replace('#', '.')
          .replaceAll("^(?:[a-z]\\w*\\.)+(?=[A-Z])", "");
    }
    return text;
  }
}
