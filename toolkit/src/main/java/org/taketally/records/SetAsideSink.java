package org.taketally.records;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Where rows that can't be used go. */
interface SetAsideSink extends AutoCloseable {

  /** Called once, before any row. */
  void begin(List<String> header);

  void add(SetAside.Row row);

  @Override
  void close();

  /** Keeps the rows. */
  final class Memory implements SetAsideSink {
    private final List<SetAside.Row> rows = new ArrayList<>();
    private List<String> header = List.of();

    @Override
    public void begin(List<String> theHeader) {
      header = theHeader;
    }

    @Override
    public void add(SetAside.Row row) {
      rows.add(row);
    }

    SetAside all() {
      return new SetAside(header, rows);
    }

    @Override
    public void close() {}
  }

  /** Counts on the user's own files to keep the rows. */
  final class Nowhere implements SetAsideSink {
    @Override
    public void begin(List<String> header) {}

    @Override
    public void add(SetAside.Row row) {}

    @Override
    public void close() {}
  }

  /** Writes each row at once, so that none is held. */
  final class Csv implements SetAsideSink {
    private final CsvWriter csv;

    Csv(Path path) {
      try {
        csv = CsvWriter.builder().build(Files.newBufferedWriter(path, StandardCharsets.UTF_8));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public void begin(List<String> header) {
      csv.writeRecord(SetAside.written(header));
    }

    @Override
    public void add(SetAside.Row row) {
      csv.writeRecord(row.written());
    }

    @Override
    public void close() {
      try {
        csv.close();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
