package org.taketally.notebook.runner;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.TreeMap;

/** Notebook JSON as text, byte for byte as Jupyter writes it. */
final class NotebookJson {

  private static final Gson GSON =
      new GsonBuilder().serializeNulls().disableHtmlEscaping().create();

  private NotebookJson() {}

  static String text(JsonObject notebook) {
    StringWriter text = new StringWriter();
    try (JsonWriter writer = new JsonWriter(text)) {
      writer.setIndent(" ");
      writer.setHtmlSafe(false);
      writer.setSerializeNulls(true);
      GSON.toJson(sorted(notebook), writer);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return text + "\n";
  }

  private static JsonElement sorted(JsonElement json) {
    if (json.isJsonArray()) {
      JsonArray array = new JsonArray();
      json.getAsJsonArray().forEach(each -> array.add(sorted(each)));
      return array;
    }
    if (!json.isJsonObject()) {
      return json;
    }
    JsonObject object = new JsonObject();
    Map<String, JsonElement> byName = new TreeMap<>(json.getAsJsonObject().asMap());
    byName.forEach((name, value) -> object.add(name, sorted(value)));
    return object;
  }

  /** Text as notebook files hold it: a list of lines, each with its end. */
  static JsonArray lines(String text) {
    JsonArray lines = new JsonArray();
    int start = 0;
    while (start < text.length()) {
      int newline = text.indexOf('\n', start);
      int end = newline < 0 ? text.length() : newline + 1;
      lines.add(text.substring(start, end));
      start = end;
    }
    return lines;
  }

  /** Text from a list of lines, or from one string. */
  static String joined(JsonElement textOrLines) {
    if (textOrLines == null || textOrLines.isJsonNull()) {
      return "";
    }
    if (!textOrLines.isJsonArray()) {
      return textOrLines.getAsString();
    }
    StringBuilder text = new StringBuilder();
    textOrLines.getAsJsonArray().forEach(line -> text.append(line.getAsString()));
    return text.toString();
  }
}
