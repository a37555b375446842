package org.taketally.notebook.kernel.engine.source;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.Completeness;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;

/**
 * One statement, declaration, expression or command of a cell.
 *
 * @param source its text, without blank space before it
 * @param evaluated the same, ended with a semicolon where one is needed
 * @param offset where it begins in the cell, in UTF-16 units
 * @param line line of the cell it begins on, from 0
 * @param kind how it is to be handled
 */
public record Piece(String source, String evaluated, int offset, int line, Kind kind) {

  /** How a piece is to be handled. */
  public enum Kind {
    JAVA,
    COMMAND,
    UNFINISHED
  }

  private static final Pattern COMMENT_OR_SPACE =
      Pattern.compile("\\s+|//[^\\n]*|/\\*(?s:.*?)\\*/");

  /** {@code %time} with code behind it on its line, which is run like any other. */
  private static final Pattern TIMED_CODE = Pattern.compile("%time(?=[ \\t]+\\S)");

  private static final Pattern NAME = Pattern.compile("[\\p{L}_$][\\w$]*");

  /** Splits a cell. At most the last piece is unfinished. */
  public static List<Piece> of(String cell, SourceCodeAnalysis analysis) {
    List<Piece> pieces = new ArrayList<>();
    int offset = skipSpace(cell, 0);
    while (offset < cell.length()) {
      Piece piece = next(cell, offset, analysis);
      pieces.add(piece);
      offset = skipSpace(cell, offset + piece.source.length());
    }
    return pieces;
  }

  /** The last piece of a text; null if there is none. */
  public static Piece lastOf(String text, SourceCodeAnalysis analysis) {
    List<Piece> pieces = of(text, analysis);
    return pieces.isEmpty() ? null : pieces.get(pieces.size() - 1);
  }

  private static Piece next(String cell, int offset, SourceCodeAnalysis analysis) {
    int line = (int) cell.substring(0, offset).chars().filter(c -> c == '\n').count();
    if (cell.charAt(offset) == '%' || isShell(cell, offset, analysis)) {
      Matcher timed = TIMED_CODE.matcher(cell).region(offset, cell.length());
      int end = timed.lookingAt() ? timed.end() : cell.indexOf('\n', offset);
      String command = cell.substring(offset, end < 0 ? cell.length() : end);
      return new Piece(command, command, offset, line, Kind.COMMAND);
    }
    String rest = cell.substring(offset);
    CompletionInfo info = analysis.analyzeCompletion(rest);
    if (info.completeness() == Completeness.DEFINITELY_INCOMPLETE
        || info.completeness() == Completeness.CONSIDERED_INCOMPLETE) {
      return new Piece(rest, rest, offset, line, Kind.UNFINISHED);
    }
    int length = rest.length() - info.remaining().length();
    String source = rest.substring(0, length > 0 ? length : rest.length());
    String end = info.completeness() == Completeness.COMPLETE_WITH_SEMI ? "\n;" : "";
    return new Piece(source, source + end, offset, line, Kind.JAVA);
  }

  /**
   * Whether a line that begins with an exclamation mark is meant for the system's shell: it is Java
   * if what follows is a truth value of it.
   */
  private static boolean isShell(String cell, int offset, SourceCodeAnalysis analysis) {
    if (cell.charAt(offset) != '!') {
      return false;
    }
    int end = cell.indexOf('\n', offset);
    String operand = cell.substring(offset + 1, end < 0 ? cell.length() : end).strip();
    Matcher name = NAME.matcher(operand);
    boolean declaredAbove =
        name.lookingAt()
            && Pattern.compile("\\b" + Pattern.quote(name.group()) + "\\b")
                .matcher(cell.substring(0, offset))
                .find();
    return !operand.isEmpty()
        && !declaredAbove
        && analysis.analyzeType(operand, operand.length()) == null;
  }

  /** A piece that as a whole is a command. */
  public static Piece command(String source) {
    return new Piece(source, source, 0, 0, Kind.COMMAND);
  }

  private static int skipSpace(String cell, int offset) {
    Matcher space = COMMENT_OR_SPACE.matcher(cell);
    int end = offset;
    while (space.region(end, cell.length()).lookingAt()) {
      end = space.end();
    }
    return end;
  }

  /** As JShell can run it. */
  public Piece runnable() {
    if (kind != Kind.JAVA) {
      return this;
    }
    String opened = RecordConstructors.opened(source);
    return new Piece(opened, opened + evaluated.substring(source.length()), offset, line, kind);
  }

  /** Whether it ends without a semicolon, so that a value it has is shown. */
  public boolean isOpenEnded(SourceCodeAnalysis analysis) {
    return kind == Kind.JAVA && analysis.analyzeCompletion(source + "\n;").remaining().isBlank();
  }
}
