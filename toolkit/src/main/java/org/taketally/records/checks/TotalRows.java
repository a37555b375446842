package org.taketally.records.checks;

import static org.taketally.records.columns.RecordColumn.CULTIVAR;
import static org.taketally.records.columns.RecordColumn.ROOTSTOCK;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;

/**
 * Finds rows of totals by arithmetic, whatever they are called: grafts and takes are the sum of the
 * rows above, since the last such row or from the top of the sheet. Small batches may come to such
 * a sum by chance, so the row must differ from those above too: a blank where they have none, or a
 * cultivar or rootstock that stands in no row before it; the less it differs, the more rows must
 * add up. A row that says which graft it was, whose or of which day, as all above do, is no total.
 * A row that sums up rows of its own cultivar and rootstock is left to {@link SummaryRows}, which
 * only asks.
 */
final class TotalRows {

  /** Rows that must add up where the row looks like a total in a further way. */
  private static final int FEWEST = 2;

  /** Rows that must add up where its cultivar and its rootstock are both new. */
  private static final int WITH_NEW_PAIR = 3;

  /** Rows that must add up where one of them is new. */
  private static final int WITH_NEW_NAME = 4;

  /** Grafts from which two rows hardly add up in grafts and takes by chance. */
  private static final int LARGE = 20;

  /** Columns that say which graft it was. */
  private static final List<RecordColumn> LABELS =
      List.of(
          RecordColumn.RECORD,
          RecordColumn.SITE,
          RecordColumn.BLOCK,
          RecordColumn.GRAFTER,
          CULTIVAR,
          ROOTSTOCK,
          RecordColumn.METHOD,
          RecordColumn.GRAFT_DATE,
          RecordColumn.ASSESSED_DATE);

  /** Of these, what only a graft or a batch has. */
  private static final int OWN =
      bit(RecordColumn.RECORD)
          | bit(RecordColumn.GRAFTER)
          | bit(RecordColumn.GRAFT_DATE)
          | bit(RecordColumn.ASSESSED_DATE);

  private final RecordsLayout layout;
  private final Sum sheet = new Sum();
  private final Sum block = new Sum();
  private final Set<String> namesOfTotals = new HashSet<>();

  TotalRows(RecordsLayout layout) {
    this.layout = layout;
  }

  /** Rows added up, and what they have in common. */
  private static final class Sum {
    private long rows;
    private long grafts;
    private long takes;
    private int filled;
    private String cultivar;
    private String rootstock;

    void add(RecordRow row, SheetReader reader, int labels) {
      boolean first = rows == 0;
      filled = first ? labels : filled & labels;
      cultivar = common(first, cultivar, reader.typed(CULTIVAR));
      rootstock = common(first, rootstock, reader.typed(ROOTSTOCK));
      rows++;
      grafts += row.grafts();
      takes += row.assessed() ? row.takes() : 0;
    }

    private static String common(boolean first, String before, String now) {
      return first || now.equals(before) ? now : "";
    }

    void clear() {
      rows = 0;
      grafts = 0;
      takes = 0;
    }

    boolean comesTo(RecordRow row) {
      return grafts == row.grafts() && takes == row.takes();
    }

    /** Whether the row has a blank where no row above has one. */
    boolean hasMore(SheetReader reader) {
      return (filled & ~filled(reader)) != 0;
    }

    /** Whether the row shares its cultivar or its rootstock with all rows above. */
    boolean shares(SheetReader reader) {
      return reader.typed(CULTIVAR).equals(cultivar) || reader.typed(ROOTSTOCK).equals(rootstock);
    }
  }

  private static int bit(RecordColumn label) {
    return 1 << LABELS.indexOf(label);
  }

  /** A bit for each label that the row read last has. */
  private static int filled(SheetReader reader) {
    int bits = 0;
    for (int i = 0; i < LABELS.size(); i++) {
      bits |= reader.blank(LABELS.get(i)) ? 0 : 1 << i;
    }
    return bits;
  }

  /** Reports a row of totals; adds up others. */
  void apply(RecordRow row, SheetReader reader, RowReport report) {
    if (!row.counted()) {
      return;
    }
    if (report.failed(ProblemKind.SUMMARY_ROW)) {
      block.clear();
      return;
    }
    for (Sum sum : new Sum[] {block, sheet}) {
      if (row.assessed() && row.grafts() > 1 && sum.comesTo(row) && differs(row, reader, sum)) {
        report(row, reader, sum, report);
        block.clear();
        return;
      }
    }
    int labels = filled(reader);
    sheet.add(row, reader, labels);
    block.add(row, reader, labels);
  }

  /** Whether a row differs enough from those that come to its counts. */
  private boolean differs(RecordRow row, SheetReader reader, Sum sum) {
    List<String> names = new ArrayList<>();
    for (RecordColumn column : new RecordColumn[] {CULTIVAR, ROOTSTOCK}) {
      if (row.has(column) && layout.track(column).levels().rows(row.code(column)) == 0) {
        names.add(reader.typed(column));
      }
    }
    boolean blank = sum.hasMore(reader) || reader.continued();
    if (!blank && (names.isEmpty() || (filled(reader) & OWN) != 0)) {
      return false;
    }
    boolean certain =
        blank
            || (row.grafts() >= LARGE && sum.shares(reader))
            || names.stream().anyMatch(namesOfTotals::contains);
    int needed = certain ? FEWEST : names.size() > 1 ? WITH_NEW_PAIR : WITH_NEW_NAME;
    if (sum.rows < needed) {
      return false;
    }
    namesOfTotals.addAll(names);
    return true;
  }

  private static void report(RecordRow row, SheetReader reader, Sum sum, RowReport report) {
    String found =
        String.format(
            Locale.ROOT,
            "%,d of %,d, the sum of the %,d rows above",
            row.takes(),
            row.grafts(),
            sum.rows);
    report.add(
        ProblemKind.SUMMARY_ROW,
        reader.heading(RecordColumn.GRAFTS),
        () ->
            new ProblemText(
                found,
                "one graft or batch in each row",
                "take rows of totals out of the sheet; if it is a batch of its own, read it from"
                    + " the file of rows set aside"));
  }

  /** Ends a sheet. */
  void endSheet() {
    sheet.clear();
    block.clear();
  }
}
