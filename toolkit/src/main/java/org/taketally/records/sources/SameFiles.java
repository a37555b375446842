package org.taketally.records.sources;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;

/** Notices files read twice under two names. */
public final class SameFiles {

  private SameFiles() {}

  public static void check(List<RowSource> sources, ProblemLog log) {
    for (int i = 0; i < sources.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (same(sources.get(i), sources.get(j))) {
          String other = sources.get(j).name();
          log.add(
              ProblemKind.SAME_FILE_TWICE,
              Place.whole(sources.get(i).name()),
              "",
              () ->
                  new ProblemText(
                      "the same contents as " + other,
                      "each file once",
                      "read one of the two only; else each graft counts twice"));
        }
      }
    }
  }

  private static boolean same(RowSource one, RowSource other) {
    if (one.path().isEmpty() || other.path().isEmpty() || one.path().equals(other.path())) {
      return false;
    }
    Path path = one.path().get();
    Path otherPath = other.path().get();
    try {
      return Files.size(path) == Files.size(otherPath) && Files.mismatch(path, otherPath) < 0;
    } catch (IOException e) {
      return false; // they were read to their end; a file gone since is no problem of the records
    }
  }
}
