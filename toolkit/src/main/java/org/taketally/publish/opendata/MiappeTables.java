package org.taketally.publish.opendata;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.taketally.files.Csv;
import org.taketally.records.columns.RecordColumn;
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

  private static final String VERSION = "1.2";
  private static final String UNREPORTED = "Unreported";

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
    lines.add(STUDY.stream().map(column -> column[0]).toList());
    spans.forEach((key, span) -> lines.add(study(key.get(0), key.get(1), span)));
    return table("study.csv", "Studies: a season at a site (MIAPPE 1.2)", lines, STUDY);
  }

  private LocalDate day(RecordColumn column, int row) {
    return frame.containsColumn(column.columnName())
        ? ((DateColumn) frame.column(column.columnName())).get(row)
        : null;
  }

  private static final List<String[]> STUDY =
      List.of(
          new String[] {"Investigation title", "what the data are"},
          new String[] {"License", "terms of passing them on, SPDX identifier"},
          new String[] {"MIAPPE version", "of the checklist these headings are from"},
          new String[] {"Study unique ID", "package, season and site"},
          new String[] {"Study title", "season and site in words"},
          new String[] {"Start date of study", "first day of grafting"},
          new String[] {"End date of study", "last day of counting, or of grafting"},
          new String[] {"Contact institution", "who answers for the records"},
          new String[] {"Geographic location (country)", "two letters of ISO 3166, if given"},
          new String[] {"Experimental site name", "site as in records.csv"},
          new String[] {"Description of the experimental design", "as far as it is known"},
          new String[] {"Observation unit level hierarchy", "how rows are nested"},
          new String[] {"Observation unit description", "what a row is"},
          new String[] {"Description of growth facility", "where the grafts stood"},
          new String[] {"season", "season as in records.csv"});

  private List<String> study(String season, String site, LocalDate[] span) {
    String id = (options.name() + " " + season + " " + site).strip().replaceAll("\\s+", "-");
    String title =
        "Grafts" + (season.isEmpty() ? "" : " of " + season) + (site.isEmpty() ? "" : ", " + site);
    return List.of(
        options.title(),
        options.licence().id(),
        VERSION,
        id,
        title,
        span[0] == null ? "" : span[0].toString(),
        span[1] == null ? "" : span[1].toString(),
        String.join("; ", options.creators()),
        options.place().country().orElse(UNREPORTED),
        site.isEmpty() ? UNREPORTED : site,
        "unknown: records of grafts as made; a layout is not part of them",
        hierarchy(),
        "a graft, or a batch of like grafts (grafts), with how many were alive (takes)",
        UNREPORTED,
        season);
  }

  private String hierarchy() {
    boolean blocks = frame.containsColumn(RecordColumn.BLOCK.columnName());
    return blocks ? "site>block>plant" : "site>plant";
  }

  private static final List<String[]> MATERIAL =
      List.of(
          new String[] {"Biological material ID", "role and name"},
          new String[] {"Organism", "species, as far as it was said"},
          new String[] {"Infraspecific name", "cultivar or type of stock"},
          new String[] {"Material source accession name", "name as in records.csv"},
          new String[] {"role", "scion, rootstock or interstock"},
          new String[] {"grafts", "grafts it had a part in"});

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
    lines.add(MATERIAL.stream().map(column -> column[0]).toList());
    grafts.forEach(
        (key, count) -> {
          boolean scion = key.get(0).equals("scion");
          lines.add(
              List.of(
                  key.get(0) + ":" + key.get(1),
                  scion ? options.place().organism().orElse(UNREPORTED) : UNREPORTED,
                  scion ? "cultivar:" + key.get(1) : "",
                  key.get(1),
                  key.get(0),
                  Long.toString(count)));
        });
    return table("germplasm.csv", "Scions and stocks (MIAPPE 1.2)", lines, MATERIAL);
  }

  private static int order(List<String> one, List<String> other) {
    int roles = -one.get(0).compareTo(other.get(0));
    return roles != 0 ? roles : one.get(1).compareTo(other.get(1));
  }

  private static String role(RecordColumn column) {
    return column == RecordColumn.CULTIVAR ? "scion" : column.columnName();
  }

  private static final List<String[]> VARIABLES =
      List.of(
          new String[] {"Variable ID", "column of records.csv"},
          new String[] {"Variable name", "in words"},
          new String[] {"Trait", "what was looked at"},
          new String[] {"Method", "how"},
          new String[] {"Scale", "unit or list of values"},
          new String[] {"Time scale", "when"});

  private PackageFile variables() {
    List<List<String>> lines = new ArrayList<>();
    lines.add(VARIABLES.stream().map(column -> column[0]).toList());
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
        boolean result = column == RecordColumn.TAKES || column == RecordColumn.OUTCOME;
        lines.add(
            List.of(
                column.columnName(),
                column.columnName().replace('_', ' '),
                result ? "graft alive" : column.meaning(),
                column == RecordColumn.GRAFTS ? "counted when made" : "seen by eye",
                column.closed() ? String.join("; ", column.allowed()) : column.unit(),
                result ? "assessed_date" : "graft_date"));
      }
    }
    return table("observation-variables.csv", "What was observed (MIAPPE 1.2)", lines, VARIABLES);
  }

  private static PackageFile table(
      String file, String title, List<List<String>> lines, List<String[]> columns) {
    String[] fields =
        columns.stream().flatMap(c -> java.util.stream.Stream.of(c)).toArray(String[]::new);
    return PackageFile.table(file, title, Csv.text(lines), TableFields.texts(fields));
  }
}
