package org.taketally.wording;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.List;
import java.util.Optional;
import org.taketally.terms.Interval;

/** Values as JSON has them. */
final class JsonValues {

  private JsonValues() {}

  static JsonElement orNull(Optional<JsonObject> object) {
    return object.<JsonElement>map(found -> found).orElse(JsonNull.INSTANCE);
  }

  public static void range(JsonObject object, Interval interval) {
    object.add("low", number(interval.low()));
    object.add("high", number(interval.high()));
  }

  static JsonArray words(List<String> sentences) {
    JsonArray array = new JsonArray();
    sentences.forEach(array::add);
    return array;
  }

  /** JSON has no NaN or infinity. */
  public static JsonElement number(double value) {
    return Double.isFinite(value) ? new JsonPrimitive(value) : JsonNull.INSTANCE;
  }
}
