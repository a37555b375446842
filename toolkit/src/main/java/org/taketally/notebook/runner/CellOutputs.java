package org.taketally.notebook.runner;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.taketally.notebook.kernel.engine.output.Bundle;
import org.taketally.notebook.kernel.engine.output.CellError;
import org.taketally.notebook.kernel.engine.output.Output;

/**
 * Collects what cells say into the notebook: neighbouring prints become one, a carriage return
 * begins the line anew, a display is updated wherever it stands.
 */
final class CellOutputs implements Output {

  private static final Pattern OVERWRITTEN = Pattern.compile("[^\\n]*\\r(?!\\n)");

  private final Map<String, List<JsonObject>> displays = new HashMap<>();
  private NotebookCell cell;
  private boolean clearing;

  /** What follows belongs to this cell. */
  synchronized void begin(NotebookCell next) {
    cell = next;
    clearing = false;
  }

  private void add(JsonObject output) {
    clearIfAsked();
    cell.outputs().add(output);
  }

  private void clearIfAsked() {
    if (clearing) {
      clearing = false;
      cell.outputs().asList().clear();
    }
  }

  @Override
  public synchronized void print(String stream, String text) {
    if (cell == null) {
      return;
    }
    clearIfAsked();
    JsonArray outputs = cell.outputs();
    JsonObject last =
        outputs.isEmpty() ? new JsonObject() : outputs.get(outputs.size() - 1).getAsJsonObject();
    boolean continues = last.has("name") && last.get("name").getAsString().equals(stream);
    JsonObject output = continues ? last : new JsonObject();
    output.addProperty("output_type", "stream");
    output.addProperty("name", stream);
    append(output, text);
    if (!continues) {
      outputs.add(output);
    }
  }

  /** Only the last line can still change, so the rest isn't touched again. */
  private static void append(JsonObject output, String text) {
    JsonArray lines = output.has("text") ? output.getAsJsonArray("text") : new JsonArray();
    String begun = "";
    if (!lines.isEmpty() && !lines.get(lines.size() - 1).getAsString().endsWith("\n")) {
      begun = lines.remove(lines.size() - 1).getAsString();
    }
    String whole = OVERWRITTEN.matcher((begun + text).replace("\r\n", "\n")).replaceAll("");
    lines.addAll(NotebookJson.lines(whole));
    output.add("text", lines);
  }

  synchronized void result(Bundle bundle, int count) {
    JsonObject output = shown("execute_result", bundle);
    output.addProperty("execution_count", count);
    add(output);
  }

  synchronized void error(CellError error) {
    JsonObject output = new JsonObject();
    output.addProperty("output_type", "error");
    output.addProperty("ename", error.name());
    output.addProperty("evalue", error.message());
    JsonArray traceback = new JsonArray();
    error.traceback().forEach(traceback::add);
    output.add("traceback", traceback);
    add(output);
  }

  @Override
  public synchronized void display(Bundle bundle) {
    JsonObject output = shown("display_data", bundle);
    add(output);
    if (!bundle.displayId().isEmpty()) {
      displays.computeIfAbsent(bundle.displayId(), id -> new ArrayList<>()).add(output);
    }
  }

  @Override
  public synchronized void update(Bundle bundle) {
    for (JsonObject output : displays.getOrDefault(bundle.displayId(), List.of())) {
      output.add("data", fileForm(bundle.data()));
      output.add("metadata", bundle.metadata());
    }
  }

  private static JsonObject shown(String type, Bundle bundle) {
    JsonObject output = new JsonObject();
    output.addProperty("output_type", type);
    output.add("data", fileForm(bundle.data()));
    output.add("metadata", bundle.metadata());
    return output;
  }

  /** Text is split into lines; pictures stay one string, JSON stays JSON. */
  private static JsonObject fileForm(JsonObject data) {
    JsonObject form = new JsonObject();
    for (Map.Entry<String, JsonElement> each : data.entrySet()) {
      String type = each.getKey();
      boolean text =
          each.getValue().isJsonPrimitive()
              && (type.startsWith("text/") || type.endsWith("+xml") || type.endsWith("javascript"));
      form.add(type, text ? NotebookJson.lines(each.getValue().getAsString()) : each.getValue());
    }
    return form;
  }

  @Override
  public synchronized void clear(boolean wait) {
    clearing = true;
    if (!wait) {
      clearIfAsked();
    }
  }

  @Override
  public void page(Bundle bundle) {
    // a page is shown beside a notebook, never in it
  }

  @Override
  public String ask(String prompt, boolean secret, Question question) throws IOException {
    throw new IOException("nobody can be asked while a notebook runs by itself: " + prompt);
  }
}
