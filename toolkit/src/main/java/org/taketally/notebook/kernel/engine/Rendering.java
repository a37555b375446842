package org.taketally.notebook.kernel.engine;

import com.google.gson.Gson;
import com.google.gson.JsonObject;
import java.util.Arrays;
import java.util.function.Consumer;
import org.dflib.jjava.jupyter.kernel.display.DisplayData;
import org.dflib.jjava.jupyter.kernel.display.Renderer;
import org.dflib.jjava.jupyter.kernel.display.common.Image;

/** Turns values into bundles, by the base library's registry of displays. */
final class Rendering {

  /** Longer text is cut: a frontend would choke on it. */
  private static final int LONGEST_TEXT = 100_000;

  private final Consumer<Renderer> displays;
  private Renderer renderer;

  Rendering(Consumer<Renderer> displays) {
    this.displays = displays;
  }

  /** May call the value's {@code toString}, so it belongs on the user's thread. */
  Bundle of(Object value) {
    if (value instanceof Bundle bundle) {
      return bundle;
    }
    if (value instanceof DisplayData data) {
      return bundle(data);
    }
    if (value instanceof String text && Drawing.isSvg(text)) {
      return Drawing.bundle(text);
    }
    if (value == null || value.getClass().getName().startsWith("java.lang.")) {
      return Bundle.text(cut(String.valueOf(value)));
    }
    if (value.getClass().isArray()) {
      return Bundle.text(cut(SnippetClasses.asNamed(arrayText(value))));
    }
    return bundle(renderer().render(value));
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
          "text/plain", cut(SnippetClasses.asNamed(forms.get("text/plain").getAsString())));
    }
    String id = data.hasDisplayId() ? data.getDisplayId() : "";
    return new Bundle(forms, part(all, "metadata"), id);
  }

  private static JsonObject part(JsonObject all, String name) {
    return all.has(name) ? all.getAsJsonObject(name) : new JsonObject();
  }

  private static String arrayText(Object array) {
    String text = Arrays.deepToString(new Object[] {array});
    return text.substring(1, text.length() - 1);
  }

  private static String cut(String text) {
    if (text.length() <= LONGEST_TEXT) {
      return text;
    }
    int left = text.length() - LONGEST_TEXT;
    return text.substring(0, LONGEST_TEXT) + "... (%,d more characters)".formatted(left);
  }
}
