package org.taketally.records.sources;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.ColumnEntry;
import org.taketally.records.dictionary.SheetRules;

/**
 * A sheet that keeps the dead in a column of their own. Counts: the grafts are the living and the
 * dead, or the takes are the grafts less the dead. Marks: one in the column of the dead is a
 * failure. What can't be put together is left to be set aside, with both cells as they were typed.
 */
final class DeadSource extends SourceAround {

  private static final String COUNT = "\\d{1,9}";
  private static final String RESULT_TAKEN = "taken";

  private final RecordColumn result;
  private final ColumnEntry said;
  private final int dead;
  private final int other;
  private final boolean living;
  private final List<Integer> kept = new ArrayList<>();

  private DeadSource(RowSource sheet, SheetRules rules, RecordColumn result) {
    super(sheet, headings(sheet, rules, result));
    this.result = result;
    this.said = rules.column(result.columnName());
    this.dead = place(sheet, said.dead().orElseThrow());
    this.living = has(sheet, rules, result);
    this.other =
        living
            ? place(sheet, heading(sheet, rules, result))
            : counted() ? place(sheet, heading(sheet, rules, RecordColumn.GRAFTS)) : -1;
    for (int i = 0; i < sheet.headings().size(); i++) {
      if (i != dead) {
        kept.add(i);
      }
    }
  }

  /**
   * The sheet itself where the dead have no column, where it was changed before, or where grafts,
   * living and dead are all counted: then nothing is reckoned, and the rows are checked.
   */
  static RowSource of(RowSource sheet, SheetRules rules) {
    for (RecordColumn result : List.of(RecordColumn.TAKES, RecordColumn.OUTCOME)) {
      boolean said = rules.column(result.columnName()).dead().isPresent();
      if (said && !sheet.headings().contains(RowSource.FIRST_FILE) && !allCounted(sheet, rules)) {
        return new DeadSource(sheet, rules, result);
      }
    }
    return sheet;
  }

  private static boolean allCounted(RowSource sheet, SheetRules rules) {
    Optional<String> dead = rules.column(RecordColumn.TAKES.columnName()).dead();
    dead.ifPresent(heading -> place(sheet, heading));
    return dead.isPresent()
        && has(sheet, rules, RecordColumn.TAKES)
        && has(sheet, rules, RecordColumn.GRAFTS);
  }

  private static List<String> headings(RowSource sheet, SheetRules rules, RecordColumn result) {
    List<String> all = new ArrayList<>(sheet.headings());
    String dead = rules.column(result.columnName()).dead().orElseThrow();
    place(sheet, dead);
    all.remove(dead);
    boolean living = has(sheet, rules, result);
    boolean counted = result == RecordColumn.TAKES;
    boolean grafts = has(sheet, rules, RecordColumn.GRAFTS);
    if (counted && !living && !grafts) {
      throw FillDownSource.refused(
          sheet,
          "a column of takes or of grafts beside the dead",
          "name the heading of the living, or of the grafts, with \"from\"");
    }
    if (!counted && !living) {
      throw FillDownSource.refused(
          sheet,
          "a column that marks the living beside the one that marks the dead",
          "where only the dead were marked, write \"outcome\": {\"from\": \"%s\", \"same\":"
                  .formatted(dead)
              + " {\"failed\": [\"x\"]}} and \"blank_result\": \"taken\"");
    }
    if (counted) {
      all.add((living ? RecordColumn.GRAFTS : result).columnName());
    }
    return all;
  }

  private static String heading(RowSource sheet, SheetRules rules, RecordColumn column) {
    Optional<String> from = rules.column(column.columnName()).from();
    String plain = NameLikeness.plain(from.orElse(column.columnName()));
    return sheet.headings().stream()
        .filter(heading -> NameLikeness.plain(heading).equals(plain))
        .findFirst()
        .orElse(from.orElse(""));
  }

  private static boolean has(RowSource sheet, SheetRules rules, RecordColumn column) {
    return !heading(sheet, rules, column).isEmpty();
  }

  private static int place(RowSource sheet, String heading) {
    int place = sheet.headings().indexOf(heading);
    if (place < 0) {
      throw FillDownSource.absent(sheet, heading, "columns");
    }
    return place;
  }

  private boolean counted() {
    return result == RecordColumn.TAKES;
  }

  @Override
  public Rows open() {
    Rows rows = around().open();
    return new Rows() {
      @Override
      public RawRow next() {
        RawRow raw = rows.next();
        return raw == null ? null : joined(raw);
      }

      @Override
      public void close() {
        rows.close();
      }
    };
  }

  private RawRow joined(RawRow raw) {
    int width = headings().size();
    int extra = Math.max(0, raw.fields().length - around().headings().size());
    String[] fields = new String[width + extra];
    boolean[] exact = new boolean[fields.length];
    Arrays.fill(fields, "");
    for (int i = 0; i < kept.size(); i++) {
      if (kept.get(i) < raw.fields().length) {
        fields[i] = raw.fields()[kept.get(i)];
        exact[i] = raw.exact(kept.get(i));
      }
    }
    System.arraycopy(raw.fields(), raw.fields().length - extra, fields, width, extra);
    String one = text(raw, other);
    String gone = text(raw, dead);
    if (counted()) {
      fields[width - 1] = counts(one, gone);
    } else {
      int place = kept.indexOf(other);
      String marked = marks(one, gone);
      exact[place] &= marked.equals(one);
      fields[place] = marked;
    }
    return new RawRow(raw.line(), fields, exact, raw.continued());
  }

  private static String text(RawRow raw, int field) {
    return field >= 0 && field < raw.fields().length ? Trim.trim(raw.fields()[field]) : "";
  }

  private String counts(String one, String gone) {
    if (one.matches(COUNT) && gone.matches(COUNT)) {
      long sign = living ? 1 : -1;
      return Long.toString(Long.parseLong(one) + sign * Long.parseLong(gone));
    }
    if (one.isEmpty()) {
      return living && gone.matches(COUNT) ? gone : "";
    }
    return gone.isEmpty() && !living ? "" : both(one, gone);
  }

  private String marks(String alive, String gone) {
    if (gone.isEmpty()) {
      return alive;
    }
    boolean marked = RESULT_TAKEN.equals(said.same().getOrDefault(gone, gone));
    return alive.isEmpty() && marked ? "failed" : both(alive, gone);
  }

  /** Both cells as typed, under their headings. */
  private String both(String one, String gone) {
    List<String> names = around().headings();
    return "%s: %s, %s: %s".formatted(names.get(Math.max(other, 0)), one, names.get(dead), gone);
  }
}
