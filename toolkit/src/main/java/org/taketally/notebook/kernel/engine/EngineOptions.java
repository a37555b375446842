package org.taketally.notebook.kernel.engine;

import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import org.dflib.jjava.jupyter.kernel.display.Renderer;

/**
 * What an engine begins with.
 *
 * @param imports names to import, e.g. {@code java.util.*} or {@code static a.b.C.*}
 * @param classpath jars and folders of classes beside the program's own
 * @param displays registers how values are shown; called when the first such value comes
 * @param words words that a value knows, e.g. names of its columns, offered within quotes; given a
 *     value of a variable and the text quoted last before, and must be quick
 * @param advice what to do about an error, or empty text
 * @param png makes a PNG picture of an SVG drawing, no bytes if it can't
 * @param doing what code is at, by where it is, in a few words or empty text; told while a cell
 *     takes long
 */
public record EngineOptions(
    List<String> imports,
    List<Path> classpath,
    Consumer<Renderer> displays,
    BiFunction<Object, String, Collection<String>> words,
    Function<Throwable, String> advice,
    Function<String, byte[]> png,
    Function<StackTraceElement[], String> doing) {

  private static final List<String> USUAL =
      List.of(
          "java.io.*",
          "java.math.*",
          "java.nio.file.*",
          "java.time.*",
          "java.util.*",
          "java.util.concurrent.*",
          "java.util.function.*",
          "java.util.regex.*",
          "java.util.stream.*",
          "static org.taketally.notebook.kernel.engine.CellFunctions.*");

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
    return new EngineOptions(
        USUAL,
        List.of(),
        renderer -> {},
        (value, before) -> List.of(),
        thrown -> "",
        svg -> new byte[0],
        stack -> "");
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
    return new EngineOptions(all, classpath, displays, words, advice, png, doing);
  }

  /**
   * With displays.
   *
   * @param registrations registers how values are shown
   * @return changed options
   */
  public EngineOptions showing(Consumer<Renderer> registrations) {
    return new EngineOptions(imports, classpath, registrations, words, advice, png, doing);
  }

  /**
   * With words to complete within quotes.
   *
   * @param known words that a value knows, given what was quoted last before, or empty text
   * @return changed options
   */
  public EngineOptions completing(BiFunction<Object, String, Collection<String>> known) {
    return new EngineOptions(imports, classpath, displays, known, advice, png, doing);
  }

  /**
   * With advice on errors.
   *
   * @param known what to do about an error, or empty text
   * @return changed options
   */
  public EngineOptions advising(Function<Throwable, String> known) {
    return new EngineOptions(imports, classpath, displays, words, known, png, doing);
  }

  /**
   * With PNG pictures beside drawings.
   *
   * @param maker makes a PNG picture of an SVG drawing, no bytes if it can't
   * @return changed options
   */
  public EngineOptions picturing(Function<String, byte[]> maker) {
    return new EngineOptions(imports, classpath, displays, words, advice, maker, doing);
  }

  /**
   * With words for what takes long.
   *
   * @param naming what code is at, by where it is, innermost first; empty text if that isn't known
   * @return changed options
   */
  public EngineOptions naming(Function<StackTraceElement[], String> naming) {
    return new EngineOptions(imports, classpath, displays, words, advice, png, naming);
  }
}
