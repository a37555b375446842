package org.taketally.records;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What a proposed dictionary could not decide, with the readings there are. */
public final class OpenQuestion {

  private final String sheet;
  private final String text;
  private final JsonObject rules;
  private final List<Choice> choices = new ArrayList<>();
  private boolean settled;

  /**
   * One reading.
   *
   * @param words what it is, for a person
   * @param entry what the dictionary then says; empty if nothing need be said
   */
  record Choice(String words, JsonObject entry) {}

  OpenQuestion(String sheet, String text, JsonObject rules) {
    this.sheet = sheet;
    this.text = text;
    this.rules = rules;
  }

  /** Adds a reading: a value under a path of keys. */
  OpenQuestion choice(String words, JsonElement value, String... keys) {
    JsonObject entry = new JsonObject();
    JsonObject inner = entry;
    for (int i = 0; i + 1 < keys.length; i++) {
      JsonObject next = new JsonObject();
      inner.add(keys[i], next);
      inner = next;
    }
    if (keys.length > 0) {
      inner.add(keys[keys.length - 1], value);
    }
    choices.add(new Choice(words, entry));
    return this;
  }

  /**
   * The question and what settles it.
   *
   * @return one sentence, beginning with the sheet
   */
  public String sentence() {
    return sheet + ": " + text;
  }

  /** The question and what settles it, where the sheet is said already. */
  String text() {
    return text;
  }

  /**
   * The readings to choose from.
   *
   * @return words for each; empty where only an editor can settle it
   */
  public List<String> choices() {
    return choices.stream().map(Choice::words).toList();
  }

  /**
   * Writes a reading into the proposed dictionary.
   *
   * @param choice place in {@link #choices()}, from 0
   */
  public void settle(int choice) {
    merge(rules, choices.get(choice).entry());
    settled = true;
  }

  boolean settled() {
    return settled;
  }

  /**
   * Adds what isn't there and takes out what is null; a column that only named its heading becomes
   * an object.
   */
  private static void merge(JsonObject into, JsonObject more) {
    for (Map.Entry<String, JsonElement> one : more.entrySet()) {
      JsonElement old = into.get(one.getKey());
      JsonElement added = one.getValue();
      if (added.isJsonNull()) {
        into.remove(one.getKey());
        continue;
      }
      if (old != null && old.isJsonPrimitive() && added.isJsonObject()) {
        JsonObject object = new JsonObject();
        object.add("from", old);
        into.add(one.getKey(), object);
        old = object;
      }
      if (old != null && old.isJsonObject() && added.isJsonObject()) {
        merge(old.getAsJsonObject(), added.getAsJsonObject());
      } else if (old != null && old.isJsonArray() && added.isJsonArray()) {
        old.getAsJsonArray().addAll(added.getAsJsonArray());
      } else {
        into.add(one.getKey(), added.deepCopy());
      }
    }
  }

  static String times(int count) {
    return count == 1 ? "once" : "%,d times".formatted(count);
  }

  static JsonArray list(Iterable<String> texts) {
    JsonArray list = new JsonArray();
    texts.forEach(list::add);
    return list;
  }
}
