package org.taketally.publish.opendata;

import com.google.gson.JsonArray;
import java.util.ArrayList;
import java.util.List;
import org.taketally.files.Csv;
import org.taketally.records.Assessments;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.RecordColumn;
import org.taketally.wording.opendata.FileWords;
import tech.tablesaw.api.Table;

/** Repeated counts in the columns they are read in. */
final class RepeatedCounts {

  /** Name of the file. */
  static final String FILE = "assessments.csv";

  private RepeatedCounts() {}

  static PackageFile of(Assessments counts, Table frame) {
    boolean seasons = frame.containsColumn(RecordColumn.SEASON.columnName());
    var grafted = frame.dateColumn(RecordColumn.GRAFT_DATE.columnName());
    List<List<String>> lines = new ArrayList<>();
    List<String> header = header(seasons);
    lines.add(header);
    for (Assessments.History history : counts.histories()) {
      for (int i = 0; i < history.days().length; i++) {
        List<String> line = new ArrayList<>(List.of(history.record()));
        if (seasons) {
          line.add(frame.stringColumn(RecordColumn.SEASON.columnName()).getString(history.row()));
        }
        line.add(grafted.get(history.row()).plusDays(history.days()[i]).toString());
        line.add(Integer.toString(history.alive()[i]));
        lines.add(line);
      }
    }
    JsonArray fields = new JsonArray();
    header.forEach(name -> fields.add(TableFields.field(name, kind(name))));
    return PackageFile.table(FILE, FileWords.ASSESSMENTS.title(), Csv.text(lines), fields);
  }

  private static List<String> header(boolean seasons) {
    List<String> header = new ArrayList<>(List.of(RecordColumn.RECORD.columnName()));
    if (seasons) {
      header.add(RecordColumn.SEASON.columnName());
    }
    header.add(RecordColumn.ASSESSED_DATE.columnName());
    header.add(KnownColumns.ALIVE.name());
    return header;
  }

  private static ColumnKind kind(String name) {
    if (name.equals(KnownColumns.ALIVE.name())) {
      return ColumnKind.COUNT;
    }
    return name.equals(RecordColumn.ASSESSED_DATE.columnName())
        ? ColumnKind.DATE
        : ColumnKind.LEVELS;
  }
}
