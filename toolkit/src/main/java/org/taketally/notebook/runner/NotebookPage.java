package org.taketally.notebook.runner;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/** An executed notebook as one HTML page that needs nothing else. */
public final class NotebookPage {

  private static final List<Extension> TABLES = List.of(TablesExtension.create());

  /** Forms of a value, best first, that may carry active content. */
  private static final List<String> RICH = List.of("image/svg+xml", "text/html");

  private static final List<String> PICTURES = List.of("image/png", "image/jpeg", "image/gif");

  /** Whatever slips in, a browser fetches nothing and runs nothing. */
  private static final String NOTHING_LOADED =
      "default-src 'none'; img-src data:; style-src 'unsafe-inline'";

  private final boolean plain;
  private final Parser parser = Parser.builder().extensions(TABLES).build();
  private final HtmlRenderer renderer;
  private final StringBuilder page = new StringBuilder();

  private NotebookPage(boolean plain) {
    this.plain = plain;
    HtmlRenderer.Builder html =
        HtmlRenderer.builder().extensions(TABLES).escapeHtml(plain).sanitizeUrls(true);
    renderer = (plain ? html.nodeRendererFactory(NamedPictures::new) : html).build();
  }

  /**
   * Makes the page.
   *
   * @param notebook the notebook
   * @param plain whether to show values as text and pictures only, and markup in texts as typed:
   *     for notebooks of unknown origin, whose HTML could do anything
   * @return HTML
   */
  public static String of(Notebook notebook, boolean plain) {
    return new NotebookPage(plain).html(notebook);
  }

  private String html(Notebook notebook) {
    String title = notebook.title().isEmpty() ? "Notebook" : notebook.title();
    page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    page.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
    if (plain) {
      page.append("<meta http-equiv=\"Content-Security-Policy\" content=\"").append(NOTHING_LOADED);
      page.append("\">\n");
    }
    page.append("<title>").append(escape(title)).append("</title>\n<style>\n");
    page.append(style()).append("</style>\n</head>\n<body>\n<main>\n");
    notebook.cells().forEach(this::add);
    return page.append("</main>\n</body>\n</html>\n").toString();
  }

  private static String style() {
    try (InputStream css = NotebookPage.class.getResourceAsStream("page.css")) {
      return new String(css.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private void add(NotebookCell cell) {
    switch (cell.type()) {
      case "markdown" -> page.append(renderer.render(parser.parse(cell.source())));
      case "code" -> addCode(cell);
      default -> page.append("<pre>").append(escape(cell.source())).append("</pre>\n");
    }
  }

  private void addCode(NotebookCell cell) {
    if (cell.source().isBlank()) {
      return;
    }
    String count = cell.executionCount().map(n -> "[" + n + "]").orElse("[ ]");
    page.append("<div class=\"cell\"><div class=\"count\">").append(count);
    page.append("</div><pre class=\"code\"><code>").append(escape(cell.source().stripTrailing()));
    page.append("</code></pre></div>\n");
    for (JsonElement output : cell.outputs()) {
      addOutput(output.getAsJsonObject());
    }
  }

  private void addOutput(JsonObject output) {
    switch (output.get("output_type").getAsString()) {
      case "stream" ->
          addText(output.get("name").getAsString(), NotebookJson.joined(output.get("text")));
      case "error" -> addText("error", traceback(output));
      default -> addValue(output.getAsJsonObject("data"));
    }
  }

  private static String traceback(JsonObject error) {
    return error.getAsJsonArray("traceback").asList().stream()
        .map(JsonElement::getAsString)
        .collect(Collectors.joining("\n"));
  }

  private void addText(String kind, String text) {
    String marked =
        escape(text)
            .replaceAll("\u001b\\[(?:1;)?31m", "<b class=\"red\">")
            .replaceAll("\u001b\\[1m", "<b>")
            .replaceAll("\u001b\\[0m", "</b>")
            .replaceAll("\u001b\\[[0-9;]*m", "");
    page.append("<div class=\"output %s\"><pre>".formatted(escape(kind)));
    page.append(marked).append("</pre></div>\n");
  }

  private void addValue(JsonObject data) {
    for (String type : RICH) {
      if (!plain && data.has(type)) {
        page.append("<div class=\"output\">").append(NotebookJson.joined(data.get(type)));
        page.append("</div>\n");
        return;
      }
    }
    if (plain && data.has("image/svg+xml")) {
      addDrawing(NotebookJson.joined(data.get("image/svg+xml")), alternative(data));
      return;
    }
    for (String type : PICTURES) {
      if (data.has(type)) {
        String bytes = NotebookJson.joined(data.get(type)).replaceAll("[^A-Za-z0-9+/=]", "");
        page.append("<div class=\"output\"><img alt=\"").append(alternative(data));
        page.append("\" src=\"data:%s;base64,".formatted(type)).append(bytes);
        page.append("\"></div>\n");
        return;
      }
    }
    if (data.has("text/markdown")) {
      String text = NotebookJson.joined(data.get("text/markdown"));
      page.append("<div class=\"output\">").append(renderer.render(parser.parse(text)));
      page.append("</div>\n");
      return;
    }
    addText("value", NotebookJson.joined(data.get("text/plain")));
  }

  /** What a picture shows, for those who can't see it. */
  private static String alternative(JsonObject data) {
    return data.has("text/plain")
        ? escape(NotebookJson.joined(data.get("text/plain")).strip())
        : "";
  }

  /** As a picture, in which nothing of it can act. */
  private void addDrawing(String svg, String alternative) {
    String bytes = Base64.getEncoder().encodeToString(svg.getBytes(StandardCharsets.UTF_8));
    page.append("<div class=\"output\"><img alt=\"").append(alternative);
    page.append("\" src=\"data:image/svg+xml;base64,");
    page.append(bytes).append("\"></div>\n");
  }

  private static String escape(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
