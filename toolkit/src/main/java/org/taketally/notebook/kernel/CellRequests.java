package org.taketally.notebook.kernel;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.Map;
import org.taketally.notebook.kernel.engine.Engine;
import org.taketally.notebook.kernel.engine.output.Bundle;
import org.taketally.notebook.kernel.engine.output.CellError;
import org.taketally.notebook.kernel.engine.output.CellResult;
import org.taketally.notebook.kernel.wire.Message;

/** Runs cells as {@code execute_request} asks. Belongs to the shell channel's thread. */
final class CellRequests {

  private final Engine engine;
  private final KernelOutput output;
  private final History history;
  private int count;

  CellRequests(Engine engine, KernelOutput output, History history) {
    this.engine = engine;
    this.output = output;
    this.history = history;
  }

  /** Runs a cell, publishes its result or error, and gives the reply's content. */
  JsonObject run(Message request) {
    JsonObject asked = request.content();
    String code = Json.text(asked, "code", "");
    boolean silent = Json.flag(asked, "silent", false);
    boolean kept = !silent && Json.flag(asked, "store_history", true);
    if (kept) {
      count++;
    }
    output.cellBegins(request);
    output.input(code, count);
    CellResult result = engine.run(count, code);
    result.value().ifPresent(value -> output.result(value, count));
    result.error().ifPresent(output::error);
    if (kept && !code.isBlank()) {
      history.add(count, code, result.value().map(Bundle::plainText).orElse(""));
    }
    return result.error().isPresent()
        ? failed(result.error().get())
        : succeeded(Json.object(asked, "user_expressions"));
  }

  private JsonObject failed(CellError error) {
    JsonObject reply = KernelOutput.errorContent(error);
    reply.addProperty("status", "error");
    reply.addProperty("execution_count", count);
    reply.add("user_expressions", new JsonObject());
    reply.add("payload", new JsonArray());
    return reply;
  }

  private JsonObject succeeded(JsonObject expressions) {
    JsonObject reply = Json.ok();
    reply.addProperty("execution_count", count);
    reply.add("payload", output.pages());
    JsonObject values = new JsonObject();
    for (Map.Entry<String, JsonElement> each : expressions.entrySet()) {
      values.add(each.getKey(), expression(each.getValue().getAsString()));
    }
    reply.add("user_expressions", values);
    return reply;
  }

  private JsonObject expression(String code) {
    CellResult result = engine.run(0, code);
    if (result.error().isPresent()) {
      JsonObject failed = KernelOutput.errorContent(result.error().get());
      failed.addProperty("status", "error");
      return failed;
    }
    Bundle value = result.value().orElse(Bundle.text(""));
    JsonObject good = Json.ok();
    good.add("data", value.data());
    good.add("metadata", value.metadata());
    return good;
  }

  /** The reply to a cell that was queued behind one that failed. */
  JsonObject aborted() {
    JsonObject reply = new JsonObject();
    reply.addProperty("status", "aborted");
    reply.addProperty("execution_count", count);
    return reply;
  }
}
