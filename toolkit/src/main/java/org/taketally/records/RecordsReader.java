package org.taketally.records;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.terms.Problem;
import org.taketally.terms.Provenance;
import org.taketally.terms.Severity;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** Reads graft records. Options are kept in the reader, which never changes. */
public final class RecordsReader {

  private RecordsReader() {}

  /**
   * A reader of sheets in the columns of {@link RecordColumn}.
   *
   * @return the reader
   */
  public static RecordsReader withDefaults() {
    return new RecordsReader();
  }

  /**
   * Reads files together.
   *
   * @param files CSV files
   * @return the records
   * @throws RecordsUnreadable if a file can't be read at all
   */
  public GraftRecords read(List<Path> files) {
    Draft draft = new Draft();
    for (Path file : files) {
      draft.add(file);
    }
    return draft.finish(files.stream().map(Path::toString).toList());
  }

  /** What is being put together while files are read. */
  private static final class Draft {
    private final Map<String, List<String>> columns = new LinkedHashMap<>();
    private final List<Problem> problems = new ArrayList<>();
    private final List<SetAside.Row> setAside = new ArrayList<>();
    private List<String> header = List.of();
    private long read;
    private int kept;

    void add(Path file) {
      try (CsvReader<CsvRecord> csv =
          CsvReader.builder().ignoreDifferentFieldCount(true).ofCsvRecord(file)) {
        List<String> names = null;
        for (CsvRecord row : csv) {
          if (names == null) {
            names = row.getFields();
            header = names;
            names.forEach(name -> columns.computeIfAbsent(name, n -> blanks()));
          } else {
            addRow(file.toString(), names, row);
          }
        }
      } catch (IOException e) {
        throw new RecordsUnreadable(
            new Problem(Severity.ERROR, file.toString(), 0, "", "", "a file", "check the name"));
      }
    }

    private List<String> blanks() {
      List<String> list = new ArrayList<>();
      for (int i = 0; i < kept; i++) {
        list.add("");
      }
      return list;
    }

    private void addRow(String file, List<String> names, CsvRecord row) {
      read++;
      Map<String, String> fields = new LinkedHashMap<>();
      for (int i = 0; i < names.size(); i++) {
        fields.put(names.get(i), i < row.getFieldCount() ? row.getField(i) : "");
      }
      List<Problem> wrong = check(file, row.getStartingLineNumber(), fields);
      problems.addAll(wrong);
      if (!wrong.isEmpty()) {
        List<String> reasons = wrong.stream().map(Problem::sentence).toList();
        setAside.add(new SetAside.Row(file, row.getStartingLineNumber(), row.getFields(), reasons));
        return;
      }
      columns.forEach((name, values) -> values.add(fields.getOrDefault(name, "")));
      kept++;
    }

    private static List<Problem> check(String file, long line, Map<String, String> fields) {
      List<Problem> wrong = new ArrayList<>();
      fields.forEach(
          (name, value) ->
              RecordColumn.named(name)
                  .filter(column -> !readable(column, value))
                  .ifPresent(
                      column ->
                          wrong.add(
                              new Problem(
                                  Severity.ERROR,
                                  file,
                                  line,
                                  name,
                                  value,
                                  "a " + column.kind().name().toLowerCase(java.util.Locale.ROOT),
                                  "correct it"))));
      return wrong;
    }

    private static boolean readable(RecordColumn column, String value) {
      if (value.isBlank()) {
        return !column.needed();
      }
      try {
        switch (column.kind()) {
          case COUNT -> Integer.parseInt(value);
          case NUMBER -> Double.parseDouble(value);
          case DATE -> LocalDate.parse(value);
          default -> {
            return !column.closed() || column.allowed().contains(value);
          }
        }
        return true;
      } catch (NumberFormatException | DateTimeParseException e) {
        return false;
      }
    }

    GraftRecords finish(List<String> sources) {
      Table frame = Table.create("records");
      for (String name : columns.keySet()) {
        if (!name.equals("grafts") && !name.equals("takes")) {
          frame.addColumns(column(name));
        }
      }
      counts(frame);
      derive(frame);
      return new GraftRecords(
          frame,
          problems,
          new SetAside(header, setAside),
          new Provenance(sources, read, setAside.size()));
    }

    private Column<?> column(String name) {
      List<String> values = columns.get(name);
      RecordColumn.Kind kind =
          RecordColumn.named(name).map(RecordColumn::kind).orElse(RecordColumn.Kind.LEVELS);
      if (kind == RecordColumn.Kind.DATE) {
        DateColumn dates = DateColumn.create(name);
        values.forEach(v -> dates.append(v.isBlank() ? null : LocalDate.parse(v)));
        return dates;
      }
      if (kind == RecordColumn.Kind.NUMBER) {
        DoubleColumn numbers = DoubleColumn.create(name);
        values.forEach(v -> numbers.append(v.isBlank() ? Double.NaN : Double.parseDouble(v)));
        return numbers;
      }
      return StringColumn.create(name, values);
    }

    private void counts(Table frame) {
      IntColumn grafts = IntColumn.create("grafts");
      IntColumn takes = IntColumn.create("takes");
      for (int row = 0; row < kept; row++) {
        String made = field("grafts", row);
        grafts.append(made.isBlank() ? 1 : Integer.parseInt(made));
        String alive = field("takes", row);
        if (!alive.isBlank()) {
          takes.append(Integer.parseInt(alive));
        } else if (field("outcome", row).equals("taken")) {
          takes.append(1);
        } else if (field("outcome", row).equals("failed")) {
          takes.append(0);
        } else {
          takes.appendMissing();
        }
      }
      frame.addColumns(grafts, takes);
    }

    private String field(String name, int row) {
      return columns.containsKey(name) ? columns.get(name).get(row) : "";
    }

    private void derive(Table frame) {
      StringColumn pairing = StringColumn.create("pairing");
      DoubleColumn storage = DoubleColumn.create("storage_days");
      StringColumn day = StringColumn.create("grafting_day");
      StringColumn season = StringColumn.create("season");
      for (int row = 0; row < kept; row++) {
        pairing.append(field("cultivar", row) + " × " + field("rootstock", row));
        String graft = field("graft_date", row);
        String cut = field("budwood_cut_date", row);
        storage.append(
            graft.isBlank() || cut.isBlank()
                ? Double.NaN
                : ChronoUnit.DAYS.between(LocalDate.parse(cut), LocalDate.parse(graft)));
        day.append(
            graft.isBlank() || field("site", row).isBlank()
                ? ""
                : field("site", row) + " " + graft);
        season.append(
            !field("season", row).isBlank() || graft.isBlank()
                ? field("season", row)
                : graft.substring(0, 4));
      }
      if (columns.containsKey("season")) {
        frame.removeColumns("season");
      }
      frame.addColumns(season, pairing, storage, day);
    }
  }
}
