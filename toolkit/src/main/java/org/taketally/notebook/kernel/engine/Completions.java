package org.taketally.notebook.kernel.engine;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.Suggestion;

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

  static Completions at(int cursor, String code, SourceCodeAnalysis analysis) {
    Piece piece = Piece.lastOf(code.substring(0, cursor), analysis);
    if (piece == null) {
      return new Completions(List.of(), cursor, cursor);
    }
    if (piece.kind() == Piece.Kind.COMMAND) {
      List<String> commands =
          Commands.names().stream().filter(name -> name.startsWith(piece.source())).toList();
      return new Completions(commands, commands.isEmpty() ? cursor : piece.offset(), cursor);
    }
    String above = code.substring(0, piece.offset());
    String own = code.substring(piece.offset(), cursor);
    int start = Identifiers.startOf(code, cursor);
    Set<String> matches = new LinkedHashSet<>();
    boolean member = start > 0 && code.charAt(start - 1) == '.';
    if (!member && !endsInString(own)) {
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

  private static boolean endsInString(String code) {
    String line =
        code.substring(code.lastIndexOf('\n') + 1).replace("\\\\", "").replace("\\\"", "");
    return line.chars().filter(c -> c == '"').count() % 2 == 1;
  }
}
