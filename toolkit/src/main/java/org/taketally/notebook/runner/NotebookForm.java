package org.taketally.notebook.runner;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.List;
import java.util.Map;

/**
 * Checks that a file's JSON is a notebook of format 4, as far as it will be relied on: says where
 * it isn't, what was found and what was expected.
 *
 * @see <a href="https://nbformat.readthedocs.io/en/stable/format_description.html">The notebook
 *     file format</a>
 */
final class NotebookForm {

  /** What goes deeper than this was not written by a notebook program. */
  private static final int DEEPEST = 200;

  private static final int SHOWN = 40;

  /** Says what of a file is no notebook. */
  static final class Broken extends Exception {

    private static final long serialVersionUID = 1L;

    Broken(String place, String found, String expected) {
      super("%s: found %s, expected %s".formatted(place, found, expected));
    }
  }

  private NotebookForm() {}

  static void check(JsonElement json) throws Broken {
    checkDepth(json);
    JsonObject notebook = object("the file", json);
    JsonElement major = notebook.get("nbformat");
    if (major == null || !major.toString().equals("4")) {
      throw new Broken(
          "nbformat", shown(major), "notebook format 4; open it in Jupyter and save it again");
    }
    optionalObject("metadata", notebook.get("metadata"));
    int number = 0;
    for (JsonElement cell : array("cells", notebook.get("cells"))) {
      number++;
      checkCell("cell " + number, object("cell " + number, cell));
    }
  }

  private static void checkCell(String place, JsonObject cell) throws Broken {
    requireText(place + ", cell_type", cell.get("cell_type"));
    requireLines(place + ", source", cell.get("source"));
    optionalObject(place + ", metadata", cell.get("metadata"));
    if (cell.has("outputs")) {
      for (JsonElement output : array(place + ", outputs", cell.get("outputs"))) {
        checkOutput(place + ", output", object(place + ", output", output));
      }
    }
  }

  private static void checkOutput(String place, JsonObject output) throws Broken {
    requireText(place + "_type", output.get("output_type"));
    switch (output.get("output_type").getAsString()) {
      case "stream" -> {
        requireText(place + " name", output.get("name"));
        requireLines(place + " text", output.get("text"));
      }
      case "error" -> {
        requireText(place + " ename", output.get("ename"));
        requireText(place + " evalue", output.get("evalue"));
        requireLines(place + " traceback", array(place + " traceback", output.get("traceback")));
      }
      default -> {
        for (Map.Entry<String, JsonElement> form :
            object(place + " data", output.get("data")).entrySet()) {
          if (!form.getKey().endsWith("json")) {
            requireLines(place + " " + form.getKey(), form.getValue());
          }
        }
      }
    }
  }

  /** Level by level, so that no depth can exhaust the stack. */
  private static void checkDepth(JsonElement json) throws Broken {
    List<JsonElement> level = List.of(json);
    for (int depth = 0; !level.isEmpty(); depth++) {
      if (depth > DEEPEST) {
        throw new Broken("the file", "more than " + DEEPEST + " brackets in brackets", "fewer");
      }
      level = level.stream().flatMap(each -> inner(each).stream()).toList();
    }
  }

  private static List<JsonElement> inner(JsonElement json) {
    if (json.isJsonArray()) {
      return json.getAsJsonArray().asList();
    }
    return json.isJsonObject() ? List.copyOf(json.getAsJsonObject().asMap().values()) : List.of();
  }

  private static void optionalObject(String place, JsonElement json) throws Broken {
    if (json != null) {
      object(place, json);
    }
  }

  private static JsonObject object(String place, JsonElement json) throws Broken {
    if (json == null || !json.isJsonObject()) {
      throw new Broken(place, shown(json), "an object in braces");
    }
    return json.getAsJsonObject();
  }

  private static JsonArray array(String place, JsonElement json) throws Broken {
    if (json == null || !json.isJsonArray()) {
      throw new Broken(place, shown(json), "a list in brackets");
    }
    return json.getAsJsonArray();
  }

  private static void requireText(String place, JsonElement json) throws Broken {
    if (!isText(json)) {
      throw new Broken(place, shown(json), "text in quotes");
    }
  }

  private static void requireLines(String place, JsonElement json) throws Broken {
    boolean lines =
        json != null
            && json.isJsonArray()
            && json.getAsJsonArray().asList().stream().allMatch(NotebookForm::isText);
    if (!lines && !isText(json)) {
      throw new Broken(place, shown(json), "text in quotes, or a list of such lines");
    }
  }

  static boolean isText(JsonElement json) {
    return json != null && json.isJsonPrimitive() && json.getAsJsonPrimitive().isString();
  }

  /** The text two names deep, or empty text if it isn't there. */
  static String text(JsonObject json, String outer, String name) {
    JsonElement middle = json.get(outer);
    JsonElement value =
        middle == null || !middle.isJsonObject() ? null : middle.getAsJsonObject().get(name);
    return isText(value) ? value.getAsString() : "";
  }

  private static String shown(JsonElement json) {
    if (json == null) {
      return "nothing";
    }
    if (json.isJsonObject() || json.isJsonArray()) {
      return json.isJsonObject() ? "an object in braces" : "a list in brackets";
    }
    String text = json.toString();
    return text.length() > SHOWN ? text.substring(0, SHOWN) + "..." : text;
  }
}
