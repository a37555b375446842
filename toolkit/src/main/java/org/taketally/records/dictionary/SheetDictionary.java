package org.taketally.records.dictionary;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.SizeLimits;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/**
 * Says how a sheet of your own is to be read: its headings, units, dates, decimal sign, spellings
 * and marks for "not recorded". A JSON file; see docs/dictionary.md.
 */
public final class SheetDictionary {

  private static final List<String> LAYOUT =
      List.of(
          "encoding",
          "delimiter",
          "heading_row",
          "sheet",
          "sheets",
          "constants",
          "wide",
          "fill_down",
          "counts");

  private final JsonObject json;
  private final Map<String, JsonObject> overlays = new LinkedHashMap<>();
  private final DictionaryParser parser;
  private final String file;

  private SheetDictionary(String file, JsonObject json) {
    this.json = json;
    this.file = file;
    this.parser = new DictionaryParser(file);
    if (json.has("files")) {
      JsonObject files = parser.requireObject("files", json.get("files"));
      for (Map.Entry<String, JsonElement> one : files.entrySet()) {
        JsonObject overlay = parser.requireObject("files." + one.getKey(), one.getValue());
        if (overlay.has("files")) {
          throw parser.wrong("files." + one.getKey(), "files", "no files in files", "take it out");
        }
        overlays.put(one.getKey(), overlay);
      }
    }
    json.remove("files");
    parser.rules(json);
    overlays.keySet().forEach(pattern -> parser.rules(merged(json, overlays.get(pattern))));
  }

  /**
   * A dictionary that says nothing.
   *
   * @return for sheets in our own columns
   */
  public static SheetDictionary none() {
    return new SheetDictionary("", new JsonObject());
  }

  /**
   * Reads a dictionary.
   *
   * @param path a JSON file, UTF-8, or UTF-16 with its mark as some terminals write it
   * @return the dictionary
   * @throws RecordsUnreadable if it can't be read or says something that can't be done
   */
  public static SheetDictionary load(Path path) {
    try {
      return parse(path.toString(), text(path));
    } catch (IOException e) {
      throw new RecordsUnreadable(
          new Problem(
              Severity.ERROR,
              path.toString(),
              0,
              "",
              Files.exists(path)
                  ? "a file that isn't text in UTF-8, or too large to be a dictionary"
                  : "no such file",
              "a dictionary in JSON",
              "check the name; write the dictionary with a text editor and save it as UTF-8"));
    }
  }

  /**
   * What a dictionary's file says, word for word: in UTF-16 where its mark says so; the mark itself
   * is no part of the text.
   *
   * @param path a JSON file
   * @return its text
   * @throws IOException if it can't be read, isn't text or is too large
   */
  public static String text(Path path) throws IOException {
    if (!SizeLimits.isSmallFile(path)) {
      throw new IOException("too large");
    }
    byte[] bytes = Files.readAllBytes(path);
    String mark = HexFormat.of().formatHex(bytes, 0, Math.min(2, bytes.length));
    Charset encoding =
        mark.equals("fffe") || mark.equals("feff")
            ? StandardCharsets.UTF_16
            : StandardCharsets.UTF_8;
    String text = encoding.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }

  /**
   * A dictionary from text.
   *
   * @param name what to call it in messages
   * @param text JSON
   * @return the dictionary
   * @throws RecordsUnreadable if it says something that can't be done
   */
  public static SheetDictionary parse(String name, String text) {
    return new SheetDictionary(name, StrictJson.object(name, text));
  }

  /** The rules for a file or worksheet: those for all, with those whose pattern fits on top. */
  public SheetRules rules(String source) {
    JsonObject all = json;
    for (Map.Entry<String, JsonObject> overlay : overlays.entrySet()) {
      if (fits(overlay.getKey(), source)) {
        all = merged(all, overlay.getValue());
      }
    }
    return parser.rules(all);
  }

  private boolean fits(String pattern, String source) {
    return SheetName.plain(source).stream()
        .anyMatch(name -> name.equals(pattern) || Wildcards.match(pattern, name));
  }

  /** The patterns under files that fit none of the sources. */
  public List<String> unmatched(List<String> sources) {
    return overlays.keySet().stream()
        .filter(pattern -> sources.stream().noneMatch(source -> fits(pattern, source)))
        .toList();
  }

  /** Whether no pattern under files fits a source. */
  public boolean unnamed(String source) {
    return overlays.keySet().stream().noneMatch(pattern -> fits(pattern, source));
  }

  /** The same dictionary, saying too that a column of the user's own holds names. */
  public SheetDictionary holdsNames(String column) {
    boolean spoken =
        (json.has("columns") && json.getAsJsonObject("columns").has(column))
            || DerivedColumn.named(column);
    if (spoken || !overlays.isEmpty()) {
      return this;
    }
    JsonObject more = json.deepCopy();
    JsonObject columns = more.has("columns") ? more.getAsJsonObject("columns") : new JsonObject();
    JsonObject entry = new JsonObject();
    entry.addProperty("levels", true);
    columns.add(column, entry);
    more.add("columns", columns);
    return new SheetDictionary(file, more);
  }

  /** A value for all rows, for all files that don't say it themselves. */
  public SheetDictionary constant(String column, String value) {
    JsonObject more = json.deepCopy();
    JsonObject constants =
        more.has("constants") ? more.getAsJsonObject("constants") : new JsonObject();
    if (!constants.has(column)) {
      constants.addProperty(column, value);
    }
    more.add("constants", constants);
    JsonObject files = new JsonObject();
    overlays.forEach(files::add);
    if (!overlays.isEmpty()) {
      more.add("files", files);
    }
    return new SheetDictionary(file, more);
  }

  /**
   * The same for a list that is read beside records: what is said of the layout of all sheets is
   * said of the records. What stands under files holds for the list too.
   */
  public SheetDictionary besideRecords() {
    JsonObject less = json.deepCopy();
    LAYOUT.forEach(less::remove);
    JsonObject files = new JsonObject();
    overlays.forEach(files::add);
    if (!overlays.isEmpty()) {
      less.add("files", files);
    }
    return new SheetDictionary(file, less);
  }

  /** What {@code blank_result} says, for all files that don't say it themselves. */
  public SheetDictionary blankResult(BlankResult meaning) {
    JsonObject more = json.deepCopy();
    if (!more.has("blank_result")) {
      more.addProperty("blank_result", meaning.name().toLowerCase(Locale.ROOT));
    }
    JsonObject files = new JsonObject();
    overlays.forEach(files::add);
    if (!overlays.isEmpty()) {
      more.add("files", files);
    }
    return new SheetDictionary(file, more);
  }

  public String name() {
    return file;
  }

  private static JsonObject merged(JsonObject below, JsonObject above) {
    JsonObject all = below.deepCopy();
    for (Map.Entry<String, JsonElement> one : above.entrySet()) {
      JsonElement old = all.get(one.getKey());
      boolean both = old != null && old.isJsonObject() && one.getValue().isJsonObject();
      all.add(
          one.getKey(),
          both ? merged(old.getAsJsonObject(), one.getValue().getAsJsonObject()) : one.getValue());
    }
    return all;
  }
}
