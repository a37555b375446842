package org.taketally.records;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Rows that can't be used until a person repairs them: as typed, with place and reasons.
 *
 * @param header headings as spelt in the file
 * @param rows one per row set aside, in the order read
 */
public record SetAside(List<String> header, List<Row> rows) {

  /** Columns added to the typed ones; skipped when the repaired file is read again. */
  static final List<String> ADDED =
      List.of("set_aside_file", "set_aside_line", "set_aside_reasons");

  /**
   * One row.
   *
   * @param file file it stood in
   * @param line 1-based line
   * @param fields as typed
   * @param reasons what is wrong, one sentence each
   */
  public record Row(String file, long line, List<String> fields, List<String> reasons) {}

  public SetAside {
    header = List.copyOf(header);
    rows = List.copyOf(rows);
  }

  /**
   * Number of rows.
   *
   * @return 0 or more
   */
  public int size() {
    return rows.size();
  }

  /**
   * As CSV: the typed columns, then file, line and reasons.
   *
   * @return text that can be repaired and read again
   */
  public String csv() {
    StringWriter text = new StringWriter();
    CsvWriter csv = CsvWriter.builder().build(text);
    List<String> head = new ArrayList<>(header);
    head.addAll(ADDED);
    csv.writeRecord(head);
    for (Row row : rows) {
      List<String> fields = new ArrayList<>(row.fields());
      while (fields.size() < header.size()) {
        fields.add("");
      }
      fields.add(row.file());
      fields.add(Long.toString(row.line()));
      fields.add(String.join("; ", row.reasons()));
      csv.writeRecord(fields);
    }
    return text.toString();
  }

  /**
   * Writes {@link #csv()} as UTF-8.
   *
   * @param path file to write
   * @throws IOException if it can't be written
   */
  public void write(Path path) throws IOException {
    Files.writeString(path, csv(), StandardCharsets.UTF_8);
  }
}
