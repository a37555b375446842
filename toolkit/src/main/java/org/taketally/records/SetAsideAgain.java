package org.taketally.records;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.taketally.files.Formulas;

/**
 * Rows that were set aside before, as they were typed: without the marks that keep spreadsheets
 * from taking cells for formulas.
 */
final class SetAsideAgain implements RowSource {

  private final RowSource written;
  private final List<String> headings;

  private SetAsideAgain(RowSource written) {
    this.written = written;
    headings = written.headings().stream().map(Formulas::typed).toList();
  }

  /** The source itself, if its rows were not set aside before. */
  static RowSource of(RowSource source) {
    return source.headings().contains(SetAside.FILE) ? new SetAsideAgain(source) : source;
  }

  @Override
  public String name() {
    return written.name();
  }

  @Override
  public List<String> headings() {
    return headings;
  }

  @Override
  public Optional<Path> path() {
    return written.path();
  }

  @Override
  public boolean semicolons() {
    return written.semicolons();
  }

  @Override
  public Rows open() {
    return new TypedRows(written.open());
  }

  private record TypedRows(Rows rows) implements Rows {

    @Override
    public RawRow next() {
      RawRow row = rows.next();
      if (row != null) {
        for (int i = 0; i < row.fields().length; i++) {
          row.fields()[i] = Formulas.typed(row.fields()[i]);
        }
      }
      return row;
    }

    @Override
    public void close() {
      rows.close();
    }
  }
}
