package org.taketally.notebook.kernel.engine.source;

import java.util.List;
import jdk.jshell.SourceCodeAnalysis;

/**
 * Whether code can be run as it stands.
 *
 * @param status one of three
 * @param indent blank space the next line should begin with, where more is needed
 */
public record Completeness(Status status, String indent) {

  /** Whether code can be run as it stands. */
  public enum Status {
    /** It can. */
    COMPLETE,
    /** More must follow. */
    INCOMPLETE,
    /** Nothing that follows can make it right. */
    INVALID
  }

  /**
   * JShell's splitter lets much pass, so the compiler's parser has the last word: as what a piece
   * may be.
   */
  private static final List<String> SHAPES =
      List.of(
          "class C { void m() throws Throwable { %s\n } }",
          "class C { %s\n }", "class C { Object o = %s\n; }", "%s\n");

  public static Completeness of(String code, SourceCodeAnalysis analysis) {
    if (code.stripLeading().startsWith("%%") && !code.stripLeading().startsWith("%%time")) {
      return new Completeness(Status.COMPLETE, ""); // not Java
    }
    for (Piece piece : Piece.of(code, analysis)) {
      if (piece.kind() == Piece.Kind.UNFINISHED) {
        return new Completeness(Status.INCOMPLETE, indentAfter(code));
      }
      if (piece.kind() == Piece.Kind.JAVA && !parses(piece.evaluated())) {
        return new Completeness(Status.INVALID, "");
      }
    }
    return new Completeness(Status.COMPLETE, "");
  }

  private static boolean parses(String source) {
    return SHAPES.stream().anyMatch(shape -> JavaText.parse(shape.formatted(source)).valid());
  }

  /** As deep as the last line, one step deeper after an opening bracket. */
  private static String indentAfter(String code) {
    String last = code.lines().reduce("", (before, line) -> line);
    String indent = last.substring(0, last.length() - last.stripLeading().length());
    String text = last.strip();
    boolean opens = text.endsWith("{") || text.endsWith("(") || text.endsWith("[");
    return opens ? indent + "    " : indent;
  }
}
