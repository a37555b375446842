package org.taketally.publish.opendata;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.taketally.records.columns.RecordColumn;
import org.taketally.wording.opendata.MiappeWords;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.Table;

/**
 * What plant databases ask of an experiment, in the headings of MIAPPE 1.2: studies (a season at a
 * site), biological material (scions and stocks apart), observed variables.
 *
 * @see <a href="https://github.com/MIAPPE/MIAPPE">MIAPPE checklist and data model</a>
 */
final class MiappeTables {

  private final Table frame;
  private final PackageOptions options;

  MiappeTables(Table frame, PackageOptions options) {
    this.frame = frame;
    this.options = options;
  }

  List<PackageFile> all() {
    return List.of(studies(), material(), variables());
  }

  private String text(RecordColumn column, int row) {
    return frame.containsColumn(column.columnName())
        ? frame.column(column.columnName()).getString(row)
        : "";
  }

  private PackageFile studies() {
    Map<List<String>, LocalDate[]> spans = new LinkedHashMap<>();
    for (int row = 0; row < frame.rowCount(); row++) {
      List<String> key = List.of(text(RecordColumn.SEASON, row), text(RecordColumn.SITE, row));
      LocalDate[] span = spans.computeIfAbsent(key, k -> new LocalDate[2]);
      LocalDate first = day(RecordColumn.GRAFT_DATE, row);
      LocalDate last = day(RecordColumn.ASSESSED_DATE, row);
      span[0] = first != null && (span[0] == null || first.isBefore(span[0])) ? first : span[0];
      LocalDate end = last == null ? first : last;
      span[1] = end != null && (span[1] == null || end.isAfter(span[1])) ? end : span[1];
    }
    List<List<String>> lines = new ArrayList<>();
    spans.forEach((key, span) -> lines.add(study(key.get(0), key.get(1), span)));
    return PackageFile.table("study.csv", MiappeWords.STUDY, lines);
  }

  private LocalDate day(RecordColumn column, int row) {
    return frame.containsColumn(column.columnName())
        ? ((DateColumn) frame.column(column.columnName())).get(row)
        : null;
  }

  private List<String> study(String season, String site, LocalDate[] span) {
    String id = (options.name() + " " + season + " " + site).strip().replaceAll("\\s+", "-");
    return List.of(
        options.title(),
        options.licence().id(),
        MiappeWords.VERSION,
        id,
        MiappeWords.studyTitle(season, site),
        span[0] == null ? "" : span[0].toString(),
        span[1] == null ? "" : span[1].toString(),
        String.join("; ", options.creators()),
        options.place().country().orElse(MiappeWords.UNREPORTED),
        site.isEmpty() ? MiappeWords.UNREPORTED : site,
        MiappeWords.design(),
        hierarchy(),
        MiappeWords.unit(),
        MiappeWords.UNREPORTED,
        season);
  }

  private String hierarchy() {
    boolean blocks = frame.containsColumn(RecordColumn.BLOCK.columnName());
    return blocks ? "site>block>plant" : "site>plant";
  }

  /** Scion and stock are two plants: each has a line of its own. */
  private PackageFile material() {
    Map<List<String>, Long> grafts = new TreeMap<>(MiappeTables::order);
    IntColumn counts = frame.intColumn(RecordColumn.GRAFTS.columnName());
    for (int row = 0; row < frame.rowCount(); row++) {
      for (RecordColumn column :
          List.of(RecordColumn.CULTIVAR, RecordColumn.ROOTSTOCK, RecordColumn.INTERSTOCK)) {
        String name = text(column, row);
        if (!name.isEmpty()) {
          grafts.merge(List.of(role(column), name), (long) counts.getInt(row), Long::sum);
        }
      }
    }
    List<List<String>> lines = new ArrayList<>();
    grafts.forEach(
        (key, count) -> {
          boolean scion = key.get(0).equals("scion");
          lines.add(
              List.of(
                  key.get(0) + ":" + key.get(1),
                  scion
                      ? options.place().organism().orElse(MiappeWords.UNREPORTED)
                      : MiappeWords.UNREPORTED,
                  scion ? "cultivar:" + key.get(1) : "",
                  key.get(1),
                  key.get(0),
                  Long.toString(count)));
        });
    return PackageFile.table("germplasm.csv", MiappeWords.MATERIAL, lines);
  }

  private static int order(List<String> one, List<String> other) {
    int roles = -one.get(0).compareTo(other.get(0));
    return roles != 0 ? roles : one.get(1).compareTo(other.get(1));
  }

  private static String role(RecordColumn column) {
    return column == RecordColumn.CULTIVAR ? "scion" : column.columnName();
  }

  private PackageFile variables() {
    List<List<String>> lines = new ArrayList<>();
    for (RecordColumn column :
        List.of(
            RecordColumn.GRAFTS,
            RecordColumn.TAKES,
            RecordColumn.OUTCOME,
            RecordColumn.FAILURE_CAUSE,
            RecordColumn.SCION_DIAMETER_MM,
            RecordColumn.STOCK_DIAMETER_MM,
            RecordColumn.STOCK_CONDITION)) {
      if (frame.containsColumn(column.columnName())) {
        lines.add(
            List.of(
                column.columnName(),
                column.columnName().replace('_', ' '),
                MiappeWords.trait(column),
                MiappeWords.method(column),
                column.closed() ? String.join("; ", column.allowed()) : column.unit(),
                (MiappeWords.isResult(column)
                        ? RecordColumn.ASSESSED_DATE
                        : RecordColumn.GRAFT_DATE)
                    .columnName()));
      }
    }
    return PackageFile.table("observation-variables.csv", MiappeWords.VARIABLES, lines);
  }
}
