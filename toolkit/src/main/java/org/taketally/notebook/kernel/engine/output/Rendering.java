package org.taketally.notebook.kernel.engine.output;

import com.google.gson.Gson;
import com.google.gson.JsonObject;
import java.lang.reflect.Array;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.function.Function;
import org.dflib.jjava.jupyter.kernel.display.DisplayData;
import org.dflib.jjava.jupyter.kernel.display.Renderer;
import org.dflib.jjava.jupyter.kernel.display.common.Image;
import org.taketally.notebook.kernel.engine.source.SnippetNames;

/** Turns values into bundles, by the base library's registry of displays. */
public final class Rendering {

  /** Longer text is cut: a frontend would choke on it. */
  private static final int LONGEST_TEXT = 100_000;

  /** Of longer arrays only so many values are shown. */
  private static final int LONG_ARRAY = 100;

  private final Consumer<Renderer> displays;
  private final Function<String, byte[]> png;
  private Renderer renderer;

  /**
   * Rendering of one session.
   *
   * @param displays registers how values are shown
   * @param png makes a PNG picture of an SVG drawing, no bytes if it can't
   */
  public Rendering(Consumer<Renderer> displays, Function<String, byte[]> png) {
    this.displays = displays;
    this.png = png;
  }

  /** May call the value's {@code toString}, so it belongs on the user's thread. */
  public Bundle of(Object value) {
    if (value instanceof Bundle bundle) {
      return bundle;
    }
    Object held = held(value);
    if (held != value) {
      return of(held);
    }
    if (value instanceof DisplayData data) {
      return bundle(data);
    }
    if (value instanceof String text && Drawing.isSvg(text)) {
      return Drawing.bundle(text, png);
    }
    if (value == null || value.getClass().getName().startsWith("java.lang.")) {
      return Bundle.text(cut(String.valueOf(value)));
    }
    if (value.getClass().isArray()) {
      return Bundle.text(cut(SnippetNames.asNamed(arrayText(value))));
    }
    Bundle shown = bundle(renderer().render(value));
    return Dumps.isOne(value, shown) ? Bundle.text(Dumps.outlined(value)) : shown;
  }

  /** What an optional holds, or the value itself. */
  private static Object held(Object value) {
    if (value instanceof Optional<?> any && any.isPresent()) {
      return any.get();
    }
    if (value instanceof OptionalDouble number && number.isPresent()) {
      return number.getAsDouble();
    }
    if (value instanceof OptionalInt number && number.isPresent()) {
      return number.getAsInt();
    }
    return value instanceof OptionalLong number && number.isPresent() ? number.getAsLong() : value;
  }

  /**
   * A value in forms of choice, with plain text beside.
   *
   * @param value anything; text is taken as written in the form asked for
   * @param mediaTypes forms; none for those that suit the value
   */
  public Bundle as(Object value, List<String> mediaTypes) {
    if (mediaTypes.isEmpty()) {
      return of(value);
    }
    JsonObject forms = new JsonObject();
    boolean drawing = value instanceof String text && Drawing.isSvg(text);
    JsonObject all =
        value instanceof CharSequence && !drawing ? new JsonObject() : every(value, mediaTypes);
    for (String type : mediaTypes) {
      if (value instanceof CharSequence text && !(drawing && all.has(type))) {
        forms.addProperty(type, text.toString());
      } else if (all.has(type)) {
        forms.add(type, all.get(type));
      }
    }
    if (forms.isEmpty()) {
      throw new IllegalArgumentException(
          "%s can't be shown as %s; it has: %s"
              .formatted(
                  value == null ? "null" : SnippetNames.asNamed(value.getClass().getName()),
                  String.join(", ", mediaTypes),
                  String.join(", ", of(value).data().keySet())));
    }
    Bundle shown = new Bundle(forms, new JsonObject(), "");
    return forms.has("text/plain") ? shown : shown.withPlainText(plainText(value, forms));
  }

  private JsonObject every(Object value, List<String> mediaTypes) {
    JsonObject all = of(value).data().deepCopy();
    if (value != null) {
      String[] types = mediaTypes.toArray(String[]::new);
      part(new Gson().toJsonTree(renderer().renderAs(value, types)).getAsJsonObject(), "data")
          .entrySet()
          .forEach(form -> all.add(form.getKey(), form.getValue()));
    }
    return all;
  }

  private String plainText(Object value, JsonObject forms) {
    if (forms.has("image/svg+xml") && value instanceof CharSequence) {
      return Drawing.bundle(value.toString()).plainText();
    }
    String text = value instanceof CharSequence ? value.toString() : of(value).plainText();
    return forms.has("text/html") && value instanceof CharSequence
        ? text.replaceAll("<[^>]*>", "")
        : text;
  }

  private synchronized Renderer renderer() {
    if (renderer == null) {
      Renderer fresh = new Renderer();
      Image.registerAll(fresh);
      displays.accept(fresh);
      renderer = fresh;
    }
    return renderer;
  }

  private static Bundle bundle(DisplayData data) {
    JsonObject all = new Gson().toJsonTree(data).getAsJsonObject();
    JsonObject forms = part(all, "data");
    if (forms.has("text/plain")) {
      forms.addProperty(
          "text/plain", cut(SnippetNames.asNamed(forms.get("text/plain").getAsString())));
    }
    String id = data.hasDisplayId() ? data.getDisplayId() : "";
    return new Bundle(forms, part(all, "metadata"), id);
  }

  private static JsonObject part(JsonObject all, String name) {
    return all.has(name) ? all.getAsJsonObject(name) : new JsonObject();
  }

  private static String arrayText(Object array) {
    int size = Array.getLength(array);
    String text = Arrays.deepToString(new Object[] {size > LONG_ARRAY ? shortened(array) : array});
    return size > LONG_ARRAY
        ? "%s... (%,d more)".formatted(text.substring(1, text.length() - 2), size - LONG_ARRAY)
        : text.substring(1, text.length() - 1);
  }

  private static Object shortened(Object array) {
    Object first = Array.newInstance(array.getClass().getComponentType(), LONG_ARRAY);
    System.arraycopy(array, 0, first, 0, LONG_ARRAY);
    return first;
  }

  private static String cut(String text) {
    if (text.length() <= LONGEST_TEXT) {
      return text;
    }
    int left = text.length() - LONGEST_TEXT;
    return text.substring(0, LONGEST_TEXT) + "... (%,d more characters)".formatted(left);
  }
}
