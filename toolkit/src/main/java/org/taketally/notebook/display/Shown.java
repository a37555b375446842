package org.taketally.notebook.display;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import org.taketally.files.XmlText;

/**
 * A value in both forms.
 *
 * @param html markup, everything a user typed escaped
 * @param text the same in plain text
 */
record Shown(String html, String text) {

  /**
   * Borders are see-through grey and colours inherited, so that light and dark themes both work.
   * The name thrice outweighs what exported pages say of all tables; a width of 0 and a least one
   * of all there is keep a wide table from making the page, and so the sentences, as wide.
   */
  private static final String STYLE =
      """
      <style>
      .taketally { line-height: 1.45; max-width: 100%; }
      .taketally .tt-scroll { overflow: auto; max-height: 26rem; margin: .4rem 0; width: 0; min-width: 100%; }
      .taketally table { border-collapse: collapse; margin: .4rem 0; font-size: .92em; border: 0; }
      .taketally caption { caption-side: top; text-align: left; padding: .15rem 0; opacity: .8; }
      .taketally.taketally.taketally th, .taketally.taketally.taketally td { text-align: left; vertical-align: top; padding: .2rem .7rem .2rem 0; border: 0; border-bottom: 1px solid rgba(128, 128, 128, .35); white-space: nowrap; background: none; }
      .taketally.taketally.taketally .tt-long { white-space: normal; min-width: 12em; max-width: 30em; }
      .taketally .tt-wide { min-width: 24em; }
      .taketally th small { font-weight: normal; opacity: .7; }
      .taketally.taketally.taketally .tt-number { text-align: right; font-variant-numeric: tabular-nums; }
      .taketally.taketally.taketally .tt-gap { text-align: center; opacity: .6; }
      .taketally .tt-head { font-weight: bold; margin: .3rem 0; }
      .taketally .tt-warn { border-left: .25rem solid #c77700; padding-left: .6rem; margin: .4rem 0; }
      @media print {
      .taketally .tt-scroll { overflow: visible; max-height: none; }
      .taketally table { font-size: .75em; }
      .taketally.taketally.taketally th, .taketally.taketally.taketally td { white-space: normal; overflow-wrap: break-word; padding-right: .35rem; }
      .taketally.taketally.taketally .tt-long, .taketally.taketally.taketally .tt-wide { min-width: 0; max-width: none; }
      .taketally details::details-content { content-visibility: visible; block-size: auto; }
      }
      </style>
      """;

  /** One after the other. */
  static Shown all(Shown... parts) {
    return all(Arrays.asList(parts));
  }

  static Shown all(List<Shown> parts) {
    return new Shown(
        parts.stream().map(Shown::html).collect(Collectors.joining()),
        parts.stream()
            .map(Shown::text)
            .filter(text -> !text.isEmpty())
            .collect(Collectors.joining("\n")));
  }

  static Shown of(Grid grid) {
    return new Shown(grid.html(), grid.text());
  }

  static Shown heading(String text) {
    return new Shown("<p class=\"tt-head\">" + XmlText.escape(text) + "</p>\n", text + "\n");
  }

  static Shown paragraph(String text) {
    return new Shown("<p>" + XmlText.escape(text) + "</p>\n", text + "\n");
  }

  static Shown warning(String text) {
    return new Shown(
        "<p class=\"tt-warn\">" + XmlText.escape(text) + "</p>\n", "Note: " + text + "\n");
  }

  /**
   * A figure of what the words beside it say, as a picture: exported pages and notebooks nobody
   * trusts show it too. Plain text goes without.
   */
  static Shown figure(String svg) {
    String bytes = Base64.getEncoder().encodeToString(svg.getBytes(StandardCharsets.UTF_8));
    return new Shown(
        "<p><img alt=\"\" style=\"max-width:100%%;height:auto\" src=\"data:image/svg+xml;base64,%s\"></p>%n"
            .formatted(bytes),
        "");
  }

  /** To be read only if wanted; in plain text it just follows. */
  static Shown folded(String label, Shown inner) {
    return new Shown(
        "<details><summary>%s</summary>%n%s</details>%n"
            .formatted(XmlText.escape(label), inner.html),
        inner.text);
  }

  /** The whole output: this with its style around it. */
  String page() {
    return STYLE + "<div class=\"taketally\">\n" + html + "</div>\n";
  }
}
