package org.taketally.records.sources;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;

/** Notices files named twice, and files and worksheets that hold the same. */
public final class SameFiles {

  /** Every part bounded, as a cell may be long. */
  private static final String DAY =
      "\\d{1,4}[^\\p{L}\\d]{1,3}[\\p{L}\\d]{1,12}[^\\p{L}\\d]{1,3}\\d{1,4}.*";

  private static final RawRow NO_ROW = new RawRow(0, new String[0], null);

  private SameFiles() {}

  /** A file wherever it is named from, and the worksheet. */
  private record Sheet(Path file, Optional<String> sheet) {}

  /** The sources, each once; says which were named again, if only by another path or a link. */
  public static List<RowSource> once(List<RowSource> opened, ProblemLog log) {
    List<RowSource> once = new ArrayList<>();
    Map<Sheet, String> named = new LinkedHashMap<>();
    for (RowSource source : opened) {
      Optional<String> before =
          source
              .path()
              .map(path -> named.putIfAbsent(new Sheet(real(path), source.sheet()), source.name()));
      before.ifPresentOrElse(name -> again(source, name, log), () -> once.add(source));
    }
    return once;
  }

  /** Files, each once, if named again only by another path or a link. */
  public static List<Path> distinct(List<Path> files) {
    Map<Path, Path> once = new LinkedHashMap<>();
    files.forEach(file -> once.putIfAbsent(real(file), file));
    return List.copyOf(once.values());
  }

  private static Path real(Path path) {
    try {
      return path.toRealPath();
    } catch (IOException e) {
      return path.toAbsolutePath().normalize();
    }
  }

  private static void again(RowSource source, String before, ProblemLog log) {
    boolean sameName = source.name().equals(before);
    log.add(
        ProblemKind.SAME_FILE_TWICE,
        Place.whole(source.name()),
        "",
        () ->
            new ProblemText(
                sameName ? "this file named twice" : "the same file as " + before,
                "each file once",
                "it was read once; if another file was meant, name that one"));
  }

  public static void check(List<RowSource> sources, ProblemLog log) {
    List<RawRow> firsts = sources.size() < 2 ? List.of() : firstRows(sources);
    for (int i = 0; i < firsts.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (alike(firsts.get(i), firsts.get(j)) && same(sources.get(i), sources.get(j))) {
          String other = sources.get(j).name();
          String one = sources.get(i).sheet().isPresent() ? "worksheet" : "file";
          log.add(
              ProblemKind.SAME_FILE_TWICE,
              Place.whole(sources.get(i).name()),
              "",
              () ->
                  new ProblemText(
                      "the same contents as " + other,
                      "each %s once".formatted(one),
                      "read one of the two only; else each graft counts twice"));
        }
      }
    }
  }

  /** Of each source, so that most pairs need not be opened. */
  private static List<RawRow> firstRows(List<RowSource> sources) {
    List<RawRow> firsts = new ArrayList<>();
    for (RowSource source : sources) {
      firsts.add(source.path().isPresent() ? firstRow(source) : NO_ROW);
    }
    return firsts;
  }

  private static RawRow firstRow(RowSource source) {
    try (RowSource.Rows rows = source.open()) {
      RawRow first = rows.next();
      return first == null ? NO_ROW : first;
    }
  }

  /** Whether two files or worksheets hold the same rows, even if one is CSV and one a workbook. */
  public static boolean same(RowSource one, RowSource other) {
    return one.path().isPresent()
        && other.path().isPresent()
        && one.headings().equals(other.headings())
        && sameRows(one, other);
  }

  /** Whether they hold the same, up to their ends. */
  private static boolean sameRows(RowSource one, RowSource other) {
    try (RowSource.Rows rows = one.open();
        RowSource.Rows others = other.open()) {
      RawRow row = rows.next();
      RawRow otherRow = others.next();
      while (row != null && otherRow != null && alike(row, otherRow)) {
        row = rows.next();
        otherRow = others.next();
      }
      return row == null && otherRow == null;
    }
  }

  private static boolean alike(RawRow one, RawRow other) {
    int fields = Math.max(one.fields().length, other.fields().length);
    return IntStream.range(0, fields).allMatch(field -> alike(one, other, field));
  }

  /** A cell that holds a number or day itself may be written another way as text. */
  private static boolean alike(RawRow one, RawRow other, int field) {
    String text = text(one, field);
    String otherText = text(other, field);
    if (text.equals(otherText)) {
      return true;
    }
    return isExact(one, field) != isExact(other, field)
        && (areDays(text, otherText) || text.replace(',', '.').equals(otherText.replace(',', '.')));
  }

  private static boolean areDays(String text, String otherText) {
    return text.matches(DAY) && otherText.matches(DAY);
  }

  private static String text(RawRow row, int field) {
    return field < row.fields().length ? Trim.trim(row.fields()[field]) : "";
  }

  private static boolean isExact(RawRow row, int field) {
    return field < row.fields().length && row.exact(field);
  }
}
