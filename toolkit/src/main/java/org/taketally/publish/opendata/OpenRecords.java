package org.taketally.publish.opendata;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.taketally.files.Csv;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.wording.opendata.FileWords;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/**
 * Records as they go out: usable rows in our columns, and the dictionary that reads them back.
 * Unless names were asked for, grafters are numbered in the order they first come and notes stay
 * behind.
 */
public final class OpenRecords {

  private static final Set<String> WORKED_OUT =
      Set.of(
          DerivedColumn.PAIRING.columnName(),
          DerivedColumn.GRAFTING_DAY.columnName(),
          DerivedColumn.GRAFT_ATTEMPT.columnName(),
          DerivedColumn.DIAMETER_MISMATCH.columnName());

  private final GraftRecords records;
  private final String dictionary;

  private OpenRecords(GraftRecords records, String dictionary) {
    this.records = records;
    this.dictionary = dictionary;
  }

  /**
   * Records to go out.
   *
   * @param read as read from the sheets
   * @param named whether grafters' names and notes go out as they are
   * @return the same rows
   * @throws IllegalStateException if they don't read back to the same counts
   */
  public static OpenRecords of(GraftRecords read, boolean named) {
    Table frame = Table.create(read.frame().name());
    for (Column<?> column : read.frame().columns()) {
      boolean stays = !named && column.name().equals(RecordColumn.NOTES.columnName());
      if (!WORKED_OUT.contains(column.name()) && !stays) {
        boolean coded = !named && column.name().equals(RecordColumn.GRAFTER.columnName());
        frame.addColumns(coded ? numbered((StringColumn) column) : column);
      }
    }
    String dictionary = dictionary(read, frame);
    GraftRecords again =
        RecordsReader.defaults()
            .withDictionary(SheetDictionary.parse("dictionary.json", dictionary))
            .read(frame);
    if (again.frame().rowCount() != read.frame().rowCount()
        || again.grafts() != read.grafts()
        || again.takes() != read.takes()) {
      throw new IllegalStateException(
          "these records don't read back to the same counts: %,d rows of %,d, %,d of %,d takes; %s"
              .formatted(
                  again.frame().rowCount(),
                  read.frame().rowCount(),
                  again.takes(),
                  read.takes(),
                  again.problems().stream()
                      .findFirst()
                      .map(problem -> problem.sentence())
                      .orElse("")));
    }
    return new OpenRecords(again, dictionary);
  }

  private static StringColumn numbered(StringColumn names) {
    Map<String, String> codes = new LinkedHashMap<>();
    StringColumn coded = StringColumn.create(names.name());
    for (String name : names) {
      if (name == null || name.isEmpty()) {
        coded.appendMissing();
      } else {
        coded.append(codes.computeIfAbsent(name, n -> FileWords.numberedGrafter(codes.size() + 1)));
      }
    }
    return coded;
  }

  private static String dictionary(GraftRecords read, Table frame) {
    JsonObject json = new JsonObject();
    json.addProperty("about", FileWords.aboutDictionary());
    json.addProperty("blank_result", "unassessed");
    if (!read.batches().isEmpty()) {
      JsonArray batches = new JsonArray();
      read.batches().forEach(batches::add);
      json.add("batches", batches);
    }
    JsonObject columns = new JsonObject();
    for (Column<?> column : frame.columns()) {
      if (column instanceof StringColumn && !KnownColumns.isKnown(column.name())) {
        JsonObject levels = new JsonObject();
        levels.addProperty("levels", true);
        columns.add(column.name(), levels);
      }
    }
    if (!columns.isEmpty()) {
      json.add("columns", columns);
    }
    return new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create().toJson(json) + "\n";
  }

  /**
   * The rows that go out, to be analysed.
   *
   * @return records with the batches of the sheets
   */
  public GraftRecords records() {
    return records;
  }

  PackageFile dictionary() {
    return PackageFile.text("dictionary.json", FileWords.DICTIONARY.title(), dictionary);
  }

  PackageFile table() {
    List<Column<?>> columns = new ArrayList<>();
    for (Column<?> column : records.frame().columns()) {
      if (!WORKED_OUT.contains(column.name())) {
        columns.add(column);
      }
    }
    List<List<String>> lines = new ArrayList<>();
    lines.add(columns.stream().map(Column::name).toList());
    for (int row = 0; row < records.frame().rowCount(); row++) {
      List<String> line = new ArrayList<>(columns.size());
      for (Column<?> column : columns) {
        line.add(cell(column, row));
      }
      lines.add(line);
    }
    JsonArray fields = new JsonArray();
    columns.forEach(column -> fields.add(TableFields.field(column.name(), kind(column))));
    return PackageFile.table("records.csv", FileWords.RECORDS.title(), Csv.text(lines), fields);
  }

  private static String cell(Column<?> column, int row) {
    if (column.isMissing(row)) {
      return "";
    }
    return column instanceof DoubleColumn numbers
        ? new BigDecimal(Double.toString(numbers.getDouble(row)))
            .stripTrailingZeros()
            .toPlainString()
        : column.getString(row);
  }

  private static ColumnKind kind(Column<?> column) {
    if (column instanceof IntColumn) {
      return ColumnKind.COUNT;
    }
    if (column instanceof DateColumn) {
      return ColumnKind.DATE;
    }
    return column instanceof DoubleColumn ? ColumnKind.NUMBER : ColumnKind.LEVELS;
  }
}
