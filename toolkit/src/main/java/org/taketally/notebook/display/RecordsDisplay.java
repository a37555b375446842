package org.taketally.notebook.display;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.files.FileNames;
import org.taketally.records.GraftRecords;
import org.taketally.records.rows.SetAside;
import org.taketally.terms.Plural;
import org.taketally.terms.Problem;
import org.taketally.terms.Provenance;
import org.taketally.terms.Severity;

/** Records, their problems, rows set aside, and cells. */
final class RecordsDisplay {

  private static final int PROBLEMS = 50;
  private static final int LEVELS = 8;

  private RecordsDisplay() {}

  static Shown records(GraftRecords records) {
    Provenance from = records.provenance();
    Shown counts =
        Shown.paragraph(
            "%s assessed, %,d took. %s read, %,d kept, %,d set aside."
                .formatted(
                    Plural.of(records.grafts(), "graft"),
                    records.takes(),
                    Plural.of(from.rowsRead(), "row"),
                    from.rowsKept(),
                    from.rowsSetAside()));
    Shown table = Shown.of(Tables.grid(records.frame(), "records"));
    if (records.problems().isEmpty()) {
      return Shown.all(counts, table);
    }
    Shown problems = Shown.warning(summary(records.problems()) + "; see problems().");
    return Shown.all(counts, problems, table);
  }

  private static String summary(Collection<Problem> problems) {
    Map<Severity, Long> counts =
        problems.stream()
            .collect(Collectors.groupingBy(Problem::severity, TreeMap::new, Collectors.counting()));
    return counts.entrySet().stream()
        .map(each -> Plural.of(each.getValue(), word(each.getKey())))
        .collect(Collectors.joining(", "));
  }

  private static String word(Severity severity) {
    return severity.name().toLowerCase(Locale.ROOT);
  }

  static Shown problem(Problem problem) {
    return Shown.paragraph(word(problem.severity()) + ": " + problem.sentence());
  }

  static Shown problems(Collection<Problem> problems) {
    List<Problem> first = problems.stream().limit(PROBLEMS).toList();
    UnaryOperator<String> shortened = shortNames(first.stream().map(Problem::file));
    List<List<String>> rows = new ArrayList<>();
    first.forEach(each -> rows.add(row(each, shortened.apply(each.file()))));
    if (problems.size() > PROBLEMS) {
      rows.add(null);
    }
    String caption =
        "%s: %s".formatted(Plural.of(problems.size(), "problem"), summary(problems))
            + (problems.size() > PROBLEMS ? "; the first " + PROBLEMS + " are shown" : "");
    return Shown.of(
        Grid.of(
            caption,
            List.of("kind", "file", "line", "column", "found", "expected", "what to do"),
            rows));
  }

  /** Files without their folders, unless two then have the same name. */
  private static UnaryOperator<String> shortNames(Stream<String> files) {
    List<String> all = files.distinct().toList();
    boolean distinct = all.stream().map(FileNames::withoutFolder).distinct().count() == all.size();
    return distinct ? FileNames::withoutFolder : file -> file;
  }

  private static List<String> row(Problem problem, String file) {
    return List.of(
        word(problem.severity()),
        file,
        problem.line() == 0 ? "" : String.valueOf(problem.line()),
        problem.column(),
        problem.found(),
        problem.expected(),
        problem.remedy());
  }

  static Shown setAside(SetAside aside) {
    List<String> headings = new ArrayList<>(List.of("file", "line", "reasons"));
    headings.addAll(aside.header());
    List<SetAside.Row> first = aside.rows().stream().limit(PROBLEMS).toList();
    UnaryOperator<String> shortened = shortNames(first.stream().map(SetAside.Row::file));
    List<List<String>> rows = new ArrayList<>();
    first.forEach(each -> rows.add(row(each, shortened.apply(each.file()), headings.size())));
    String caption = Plural.of(aside.size(), "row") + " set aside, as typed";
    return Shown.of(Grid.of(caption, headings, rows));
  }

  private static List<String> row(SetAside.Row row, String file, int width) {
    String place = row.file() + " line " + row.line() + ", "; // said in columns of their own
    String reasons =
        row.reasons().stream()
            .map(reason -> reason.startsWith(place) ? reason.substring(place.length()) : reason)
            .collect(Collectors.joining("; "));
    List<String> values = new ArrayList<>(List.of(file, String.valueOf(row.line()), reasons));
    values.addAll(row.fields());
    while (values.size() < width) {
      values.add("");
    }
    return values.subList(0, width);
  }

  static Shown cells(Cells cells) {
    List<List<String>> rows = new ArrayList<>();
    for (Factor factor : cells.factors()) {
      List<String> levels = factor.levels();
      String named = String.join(", ", levels.subList(0, Math.min(LEVELS, levels.size())));
      rows.add(
          List.of(
              factor.name(),
              "%,d".formatted(levels.size()),
              levels.size() > LEVELS ? named + ", ..." : named));
    }
    cells.measures().forEach(measure -> rows.add(List.of(measure.name(), "", "number")));
    String caption =
        "%,d cells, %,d grafts, %,d took"
            .formatted(cells.size(), cells.graftsTotal(), cells.takesTotal());
    return Shown.of(Grid.of(caption, List.of("column", "levels", "which"), rows));
  }
}
