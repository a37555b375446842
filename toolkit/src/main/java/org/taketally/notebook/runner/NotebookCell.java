package org.taketally.notebook.runner;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One cell of a notebook. */
public final class NotebookCell {

  private final JsonObject json;

  NotebookCell(JsonObject json) {
    this.json = json;
  }

  /**
   * The cell's kind.
   *
   * @return {@code code}, {@code markdown} or {@code raw}
   */
  public String type() {
    return json.get("cell_type").getAsString();
  }

  /**
   * Whether it holds code.
   *
   * @return true for a code cell
   */
  public boolean isCode() {
    return type().equals("code");
  }

  /**
   * What was typed.
   *
   * @return the text, lines separated by line feeds
   */
  public String source() {
    return NotebookJson.joined(json.get("source"));
  }

  void setSource(String source) {
    json.add("source", NotebookJson.lines(source));
  }

  /**
   * Whether the cell has a tag.
   *
   * @param tag e.g. {@code skip-execution}
   * @return true if it is among the cell's tags
   */
  public boolean hasTag(String tag) {
    JsonElement tags = metadata().get("tags");
    return tags != null
        && tags.isJsonArray()
        && tags.getAsJsonArray().contains(new JsonPrimitive(tag));
  }

  JsonObject metadata() {
    if (!json.has("metadata")) {
      json.add("metadata", new JsonObject());
    }
    return json.getAsJsonObject("metadata");
  }

  /**
   * Number shown beside the cell.
   *
   * @return its execution count, empty if it was not run
   */
  public Optional<Integer> executionCount() {
    JsonElement count = json.get("execution_count");
    return count != null && count.toString().matches("\\d{1,9}")
        ? Optional.of(count.getAsInt())
        : Optional.empty();
  }

  void setExecutionCount(int count) {
    json.addProperty("execution_count", count);
  }

  /** Takes away outputs, number and timing of an earlier run. */
  void clear() {
    json.add("outputs", new JsonArray());
    json.add("execution_count", JsonNull.INSTANCE);
    metadata().remove("execution");
  }

  JsonArray outputs() {
    if (!json.has("outputs")) {
      json.add("outputs", new JsonArray());
    }
    return json.getAsJsonArray("outputs");
  }

  /**
   * The outputs as text: what was printed, and values and errors in their plain form.
   *
   * @return one text per output
   */
  public List<String> outputTexts() {
    List<String> texts = new ArrayList<>();
    for (JsonElement each : outputs()) {
      JsonObject output = each.getAsJsonObject();
      switch (output.get("output_type").getAsString()) {
        case "stream" -> texts.add(NotebookJson.joined(output.get("text")));
        case "error" ->
            texts.add(
                output.get("ename").getAsString() + ": " + output.get("evalue").getAsString());
        default -> texts.add(NotebookJson.joined(output.getAsJsonObject("data").get("text/plain")));
      }
    }
    return texts;
  }
}
