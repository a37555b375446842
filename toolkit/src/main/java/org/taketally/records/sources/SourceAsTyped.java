package org.taketally.records.sources;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.taketally.files.Formulas;

/**
 * A sheet as it was typed: without the apostrophes that keep spreadsheets from taking cells for
 * formulas.
 */
final class SourceAsTyped implements RowSource {

  private final RowSource written;
  private final List<String> headings;

  private SourceAsTyped(RowSource written) {
    this.written = written;
    headings = written.headings().stream().map(Formulas::typed).toList();
  }

  static RowSource of(RowSource source) {
    return new SourceAsTyped(source);
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
  public Optional<String> sheet() {
    return written.sheet();
  }

  @Override
  public boolean mayBeLeftOut() {
    return written.mayBeLeftOut();
  }

  @Override
  public long likelyHeadingRow() {
    return written.likelyHeadingRow();
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
