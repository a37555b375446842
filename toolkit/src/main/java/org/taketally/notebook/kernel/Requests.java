package org.taketally.notebook.kernel;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.Optional;
import org.taketally.notebook.kernel.engine.Completions;
import org.taketally.notebook.kernel.engine.Engine;
import org.taketally.notebook.kernel.engine.output.Bundle;
import org.taketally.notebook.kernel.engine.source.Completeness;

/** Answers every request but the running of cells. */
final class Requests {

  private final Engine engine;
  private final History history;
  private final JsonObject info;

  Requests(Engine engine, History history, JsonObject info) {
    this.engine = engine;
    this.history = history;
    this.info = info;
  }

  /**
   * The reply's content, or empty if this kind of request isn't known.
   *
   * @param type e.g. {@code complete_request}
   * @param asked the request's content
   */
  Optional<JsonObject> answer(String type, JsonObject asked) {
    return Optional.ofNullable(
        switch (type) {
          case "kernel_info_request" -> info;
          case "complete_request" -> complete(asked);
          case "inspect_request" -> inspect(asked);
          case "is_complete_request" -> isComplete(asked);
          case "history_request" -> history(asked);
          case "comm_info_request" -> noComms();
          default -> null;
        });
  }

  private JsonObject complete(JsonObject asked) {
    String code = Json.text(asked, "code", "");
    Completions found = engine.complete(code, cursor(code, asked));
    JsonObject reply = Json.ok();
    JsonArray matches = new JsonArray();
    found.matches().forEach(matches::add);
    reply.add("matches", matches);
    reply.addProperty("cursor_start", CodePoints.fromUnits(code, found.start()));
    reply.addProperty("cursor_end", CodePoints.fromUnits(code, found.end()));
    reply.add("metadata", new JsonObject());
    return reply;
  }

  private JsonObject inspect(JsonObject asked) {
    String code = Json.text(asked, "code", "");
    boolean more = Json.number(asked, "detail_level", 0) > 0;
    Optional<Bundle> found = engine.inspect(code, cursor(code, asked), more);
    JsonObject reply = Json.ok();
    reply.addProperty("found", found.isPresent());
    reply.add("data", found.map(Bundle::data).orElseGet(JsonObject::new));
    reply.add("metadata", found.map(Bundle::metadata).orElseGet(JsonObject::new));
    return reply;
  }

  private static int cursor(String code, JsonObject asked) {
    return CodePoints.toUnits(code, Json.number(asked, "cursor_pos", Integer.MAX_VALUE));
  }

  private JsonObject isComplete(JsonObject asked) {
    Completeness found = engine.completeness(Json.text(asked, "code", ""));
    JsonObject reply = new JsonObject();
    switch (found.status()) {
      case COMPLETE -> reply.addProperty("status", "complete");
      case INVALID -> reply.addProperty("status", "invalid");
      case INCOMPLETE -> {
        reply.addProperty("status", "incomplete");
        reply.addProperty("indent", found.indent());
      }
    }
    return reply;
  }

  private JsonObject history(JsonObject asked) {
    JsonObject reply = Json.ok();
    reply.add("history", history.find(asked));
    return reply;
  }

  private static JsonObject noComms() {
    JsonObject reply = Json.ok();
    reply.add("comms", new JsonObject());
    return reply;
  }

  /** What a kernel says of itself. */
  static JsonObject info(KernelSetup setup) {
    JsonObject info = Json.ok();
    info.addProperty("protocol_version", "5.3");
    info.addProperty("implementation", setup.name().toLowerCase(java.util.Locale.ROOT));
    info.addProperty("implementation_version", setup.version());
    info.add("language_info", KernelSetup.languageInfo());
    info.addProperty(
        "banner",
        "%s %s, Java %s. %%help lists commands."
            .formatted(setup.name(), setup.version(), Runtime.version().feature()));
    info.addProperty("debugger", false);
    info.add("help_links", new JsonArray());
    return info;
  }
}
