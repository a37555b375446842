package org.taketally.records.sources;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.SheetRules;

/**
 * A sheet with how many were alive at stated days after grafting side by side. As records, the last
 * count of a row is its result; as repeated counts, each one is a row.
 */
final class CountsSource extends SourceAround {

  private static final String UNASSESSED = "unassessed";

  private final SortedMap<Integer, String> counts;
  private final boolean repeated;
  private final Map<String, String> marks;
  private final List<Integer> shared;
  private final int width;

  private CountsSource(RowSource sheet, SheetRules rules, boolean repeated) {
    super(sheet, headings(sheet, rules, repeated));
    this.counts = rules.shape().counts();
    this.marks = marks(rules);
    this.repeated = repeated;
    this.shared = shared(sheet, counts);
    this.width = headings().size();
  }

  /**
   * The sheet itself where no counting days are said, or where it was changed before it was set
   * aside.
   *
   * @param repeated whether every count is wanted, not only the last
   */
  static RowSource of(RowSource sheet, SheetRules rules, boolean repeated) {
    boolean already =
        rules.shape().counts().isEmpty() || sheet.headings().contains(RowSource.FIRST_FILE);
    return already ? sheet : new CountsSource(sheet, rules, repeated);
  }

  private static List<Integer> shared(RowSource sheet, SortedMap<Integer, String> counts) {
    List<Integer> shared = new ArrayList<>();
    for (int i = 0; i < sheet.headings().size(); i++) {
      if (!counts.containsValue(sheet.headings().get(i))) {
        shared.add(i);
      }
    }
    return shared;
  }

  private static Map<String, String> marks(SheetRules rules) {
    return rules.column(RecordColumn.OUTCOME.columnName()).same();
  }

  private static List<String> headings(RowSource sheet, SheetRules rules, boolean repeated) {
    SortedMap<Integer, String> counts = rules.shape().counts();
    for (String heading : counts.values()) {
      if (!sheet.headings().contains(heading)) {
        throw FillDownSource.absent(sheet, heading, "counts");
      }
    }
    List<String> all = new ArrayList<>();
    shared(sheet, counts).forEach(field -> all.add(sheet.headings().get(field)));
    all.add(DerivedColumn.DAYS_TO_ASSESSMENT.columnName());
    all.add(repeated ? KnownColumns.ALIVE.name() : RecordColumn.TAKES.columnName());
    if (!repeated && marks(rules).containsValue(UNASSESSED)) {
      all.add(RecordColumn.OUTCOME.columnName());
    }
    return all;
  }

  @Override
  public Rows open() {
    Rows rows = around().open();
    Deque<RawRow> waiting = new ArrayDeque<>();
    return new Rows() {
      @Override
      public RawRow next() {
        while (waiting.isEmpty()) {
          RawRow raw = rows.next();
          if (raw == null) {
            return null;
          }
          turned(raw, waiting);
        }
        return waiting.poll();
      }

      @Override
      public void close() {
        rows.close();
      }
    };
  }

  private void turned(RawRow raw, Deque<RawRow> waiting) {
    RawRow last = null;
    for (var count : counts.entrySet()) {
      int field = around().headings().indexOf(count.getValue());
      boolean there =
          field < raw.fields().length && !Trim.trim(counted(raw.fields()[field])).isEmpty();
      if (there) {
        last = row(raw, Integer.toString(count.getKey()), field);
        if (repeated) {
          waiting.add(last);
        }
      }
    }
    if (!repeated) {
      waiting.add(last == null ? uncounted(raw) : last);
    }
  }

  /** Nobody looked, which a mark may say; without one the cells are blank. */
  private RawRow uncounted(RawRow raw) {
    RawRow row = row(raw, "", -1);
    int outcome = shared.size() + 2;
    if (outcome < width
        && counts.values().stream().anyMatch(heading -> isUnassessed(raw, heading))) {
      row.fields()[outcome] = UNASSESSED;
    }
    return row;
  }

  private boolean isUnassessed(RawRow raw, String heading) {
    int field = around().headings().indexOf(heading);
    return field < raw.fields().length
        && UNASSESSED.equals(marks.get(Trim.trim(raw.fields()[field])));
  }

  private RawRow row(RawRow raw, String days, int counted) {
    String[] fields =
        new String[Math.max(width, width + raw.fields().length - around().headings().size())];
    boolean[] exact = new boolean[fields.length];
    Arrays.fill(fields, "");
    for (int i = 0; i < shared.size(); i++) {
      copy(raw, shared.get(i), fields, exact, i);
    }
    fields[shared.size()] = days;
    if (counted >= 0) {
      copy(raw, counted, fields, exact, shared.size() + 1);
      fields[shared.size() + 1] = counted(fields[shared.size() + 1]);
    }
    for (int extra = around().headings().size(); extra < raw.fields().length; extra++) {
      copy(raw, extra, fields, exact, width + extra - around().headings().size());
    }
    return new RawRow(raw.line(), fields, exact, raw.continued());
  }

  /** A mark of a single graft is a count of one alive or none. */
  private String counted(String typed) {
    return switch (marks.getOrDefault(Trim.trim(typed), "")) {
      case "taken" -> "1";
      case "failed" -> "0";
      case UNASSESSED -> "";
      default -> typed;
    };
  }

  private static void copy(RawRow raw, int from, String[] fields, boolean[] exact, int to) {
    if (from < raw.fields().length) {
      fields[to] = raw.fields()[from];
      exact[to] = raw.exact(from);
    }
  }
}
