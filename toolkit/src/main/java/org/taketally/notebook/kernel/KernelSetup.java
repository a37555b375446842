package org.taketally.notebook.kernel;

import com.google.gson.JsonObject;
import java.util.function.Consumer;
import org.taketally.notebook.kernel.engine.EngineOptions;

/**
 * How a kernel presents itself and what it begins with.
 *
 * @param name shown to users
 * @param version shown to users
 * @param engine imports, classes and displays
 * @param log gets a line for everything an administrator may want to know
 */
public record KernelSetup(String name, String version, EngineOptions engine, Consumer<String> log) {

  /**
   * The language of cells, as frontends and notebook files want it told.
   *
   * @return the protocol's {@code language_info}
   */
  public static JsonObject languageInfo() {
    JsonObject language = new JsonObject();
    language.addProperty("name", "java");
    language.addProperty("version", Runtime.version().toString());
    language.addProperty("mimetype", "text/x-java");
    language.addProperty("file_extension", ".java");
    language.addProperty("pygments_lexer", "java");
    language.addProperty("codemirror_mode", "text/x-java");
    return language;
  }
}
