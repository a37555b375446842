package org.taketally.records.sources;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;

/** Notices files named twice, and files and worksheets that hold the same. */
public final class SameFiles {

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
    for (int i = 0; i < sources.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (same(sources.get(i), sources.get(j))) {
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

  private static boolean same(RowSource one, RowSource other) {
    if (one.path().isEmpty() || other.path().isEmpty()) {
      return false;
    }
    Path path = one.path().get();
    Path otherPath = other.path().get();
    if (path.equals(otherPath)) {
      return sameRows(one, other);
    }
    try {
      return one.sheet().equals(other.sheet())
          && Files.size(path) == Files.size(otherPath)
          && Files.mismatch(path, otherPath) < 0;
    } catch (IOException e) {
      return false; // they were read to their end; a file gone since is no problem of the records
    }
  }

  /** Whether two worksheets of one workbook hold the same, up to their ends. */
  private static boolean sameRows(RowSource one, RowSource other) {
    if (!one.headings().equals(other.headings())) {
      return false;
    }
    try (RowSource.Rows rows = one.open();
        RowSource.Rows others = other.open()) {
      RawRow row = rows.next();
      RawRow otherRow = others.next();
      while (row != null && otherRow != null && Arrays.equals(row.fields(), otherRow.fields())) {
        row = rows.next();
        otherRow = others.next();
      }
      return row == null && otherRow == null;
    }
  }
}
