package org.taketally.notebook.kernel.engine.output;

import com.google.gson.JsonObject;

/**
 * One value in several forms, best last to none: the frontend picks.
 *
 * @param data by media type, e.g. {@code text/plain}
 * @param metadata by media type
 * @param displayId name under which it can be updated, empty if none
 */
public record Bundle(JsonObject data, JsonObject metadata, String displayId) {

  /**
   * Plain text alone.
   *
   * @param text to show
   * @return a bundle with {@code text/plain}
   */
  public static Bundle text(String text) {
    return text("text/plain", text);
  }

  /**
   * One textual form alone.
   *
   * @param mediaType e.g. {@code text/html}
   * @param text in that form
   * @return a bundle with one entry
   */
  public static Bundle text(String mediaType, String text) {
    JsonObject data = new JsonObject();
    data.addProperty(mediaType, text);
    return new Bundle(data, new JsonObject(), "");
  }

  /**
   * This bundle under a name.
   *
   * @param id name for updates
   * @return a bundle with the same forms
   */
  public Bundle named(String id) {
    return new Bundle(data, metadata, id);
  }

  /** This bundle with one more form. */
  Bundle with(String mediaType, String text) {
    JsonObject more = data.deepCopy();
    more.addProperty(mediaType, text);
    return new Bundle(more, metadata, displayId);
  }

  /** This bundle, its PNG picture to be shown at a width. */
  Bundle sized(int width) {
    JsonObject size = new JsonObject();
    size.addProperty("width", width);
    JsonObject more = metadata.deepCopy();
    more.add("image/png", size);
    return new Bundle(data, width > 0 ? more : metadata, displayId);
  }

  /**
   * This bundle with plain text beside its other forms.
   *
   * @param text for frontends that show nothing richer
   * @return a bundle with {@code text/plain}
   */
  public Bundle withPlainText(String text) {
    JsonObject more = data.deepCopy();
    more.addProperty("text/plain", text);
    return new Bundle(more, metadata, displayId);
  }

  /**
   * The plain text.
   *
   * @return {@code text/plain}, or empty text if there is none
   */
  public String plainText() {
    return data.has("text/plain") ? data.get("text/plain").getAsString() : "";
  }
}
