package org.taketally.records.rows;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.taketally.files.Csv;
import org.taketally.files.SafeFile;
import org.taketally.records.sources.RowSource;

/**
 * Rows that can't be used until a person repairs them: as typed, with place and reasons. The
 * repaired file is read again beside the others, with the same dictionary; the columns added here
 * are passed over.
 *
 * @param header headings as spelt in the files, of all files together
 * @param rows one per row set aside, in the order read
 */
public record SetAside(List<String> header, List<Row> rows) {

  static final String FILE = RowSource.FIRST_FILE;
  static final String LINE = "set_aside_line";
  static final String EXTRA = "set_aside_extra";
  static final String REASONS = "set_aside_reasons";

  /** Columns added to the typed ones. */
  static final List<String> ADDED = List.of(EXTRA, FILE, LINE, REASONS);

  /**
   * One row.
   *
   * @param file file it stood in first
   * @param line 1-based line there
   * @param fields as typed, one for each heading
   * @param extra values that stood under no heading
   * @param reasons what is wrong, one sentence each, at least one
   */
  public record Row(
      String file, long line, List<String> fields, String extra, List<String> reasons) {

    public Row {
      fields = List.copyOf(fields);
      reasons = List.copyOf(reasons);
    }

    List<String> written() {
      List<String> all = new ArrayList<>(fields);
      all.add(extra);
      all.add(file);
      all.add(Long.toString(line));
      all.add(String.join("; ", reasons));
      return all;
    }
  }

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
   * As CSV: the typed columns, then values without heading, file, line and reasons.
   *
   * @return text that can be repaired and read again
   */
  public String csv() {
    StringWriter text = new StringWriter();
    try (Csv csv = Csv.to(text)) {
      csv.add(written(header));
      rows.forEach(row -> csv.add(row.written()));
    }
    return text.toString();
  }

  static List<String> written(List<String> header) {
    List<String> all = new ArrayList<>(header);
    all.addAll(ADDED);
    return all;
  }

  /**
   * Writes {@link #csv()} as UTF-8.
   *
   * @param path file to write
   * @throws IOException if it can't be written
   */
  public void write(Path path) throws IOException {
    SafeFile.write(path, csv());
  }
}
