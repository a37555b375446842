package org.taketally.notebook.kernel.engine.output;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** SVG text as a value: shown as a drawing, with its own title and description as plain text. */
public final class Drawing {

  private static final Pattern WORDS =
      Pattern.compile("<(title|desc)\\b[^>]*>(.*?)</\\1>", Pattern.DOTALL);

  private Drawing() {}

  public static boolean isSvg(String text) {
    return text.startsWith("<svg") && text.stripTrailing().endsWith("</svg>");
  }

  public static Bundle bundle(String svg) {
    Matcher words = WORDS.matcher(svg);
    String described =
        words
            .results()
            .limit(2)
            .map(each -> unescaped(each.group(2).strip()))
            .collect(Collectors.joining("\n"));
    return Bundle.text("image/svg+xml", svg)
        .withPlainText(described.isEmpty() ? "(a drawing)" : described);
  }

  private static String unescaped(String text) {
    return text.replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&apos;", "'")
        .replace("&#39;", "'")
        .replace("&amp;", "&");
  }
}
