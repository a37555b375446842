package org.taketally.records.sources;

import java.util.Arrays;
import java.util.Set;
import org.taketally.records.columns.DittoMarks;
import org.taketally.records.columns.TotalWords;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/**
 * A sheet in which a blank or a ditto mark under some headings means the same as above: what a
 * merged cell leaves, or a person who writes a name once for all the rows below it.
 */
final class FillDownSource extends SourceAround {

  private final int[] places;

  private FillDownSource(RowSource sheet, Set<String> filled) {
    super(sheet, sheet.headings());
    this.places = filled.stream().mapToInt(heading -> place(sheet, heading)).toArray();
  }

  /**
   * The sheet itself where nothing is filled down, or where it was filled before it was set aside.
   */
  static RowSource of(RowSource sheet, Set<String> filled) {
    boolean already = filled.isEmpty() || sheet.headings().contains(RowSource.FIRST_FILE);
    return already ? sheet : new FillDownSource(sheet, filled);
  }

  private static int place(RowSource sheet, String heading) {
    int place = sheet.headings().indexOf(heading);
    if (place < 0) {
      throw absent(sheet, heading, "fill_down");
    }
    return place;
  }

  static RecordsUnreadable absent(RowSource sheet, String heading, String key) {
    return refused(
        sheet,
        "a heading \"" + heading + "\", which the dictionary names under " + key,
        "correct the heading there, or put " + key + " under the file it belongs to");
  }

  /** The sheet can't be read as the dictionary says, whose place is its headings. */
  static RecordsUnreadable refused(RowSource sheet, String expected, String remedy) {
    String found = String.join(", ", sheet.headings());
    return new RecordsUnreadable(
        new Problem(Severity.ERROR, sheet.name(), 1, "", found, expected, remedy));
  }

  @Override
  public Rows open() {
    Rows rows = around().open();
    String[] above = new String[places.length];
    boolean[] number = new boolean[places.length];
    return new Rows() {
      @Override
      public RawRow next() {
        RawRow raw = rows.next();
        return raw == null ? null : filled(raw, above, number);
      }

      @Override
      public void close() {
        rows.close();
      }
    };
  }

  /** A remark or a row of totals is no row below the one above. */
  private static boolean asItIs(RawRow raw) {
    return raw.remark()
        || Arrays.stream(raw.fields()).anyMatch(text -> TotalWords.isSum(Trim.trim(text)));
  }

  /** A name alone heads the rows below it; what stands above isn't meant in its own row. */
  private boolean heads(RawRow raw) {
    int lone = raw.lone();
    return places.length > 1 && Arrays.stream(places).anyMatch(place -> place == lone);
  }

  private RawRow filled(RawRow raw, String[] above, boolean[] number) {
    if (asItIs(raw)) {
      return raw;
    }
    boolean heads = heads(raw);
    String[] fields = raw.fields().clone();
    boolean[] exact = new boolean[fields.length];
    for (int i = 0; i < fields.length; i++) {
      exact[i] = raw.exact(i);
    }
    int taken = 0;
    for (int i = 0; i < places.length; i++) {
      int place = places[i];
      if (place >= fields.length) {
        continue;
      }
      String text = Trim.trim(fields[place]);
      boolean asAbove = text.isEmpty() || DittoMarks.isDitto(text);
      if (asAbove && above[i] != null && !heads) {
        fields[place] = above[i];
        exact[place] = number[i];
        taken += text.isEmpty() ? 1 : 0; // a row with a mark in it is nobody's row of totals
      } else if (!asAbove) {
        above[i] = fields[place];
        number[i] = exact[place];
      }
    }
    return new RawRow(raw.line(), fields, exact, taken == places.length);
  }
}
