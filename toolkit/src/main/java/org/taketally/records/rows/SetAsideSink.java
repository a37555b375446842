package org.taketally.records.rows;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.taketally.files.NewFile;

/** Where rows that can't be used go. */
public interface SetAsideSink extends AutoCloseable {

  /** Called once, before any row. */
  void begin(List<String> header);

  void add(SetAside.Row row);

  /** Called once, after all rows; without it nothing was set aside that counts. */
  default void end() {}

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

    public SetAside all() {
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
    private final NewFile file;
    private final org.taketally.files.Csv csv;

    public Csv(Path path) {
      try {
        file = NewFile.of(path);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      csv = org.taketally.files.Csv.to(new OutputStreamWriter(file.out(), StandardCharsets.UTF_8));
    }

    @Override
    public void begin(List<String> header) {
      csv.add(SetAside.written(header));
    }

    @Override
    public void add(SetAside.Row row) {
      csv.add(row.written());
    }

    @Override
    public void end() {
      try {
        csv.flush();
        file.keep();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public void close() {
      try {
        file.close();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
