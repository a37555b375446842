package org.taketally.publish;

import com.samskivert.mustache.Mustache;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.taketally.files.XmlText;

/** Writes pages by the templates beside this class. All user text is escaped. */
final class PageWriter {

  private PageWriter() {}

  /** One file of HTML that needs nothing else: no script, no network. */
  static String html(Page page) {
    return write("page.html.mustache", Map.of("page", page, "style", resource("page.css")));
  }

  /** What a template of HTML makes of some values. */
  static String write(String template, Map<String, ?> values) {
    Mustache.Compiler compiler =
        Mustache.compiler()
            .emptyStringIsFalse(true)
            .withEscaper(XmlText::escape)
            .withLoader(name -> new java.io.StringReader(resource(name + ".html.mustache")));
    return compiler.compile(resource(template)).execute(values);
  }

  /** The same in Markdown with tables, figures left out. */
  static String markdown(Page page) {
    Mustache.Compiler compiler =
        Mustache.compiler()
            .emptyStringIsFalse(true)
            .withEscaper(MarkdownText::escape)
            .withLoader(name -> new java.io.StringReader(resource(name + ".md.mustache")));
    String text = compiler.compile(resource("page.md.mustache")).execute(Map.of("page", page));
    return text.replaceAll("\n{3,}", "\n\n").strip() + "\n";
  }

  /** A file beside this class. */
  static String resource(String name) {
    try (InputStream in = PageWriter.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the toolkit's jar lacks " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
