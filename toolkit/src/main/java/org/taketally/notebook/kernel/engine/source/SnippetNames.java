package org.taketally.notebook.kernel.engine.source;

import java.util.regex.Pattern;

/** Names JShell gives to the classes it makes of cells. */
public final class SnippetNames {

  /** Where JShell puts the classes it makes of cells. */
  public static final String PREFIX = "REPL.";

  /** What JShell puts before the name of a class declared in a cell. */
  private static final Pattern BEFORE_NAME =
      Pattern.compile("REPL\\.\\$JShell\\$\\d+(?:_\\d+)*[A-Z]*\\$");

  private SnippetNames() {}

  /** A text with classes of cells called as they were named there. */
  public static String asNamed(String text) {
    return BEFORE_NAME.matcher(text).replaceAll("");
  }

  public static boolean isSnippetClass(String className) {
    return className.startsWith(PREFIX);
  }
}
