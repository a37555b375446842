package org.taketally.study;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.taketally.study.StudySummary.Row;

/**
 * What the first study found in the designs both studies share, per cent of its trials (100 or 200
 * of each; 50 or 100 of the largest).
 *
 * @param kind name of the kind here
 * @param differ how often it said that stocks differ
 * @param equal how often it said that all make no practical difference
 */
record FirstStudy(String kind, int differ, int equal) {

  private static final List<FirstStudy> FOUND =
      List.of(
          new FirstStudy("plain-2-300 alike", 1, 24),
          new FirstStudy("plain-2-300 twice", 94, 0),
          new FirstStudy("plain-2-800 alike", 1, 84),
          new FirstStudy("plain-2-800 half", 3, 48),
          new FirstStudy("plain-2-800 twice", 100, 0),
          new FirstStudy("plain-4-300 alike", 5, 0),
          new FirstStudy("plain-4-300 twice", 71, 0),
          new FirstStudy("plain-4-800 alike", 5, 4),
          new FirstStudy("plain-4-800 twice", 99, 0),
          new FirstStudy("plain-4-2500 alike", 0, 91),
          new FirstStudy("plain-4-2500 half", 7, 40),
          new FirstStudy("plain-4-2500 twice", 100, 0),
          new FirstStudy("uneven-4-300 twice", 75, 0),
          new FirstStudy("uneven-4-800 alike", 4, 0),
          new FirstStudy("uneven-4-800 twice", 100, 0),
          new FirstStudy("uneven-6-2500 alike", 2, 0),
          new FirstStudy("uneven-6-2500 twice", 100, 0),
          new FirstStudy("daily-4-800 alike", 4, 0),
          new FirstStudy("daily-4-800 twice", 94, 0));

  /** Beside what this study found, one line a kind. */
  static String table(List<Row> rows) {
    return FOUND.stream()
        .map(first -> first.line(rows))
        .flatMap(Optional::stream)
        .collect(Collectors.joining());
  }

  private Optional<String> line(List<Row> rows) {
    return rows.stream()
        .filter(row -> row.kind().name().equals(kind))
        .findFirst()
        .map(
            row ->
                String.format(
                    Locale.ROOT,
                    "| %s | %.0f | %d %% | %.0f %% | %d %% | %.0f %% | %d |%n",
                    kind,
                    100 * row.kind().gap(),
                    differ,
                    100.0 * row.differ() / row.trials().size(),
                    equal,
                    100.0 * row.equalsNamed() / row.trials().size(),
                    row.trials().size()));
  }
}
