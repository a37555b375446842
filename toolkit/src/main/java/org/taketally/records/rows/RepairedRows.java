package org.taketally.records.rows;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.taketally.files.FileNames;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.sources.RawRow;
import org.taketally.records.sources.RowSource;

/**
 * Keeps a row that was set aside, repaired and read again from counting twice: beside its sheet, if
 * it was repaired there too, or in a second file of rows set aside.
 */
public final class RepairedRows {

  private final SetAsideShape shape;
  private final List<RowSource> sources;
  private final Map<String, String> sheets = new HashMap<>();
  private final Set<Origin> repaired = new HashSet<>();
  private final Map<Origin, String> kept = new HashMap<>();

  private record Origin(String sheet, long line) {}

  public RepairedRows(SetAsideShape shape, List<RowSource> sources) {
    this.shape = shape;
    this.sources = sources;
    for (int i = 0; i < sources.size(); i++) {
      if (shape.readsAgain(i)) {
        look(i);
      }
    }
  }

  private void look(int source) {
    try (RowSource.Rows rows = sources.get(source).open()) {
      for (RawRow raw = rows.next(); raw != null; raw = rows.next()) {
        if (shape.originalFile(source, raw) != null) {
          repaired.add(origin(source, raw));
        }
      }
    }
  }

  private Origin origin(int source, RawRow raw) {
    String original = shape.originalFile(source, raw);
    return original == null
        ? new Origin(sources.get(source).name(), raw.line())
        : new Origin(sheet(original), shape.originalLine(source, raw));
  }

  /** The sheet read here that a row set aside names: by its whole name, else by its file's name. */
  private String sheet(String named) {
    return sheets.computeIfAbsent(
        named,
        name -> {
          Map<String, String> alike = new LinkedHashMap<>();
          for (int i = 0; i < sources.size(); i++) {
            String own = sources.get(i).name();
            if (own.equals(name)) {
              return own;
            }
            if (!shape.readsAgain(i)
                && FileNames.withoutFolder(own).equals(FileNames.withoutFolder(name))) {
              alike.put(own, own);
            }
          }
          return alike.size() == 1 ? alike.keySet().iterator().next() : name;
        });
  }

  /** Sets a usable row aside if it was read before in another place. */
  public void apply(int source, RawRow raw, RowReport report) {
    if (repaired.isEmpty() || report.hasErrors()) {
      return;
    }
    Origin origin = origin(source, raw);
    if (!repaired.contains(origin)) {
      return;
    }
    String before = kept.putIfAbsent(origin, report.place().toString());
    if (before != null) {
      report.add(
          ProblemKind.DUPLICATE_RECORD,
          "",
          () ->
              new ProblemText(
                  "line %d of %s".formatted(origin.line(), origin.sheet()),
                  "each row once; this one was read before at " + before,
                  "a row repaired in its sheet needs no file of rows set aside, and one file of"
                      + " them is enough: leave one of the two out"));
    }
  }
}
