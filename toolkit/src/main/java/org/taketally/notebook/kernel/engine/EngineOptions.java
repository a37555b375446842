package org.taketally.notebook.kernel.engine;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.dflib.jjava.jupyter.kernel.display.Renderer;

/**
 * What an engine begins with.
 *
 * @param imports names to import, e.g. {@code java.util.*} or {@code static a.b.C.*}
 * @param classpath jars and folders of classes beside the program's own
 * @param displays registers how values are shown; called when the first such value comes
 */
public record EngineOptions(
    List<String> imports, List<Path> classpath, Consumer<Renderer> displays) {

  private static final List<String> USUAL =
      List.of(
          "java.io.*",
          "java.math.*",
          "java.nio.file.*",
          "java.time.*",
          "java.util.*",
          "java.util.function.*",
          "java.util.stream.*",
          "static org.taketally.notebook.kernel.engine.Notebook.*");

  public EngineOptions {
    imports = List.copyOf(imports);
    classpath = List.copyOf(classpath);
  }

  /**
   * The usual imports, the program's own classes, plain displays.
   *
   * @return options to start from
   */
  public static EngineOptions usual() {
    return new EngineOptions(USUAL, List.of(), renderer -> {});
  }

  /**
   * With more imports.
   *
   * @param more names to import after the present ones
   * @return changed options
   */
  public EngineOptions importing(List<String> more) {
    List<String> all = new java.util.ArrayList<>(imports);
    all.addAll(more);
    return new EngineOptions(all, classpath, displays);
  }

  /**
   * With displays.
   *
   * @param registrations registers how values are shown
   * @return changed options
   */
  public EngineOptions showing(Consumer<Renderer> registrations) {
    return new EngineOptions(imports, classpath, registrations);
  }
}
