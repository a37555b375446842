package org.taketally.notebook.kernel.engine.output;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** SVG text as a value: shown as a drawing, with its own title and description as plain text. */
public final class Drawing {

  private static final Pattern WORDS =
      Pattern.compile("<(title|desc)\\b[^>]*>(.*?)</\\1>", Pattern.DOTALL);

  private static final Pattern WIDTH = Pattern.compile("<svg\\b[^>]*?\\swidth=\"(\\d{1,5})\\b");
  private static final String NAMESPACE = "<svg xmlns=\"http://www.w3.org/2000/svg\"";

  private Drawing() {}

  public static boolean isSvg(String text) {
    return text.startsWith("<svg") && text.stripTrailing().endsWith("</svg>");
  }

  /**
   * A drawing in the forms that frontends and exporters want: SVG, and the same as a picture within
   * HTML, which survives the cleaning that takes SVG out of exported and untrusted pages.
   */
  public static Bundle bundle(String svg) {
    String words = words(svg);
    return Bundle.text("image/svg+xml", svg)
        .with("text/html", picture(svg, words))
        .withPlainText(words);
  }

  /** A drawing with a PNG picture of it beside; without, if it can't be made. */
  static Bundle bundle(String svg, Function<String, byte[]> png) {
    Bundle drawing = bundle(svg);
    try {
      byte[] picture = png.apply(svg);
      return picture.length == 0
          ? drawing
          : drawing
              .with("image/png", Base64.getEncoder().encodeToString(picture))
              .sized(width(svg));
    } catch (RuntimeException | Error unable) {
      return drawing; // another's drawing, or no fonts on this machine
    }
  }

  private static String words(String svg) {
    String described =
        WORDS
            .matcher(svg)
            .results()
            .limit(2)
            .map(each -> unescaped(each.group(2).strip()))
            .collect(Collectors.joining("\n"));
    return described.isEmpty() ? "(a drawing)" : described;
  }

  private static String picture(String svg, String words) {
    String whole = svg.contains("xmlns=") ? svg : svg.replaceFirst("<svg", NAMESPACE);
    String bytes = Base64.getEncoder().encodeToString(whole.getBytes(StandardCharsets.UTF_8));
    int width = width(svg);
    return "<img alt=\"%s\"%s style=\"max-width:100%%;height:auto\" src=\"data:image/svg+xml;base64,%s\">"
        .formatted(escaped(words), width > 0 ? " width=\"" + width + "\"" : "", bytes);
  }

  /** Its width as it says itself, 0 if it doesn't. */
  private static int width(String svg) {
    Matcher width = WIDTH.matcher(svg);
    return width.lookingAt() ? Integer.parseInt(width.group(1)) : 0;
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
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
