package org.taketally.notebook.kernel.engine.source;

import java.util.HashMap;
import java.util.Map;

/** Remembers which cell each snippet came from, so that errors can name cell and line. */
public final class Origins {

  /**
   * Where a snippet was written.
   *
   * @param cell number of the cell, 0 for code that isn't numbered
   * @param line line of the cell it begins on, from 0
   * @param source its text
   */
  public record Origin(int cell, int line, String source) {

    /** E.g. {@code cell [3], line 5}. */
    public String place(int snippetLine) {
      return (cell > 0 ? "cell [" + cell + "]" : "this cell") + ", line " + (line + snippetLine);
    }

    /** One line of the source, or empty text. */
    public String text(int snippetLine) {
      String[] lines = source.split("\n", -1);
      return snippetLine >= 1 && snippetLine <= lines.length ? lines[snippetLine - 1] : "";
    }
  }

  private final Map<String, Origin> bySnippet = new HashMap<>();
  private Origin current = new Origin(0, 0, "");

  public void begin(int cell, Piece piece) {
    current = new Origin(cell, piece.line(), piece.source());
  }

  public Origin current() {
    return current;
  }

  /** Called by JShell for each new snippet. */
  public String newSnippet(int number) {
    String id = "s" + number;
    bySnippet.put(id, current);
    return id;
  }

  /** The origin of a frame's file name as JShell gives it, {@code #id}; null if it isn't one. */
  public Origin ofFile(String fileName) {
    return fileName != null && fileName.startsWith("#")
        ? bySnippet.get(fileName.substring(1))
        : null;
  }
}
