package org.taketally.records.problems;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.Map;

/** Entries of a dictionary as a remedy prints them: JSON that can be copied, whatever the names. */
public final class DictionaryEntry {

  private DictionaryEntry() {}

  /** A name in quotation marks; those within it, and backslashes, escaped. */
  public static String quoted(String name) {
    return new JsonPrimitive(name).toString();
  }

  /**
   * A name and another spelling of it.
   *
   * @return e.g. {@code "same": {"Corvane": ["Corv."]}}
   */
  public static String same(String name, String spelling) {
    return "\"same\": {%s: [%s]}".formatted(quoted(name), quoted(spelling));
  }

  /**
   * One part of a row whose results stand side by side.
   *
   * @param name our column that tells the parts apart
   * @param value what it is in this part
   * @param columns our columns to the headings of this part
   * @return e.g. {@code {"set": {"season": "2024"}, "columns": {"takes": "alive 24"}}}
   */
  public static JsonObject part(String name, String value, Map<String, String> columns) {
    JsonObject set = new JsonObject();
    set.addProperty(name, value);
    JsonObject from = new JsonObject();
    columns.forEach(from::addProperty);
    JsonObject part = new JsonObject();
    part.add("set", set);
    part.add("columns", from);
    return part;
  }

  /**
   * Counts of the same grafts on several days.
   *
   * @param days day after grafting to the heading of its counts
   * @return e.g. {@code [{"days": 30, "alive": "alive 30 d"}]}
   */
  public static JsonArray counts(Map<Integer, String> days) {
    JsonArray counts = new JsonArray();
    days.forEach(
        (day, heading) -> {
          JsonObject count = new JsonObject();
          count.addProperty("days", day);
          count.addProperty("alive", heading);
          counts.add(count);
        });
    return counts;
  }
}
