package org.taketally.records.dictionary;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.taketally.records.columns.NameLikeness;

/** What a dictionary says of the layout of a sheet. */
final class ShapeParser extends JsonParts {

  private static final String WIDE_EXAMPLE =
      "write e.g. [{\"set\": {\"season\": \"2024\"}, \"columns\": {\"takes\": \"alive 24\"}}]";
  private static final String COUNTS_EXAMPLE =
      "write e.g. [{\"days\": 30, \"alive\": \"alive 30 d\"}, {\"days\": 90, \"alive\": \"alive 90"
          + " d\"}]";
  private static final String BY_EXAMPLE =
      "write e.g. {\"column\": \"grafter\", \"patterns\": {\"Ann\": \"dd/MM/yyyy\"}}";

  ShapeParser(String file) {
    super(file);
  }

  SheetShape shape(JsonObject json) {
    return new SheetShape(
        headingRow(json),
        wide(json),
        strings("", json, "fill_down").orElse(Set.of()),
        counts(json));
  }

  private int headingRow(JsonObject json) {
    String text = json.has("heading_row") ? text("heading_row", json.get("heading_row")) : "1";
    if (!text.matches("[1-9]\\d{0,5}")) {
      throw wrong(
          "heading_row", text, "the number of a line, from 1", "write 4 for the fourth line");
    }
    return Integer.parseInt(text);
  }

  private Iterable<JsonElement> parts(JsonObject json, String key, String example) {
    if (!json.has(key)) {
      return List.of();
    }
    if (!json.get(key).isJsonArray()) {
      throw wrong(key, json.get(key).toString(), "a list in brackets [ ]", example);
    }
    return json.get(key).getAsJsonArray();
  }

  private List<WidePart> wide(JsonObject json) {
    List<WidePart> parts = new ArrayList<>();
    for (JsonElement one : parts(json, "wide", WIDE_EXAMPLE)) {
      parts.add(widePart("wide[" + parts.size() + "]", requireObject("wide", one)));
    }
    return parts;
  }

  private WidePart widePart(String path, JsonObject json) {
    requireKeys(path + ".", json, Set.of("set", "columns"));
    Map<String, String> set = texts(path + ".set", object(path + ".", json, "set"));
    Map<String, String> columns = texts(path + ".columns", object(path + ".", json, "columns"));
    if (columns.isEmpty()) {
      throw wrong(path, json.toString(), "columns that hold its values", WIDE_EXAMPLE);
    }
    return new WidePart(set, columns);
  }

  private Map<String, String> texts(String path, JsonObject json) {
    Map<String, String> texts = new LinkedHashMap<>();
    for (Map.Entry<String, JsonElement> one : json.entrySet()) {
      texts.put(requireKnown(one.getKey()), text(path + "." + one.getKey(), one.getValue()));
    }
    return texts;
  }

  private SortedMap<Integer, String> counts(JsonObject json) {
    SortedMap<Integer, String> counts = new TreeMap<>();
    for (JsonElement one : parts(json, "counts", COUNTS_EXAMPLE)) {
      JsonObject count = requireObject("counts", one);
      requireKeys("counts.", count, Set.of("days", "alive"));
      String days = count.has("days") ? text("counts.days", count.get("days")) : "";
      String alive = count.has("alive") ? text("counts.alive", count.get("alive")) : "";
      if (!days.matches("[1-9]\\d{0,3}") || alive.isBlank()) {
        throw wrong(
            "counts", count.toString(), "whole days after grafting and a heading", COUNTS_EXAMPLE);
      }
      if (counts.put(Integer.parseInt(days), alive.strip()) != null) {
        throw wrong("counts.days", days, "each day once", "take one of the two out");
      }
    }
    if (!counts.isEmpty() && json.has("wide")) {
      throw wrong(
          "counts", "counts and wide", "one of them", "put the counting days under counts alone");
    }
    return counts;
  }

  Optional<DatesBy> datesBy(JsonObject json) {
    if (!json.has("dates_by")) {
      return Optional.empty();
    }
    JsonObject by = requireObject("dates_by", json.get("dates_by"));
    requireKeys("dates_by.", by, Set.of("column", "patterns"));
    Map<String, String> patterns = new LinkedHashMap<>();
    for (Map.Entry<String, JsonElement> one : object("dates_by.", by, "patterns").entrySet()) {
      String path = "dates_by.patterns." + one.getKey();
      String pattern = text(path, one.getValue());
      requirePattern(path, pattern);
      patterns.put(NameLikeness.plain(one.getKey()), pattern);
    }
    if (!by.has("column") || patterns.isEmpty()) {
      throw wrong("dates_by", by.toString(), "a column and the patterns of its names", BY_EXAMPLE);
    }
    return Optional.of(new DatesBy(text("dates_by.column", by.get("column")).strip(), patterns));
  }
}
