package org.taketally.app;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** A table of texts in columns for a terminal: the first column to the left, the others too. */
final class TextTable {

  private TextTable() {}

  static List<String> lines(List<String> headings, List<List<String>> rows) {
    List<List<String>> all = new ArrayList<>(List.of(headings));
    all.addAll(rows);
    int[] widths =
        IntStream.range(0, headings.size())
            .map(c -> all.stream().mapToInt(row -> row.get(c).length()).max().orElse(0))
            .toArray();
    return all.stream()
        .map(
            row ->
                IntStream.range(0, widths.length)
                    .mapToObj(c -> row.get(c) + " ".repeat(widths[c] - row.get(c).length()))
                    .collect(Collectors.joining("  "))
                    .stripTrailing())
        .toList();
  }
}
