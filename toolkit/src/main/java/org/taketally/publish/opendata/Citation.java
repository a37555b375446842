package org.taketally.publish.opendata;

import com.google.gson.GsonBuilder;
import org.taketally.wording.opendata.PackageWords;

/**
 * How a package is cited, as programs read it.
 *
 * @see <a href="https://citation-file-format.github.io/">Citation File Format 1.2.0</a>
 */
final class Citation {

  private Citation() {}

  static String of(PackageOptions options) {
    StringBuilder text = new StringBuilder();
    line(text, "cff-version: ", "1.2.0");
    line(text, "message: ", quoted(PackageWords.cite()));
    line(text, "type: ", "dataset");
    line(text, "title: ", quoted(options.title()));
    line(text, "version: ", "1.0.0");
    line(text, "date-released: ", quoted(options.origin().created().toString()));
    line(text, "license: ", options.licence().id());
    line(text, "keywords:", "");
    PackageWords.keywords().stream().limit(3).forEach(word -> line(text, "  - ", word));
    line(text, "authors:", "");
    options.creators().forEach(name -> line(text, "  - name: ", quoted(name)));
    return text.toString();
  }

  private static void line(StringBuilder text, String key, String value) {
    text.append(key).append(value).append('\n');
  }

  /** Text as YAML takes it, whatever it holds: a JSON string is one. */
  private static String quoted(String text) {
    return new GsonBuilder().disableHtmlEscaping().create().toJson(text);
  }
}
