package org.taketally.records.sources;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.taketally.records.dictionary.WidePart;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/**
 * A wide sheet turned long: a row that holds several seasons, stocks or countings side by side
 * becomes one row for each. A part with nothing in its columns makes no row.
 */
final class WideSource implements RowSource {

  private final RowSource sheet;
  private final List<WidePart> parts;
  private final List<String> headings;
  private final List<Integer> shared = new ArrayList<>();

  private WideSource(RowSource sheet, List<WidePart> parts) {
    this.sheet = sheet;
    this.parts = parts;
    Set<String> spread = new LinkedHashSet<>();
    Set<String> ours = new LinkedHashSet<>();
    for (WidePart part : parts) {
      part.columns().values().forEach(heading -> spread.add(requireHeading(heading)));
      ours.addAll(part.set().keySet());
      ours.addAll(part.columns().keySet());
    }
    List<String> all = new ArrayList<>();
    for (int field = 0; field < sheet.headings().size(); field++) {
      if (!spread.contains(sheet.headings().get(field))) {
        shared.add(field);
        all.add(sheet.headings().get(field));
      }
    }
    all.addAll(ours);
    headings = List.copyOf(all);
  }

  /** The sheet itself where it has no parts, or was turned long before it was set aside. */
  static RowSource of(RowSource sheet, List<WidePart> parts) {
    boolean longAlready = parts.isEmpty() || sheet.headings().contains(RowSource.FIRST_FILE);
    return longAlready ? sheet : new WideSource(sheet, parts);
  }

  private String requireHeading(String heading) {
    if (!sheet.headings().contains(heading)) {
      throw new RecordsUnreadable(
          new Problem(
              Severity.ERROR,
              sheet.name(),
              1,
              "",
              String.join(", ", sheet.headings()),
              "a heading \"" + heading + "\", which the dictionary names under wide",
              "correct the heading there, or put wide under the file it belongs to"));
    }
    return heading;
  }

  @Override
  public String name() {
    return sheet.name();
  }

  @Override
  public List<String> headings() {
    return headings;
  }

  @Override
  public Optional<Path> path() {
    return sheet.path();
  }

  @Override
  public Optional<String> sheet() {
    return sheet.sheet();
  }

  @Override
  public boolean mayBeLeftOut() {
    return sheet.mayBeLeftOut();
  }

  @Override
  public boolean semicolons() {
    return sheet.semicolons();
  }

  @Override
  public Rows open() {
    return new LongRows(sheet.open());
  }

  /** The long rows of one wide row after the other. */
  private final class LongRows implements Rows {
    private final Rows rows;
    private final Deque<RawRow> waiting = new ArrayDeque<>();

    LongRows(Rows rows) {
      this.rows = rows;
    }

    @Override
    public RawRow next() {
      while (waiting.isEmpty()) {
        RawRow wide = rows.next();
        if (wide == null) {
          return null;
        }
        spread(wide);
      }
      return waiting.poll();
    }

    private void spread(RawRow wide) {
      for (WidePart part : parts) {
        RawRow row = part(wide, part);
        if (row != null) {
          waiting.add(row);
        }
      }
    }

    /** The row of one part; null if nothing stands in its columns. */
    private RawRow part(RawRow wide, WidePart part) {
      String[] fields = new String[headings.size()];
      boolean[] exact = new boolean[headings.size()];
      Arrays.fill(fields, "");
      for (int i = 0; i < shared.size(); i++) {
        copy(wide, shared.get(i), fields, exact, i);
      }
      boolean any = false;
      for (Map.Entry<String, String> column : part.columns().entrySet()) {
        int to = place(column.getKey());
        copy(wide, sheet.headings().indexOf(column.getValue()), fields, exact, to);
        any |= !Trim.trim(fields[to]).isEmpty();
      }
      part.set().forEach((name, value) -> fields[place(name)] = value);
      return any ? new RawRow(wide.line(), fields, exact, wide.continued()) : null;
    }

    private int place(String ours) {
      return shared.size() + headings.subList(shared.size(), headings.size()).indexOf(ours);
    }

    private void copy(RawRow wide, int from, String[] fields, boolean[] exact, int to) {
      if (from < wide.fields().length) {
        fields[to] = wide.fields()[from];
        exact[to] = wide.exact(from);
      }
    }

    @Override
    public void close() {
      rows.close();
    }
  }
}
