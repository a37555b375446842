package org.taketally.notebook.kernel;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;

/** Reads what a request says, or what it means by saying nothing. */
final class Json {

  private Json() {}

  static String text(JsonObject json, String name, String otherwise) {
    return given(json, name) ? json.get(name).getAsString() : otherwise;
  }

  static int number(JsonObject json, String name, int otherwise) {
    return given(json, name) ? json.get(name).getAsInt() : otherwise;
  }

  static boolean flag(JsonObject json, String name, boolean otherwise) {
    return given(json, name) ? json.get(name).getAsBoolean() : otherwise;
  }

  static JsonObject object(JsonObject json, String name) {
    JsonElement value = json.get(name);
    return value != null && value.isJsonObject() ? value.getAsJsonObject() : new JsonObject();
  }

  private static boolean given(JsonObject json, String name) {
    return json.has(name) && json.get(name).isJsonPrimitive();
  }

  static JsonObject ok() {
    JsonObject reply = new JsonObject();
    reply.addProperty("status", "ok");
    return reply;
  }
}
