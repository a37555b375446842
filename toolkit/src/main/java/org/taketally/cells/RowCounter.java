package org.taketally.cells;

import java.util.List;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.RowVisitor;
import org.taketally.terms.Provenance;

/** Counts rows into cells while they pass by; holds patterns, never rows. */
final class RowCounter implements RowVisitor {

  private final List<String> wanted;
  private final RowCoder[] coders;
  private final int[] codes;
  private final UnassessedCounts unassessed;
  private PatternCounts counts;

  RowCounter(List<String> wanted) {
    this.wanted = wanted;
    this.coders = new RowCoder[wanted.size()];
    this.codes = new int[wanted.size()];
    this.counts = new PatternCounts(wanted.size());
    this.unassessed = new UnassessedCounts(wanted.size());
  }

  @Override
  public void begin(RecordsLayout layout) {
    for (int i = 0; i < coders.length; i++) {
      int column = layout.indexOf(wanted.get(i));
      if (column < 0 && wanted.get(i).equals(Cells.BATCH_ROW)) {
        coders[i] = new RowCoder.Rows();
        continue;
      }
      if (column < 0) {
        throw CellColumns.absent(wanted.get(i), layout.names());
      }
      coders[i] = RowCoder.of(layout, column);
    }
  }

  @Override
  public void row(RecordRow row) {
    if (!row.assessed()) {
      unassessed(row);
      return;
    }
    for (int i = 0; i < codes.length; i++) {
      codes[i] = coders[i].code(row);
    }
    counts.add(codes, row.grafts(), row.takes());
  }

  private void unassessed(RecordRow row) {
    for (int i = 0; i < coders.length; i++) {
      coders[i].skip();
      if (!(coders[i] instanceof RowCoder.Rows)) {
        unassessed.add(i, coders[i].code(row), row.grafts());
      }
    }
  }

  Cells cells(Provenance provenance) {
    for (int i = 0; i < coders.length; i++) {
      int[] merged = coders[i].merged();
      if (merged != null) {
        counts = counts.recoded(i, merged);
      }
    }
    CellColumns cells = new CellColumns(counts, unassessed);
    for (int i = 0; i < coders.length; i++) {
      coders[i].addTo(cells, i, wanted.get(i));
    }
    return cells.cells(provenance);
  }
}
