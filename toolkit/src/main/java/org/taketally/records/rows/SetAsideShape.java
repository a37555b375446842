package org.taketally.records.rows;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.taketally.records.sources.RawRow;
import org.taketally.records.sources.RowSource;

/** Brings rows of differently shaped sheets under one header. */
public final class SetAsideShape {

  private static final List<String> PASSED_OVER =
      List.of(SetAside.FILE, SetAside.LINE, SetAside.REASONS);

  private final List<RowSource> sources;
  private final List<String> header;
  private final int[][] places;
  private final int[] fileField;
  private final int[] lineField;

  public SetAsideShape(List<RowSource> sources) {
    this.sources = sources;
    Set<String> all = new LinkedHashSet<>();
    for (RowSource source : sources) {
      all.addAll(source.headings());
    }
    all.remove("");
    SetAside.ADDED.forEach(all::remove);
    header = List.copyOf(all);
    places = new int[sources.size()][];
    fileField = new int[sources.size()];
    lineField = new int[sources.size()];
    for (int i = 0; i < places.length; i++) {
      List<String> headings = sources.get(i).headings();
      places[i] = headings.stream().mapToInt(header::indexOf).toArray();
      fileField[i] = headings.indexOf(SetAside.FILE);
      lineField[i] = headings.indexOf(SetAside.LINE);
    }
  }

  public List<String> header() {
    return header;
  }

  /** Whether the rows of a source were set aside before. */
  public boolean readsAgain(int source) {
    return fileField[source] >= 0;
  }

  /** The file a row stood in before it was set aside once already; null if it never was. */
  String originalFile(int source, RawRow raw) {
    int field = fileField[source];
    boolean there = field >= 0 && field < raw.fields().length;
    return there && !raw.fields()[field].isBlank() ? raw.fields()[field] : null;
  }

  /** The sheet by whose rules a row is read: the one it stood in first. */
  public String sheet(int source, RawRow raw) {
    String original = originalFile(source, raw);
    return original == null ? sources.get(source).name() : original;
  }

  /**
   * The sheets that rows set aside before came from, with the headings under which their rows have
   * nothing; none for a source of other rows.
   */
  public Map<String, Set<String>> originalSheets(int source) {
    Map<String, Set<String>> sheets = new LinkedHashMap<>();
    if (readsAgain(source)) {
      List<String> headings = sources.get(source).headings();
      try (RowSource.Rows rows = sources.get(source).open()) {
        for (RawRow raw = rows.next(); raw != null; raw = rows.next()) {
          Set<String> blank =
              sheets.computeIfAbsent(sheet(source, raw), name -> new LinkedHashSet<>(headings));
          for (int i = 0; i < Math.min(headings.size(), raw.fields().length); i++) {
            if (!raw.fields()[i].isBlank()) {
              blank.remove(headings.get(i));
            }
          }
        }
      }
    }
    return sheets;
  }

  public SetAside.Row row(int source, List<String> typed, RawRow raw, RowReport report) {
    String[] fields = new String[header.size()];
    java.util.Arrays.fill(fields, "");
    List<String> extra = new ArrayList<>();
    int[] place = places[source];
    for (int i = 0; i < typed.size(); i++) {
      if (i < place.length && place[i] >= 0) {
        fields[place[i]] = typed.get(i);
      } else if (!added(source, i) && !typed.get(i).isEmpty()) {
        extra.add(typed.get(i));
      }
    }
    String original = originalFile(source, raw);
    return new SetAside.Row(
        original == null ? report.place().file() : original,
        original == null ? raw.line() : originalLine(source, raw),
        List.of(fields),
        String.join(" | ", extra),
        report.reasons());
  }

  private boolean added(int source, int field) {
    List<String> headings = sources.get(source).headings();
    return field < headings.size() && PASSED_OVER.contains(headings.get(field));
  }

  /** The line a row stood in before it was set aside. */
  long originalLine(int source, RawRow raw) {
    int field = lineField[source];
    String text = field >= 0 && field < raw.fields().length ? raw.fields()[field].strip() : "";
    return text.matches("\\d{1,15}") ? Long.parseLong(text) : raw.line();
  }
}
