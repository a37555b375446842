package org.taketally.notebook.kernel.engine;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.Suggestion;
import org.taketally.notebook.kernel.engine.source.Identifiers;
import org.taketally.notebook.kernel.engine.source.LocalNames;
import org.taketally.notebook.kernel.engine.source.Piece;

/**
 * What could stand where the cursor is.
 *
 * @param matches texts that may replace the range, best first
 * @param start where the range begins, in UTF-16 units
 * @param end where it ends: behind the identifier the cursor is in
 */
public record Completions(List<String> matches, int start, int end) {

  public Completions {
    matches = List.copyOf(matches);
  }

  static Completions at(int cursor, String code, Workspace workspace) {
    SourceCodeAnalysis analysis = workspace.analysis;
    Piece piece = Piece.lastOf(code.substring(0, cursor), analysis);
    if (piece == null) {
      return new Completions(List.of(), cursor, cursor);
    }
    if (piece.kind() == Piece.Kind.COMMAND) {
      List<String> commands =
          Commands.names().stream().filter(name -> name.startsWith(piece.source())).toList();
      return new Completions(commands, commands.isEmpty() ? cursor : piece.offset(), cursor);
    }
    String own = code.substring(piece.offset(), cursor);
    int quote = openQuote(own);
    return quote < 0
        ? ofNames(cursor, code, piece, workspace)
        : withinQuotes(
            piece.offset() + quote + 1, cursor, code, own.substring(0, quote), workspace);
  }

  private static Completions withinQuotes(
      int start, int cursor, String code, String statement, Workspace workspace) {
    List<String> words = workspace.words.at(code.substring(start, cursor), statement);
    return new Completions(
        words,
        words.isEmpty() ? cursor : start,
        words.isEmpty() ? cursor : endOfQuoted(code, cursor));
  }

  /** The closing quote if there is one on this line, else the cursor. */
  private static int endOfQuoted(String code, int cursor) {
    int end = cursor;
    while (end < code.length() && code.charAt(end) != '"' && code.charAt(end) != '\n') {
      end++;
    }
    return end < code.length() && code.charAt(end) == '"' ? end : cursor;
  }

  private static Completions ofNames(int cursor, String code, Piece piece, Workspace workspace) {
    SourceCodeAnalysis analysis = workspace.analysis;
    String above = code.substring(0, piece.offset());
    String own = code.substring(piece.offset(), cursor);
    int start = Identifiers.startOf(code, cursor);
    Set<String> matches = new LinkedHashSet<>();
    boolean member = start > 0 && code.charAt(start - 1) == '.';
    if (member) {
      matches.addAll(workspace.packages().after(dotted(code, cursor)));
    } else {
      String prefix = code.substring(start, cursor);
      LocalNames.at(above, own).stream()
          .filter(name -> name.startsWith(prefix))
          .forEach(matches::add);
    }
    int[] anchor = {start - piece.offset()};
    List<Suggestion> found = analysis.completionSuggestions(own, own.length(), anchor);
    if (found.isEmpty() && !above.isBlank()) {
      // what was declared above in this cell is known inside a block
      String block = "{" + above + own;
      found = analysis.completionSuggestions(block, block.length(), anchor);
      anchor[0] -= 1 + above.length();
    }
    found.stream()
        .filter(Suggestion::matchesType)
        .forEach(each -> matches.add(each.continuation()));
    found.forEach(each -> matches.add(each.continuation()));
    matches.removeIf(match -> match.startsWith("$"));
    return matches.isEmpty()
        ? new Completions(List.of(), cursor, cursor)
        : new Completions(
            List.copyOf(matches),
            found.isEmpty() ? start : piece.offset() + anchor[0],
            Identifiers.endOf(code, cursor));
  }

  /** The name with dots that ends at the cursor. */
  private static String dotted(String code, int cursor) {
    int start = cursor;
    while (start > 0
        && (code.charAt(start - 1) == '.'
            || Character.isJavaIdentifierPart(code.charAt(start - 1)))) {
      start--;
    }
    return code.substring(start, cursor);
  }

  /** Where the quote stands that is open at the end of a text; -1 if none is. */
  private static int openQuote(String code) {
    int open = -1;
    for (int i = code.lastIndexOf('\n') + 1; i < code.length(); i++) {
      char c = code.charAt(i);
      if (c == '\\') {
        i++;
      } else if (c == '"') {
        open = open < 0 ? i : -1;
      } else if (open < 0 && code.startsWith("//", i)) {
        return -1;
      }
    }
    return open;
  }
}
