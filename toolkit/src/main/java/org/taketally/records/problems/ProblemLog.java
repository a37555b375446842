package org.taketally.records.problems;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/**
 * Problems as they are found: all are counted, the first of each kind, file and column are kept in
 * full, so that ten million rows with the same fault need no more memory than a thousand.
 */
public final class ProblemLog {

  /** Problems kept in full of each kind, file and column. */
  static final int KEPT = 1000;

  private final Map<Key, Tally> tallies = new LinkedHashMap<>();
  private long sequence;

  /** Where the same fault may repeat. */
  record Key(ProblemKind kind, Severity severity, String file, String column) {}

  /** How often, and the first in full. */
  static final class Tally {
    private final List<Kept> kept = new ArrayList<>();
    private long count;

    long count() {
      return count;
    }

    List<Problem> first() {
      return kept.stream().map(Kept::problem).toList();
    }
  }

  private record Kept(long sequence, Problem problem) {}

  /** Counts a problem and words it only if it is among the first of its kind. */
  public void add(ProblemKind kind, Place place, String column, Supplier<ProblemText> words) {
    add(kind, kind.severity(), place, column, words);
  }

  /** Counts a problem that is less grave here than its kind is elsewhere. */
  public void add(
      ProblemKind kind,
      Severity severity,
      Place place,
      String column,
      Supplier<ProblemText> words) {
    Tally tally = tally(new Key(kind, severity, place.file(), column));
    tally.count++;
    if (tally.kept.size() < KEPT) {
      tally.kept.add(new Kept(sequence++, problem(severity, place, column, words.get())));
    }
  }

  /** Counts a problem that had to be worded anyway. */
  public void add(ProblemKind kind, Problem problem) {
    Tally tally = tally(new Key(kind, problem.severity(), problem.file(), problem.column()));
    tally.count++;
    if (tally.kept.size() < KEPT) {
      tally.kept.add(new Kept(sequence++, problem));
    }
  }

  private Tally tally(Key key) {
    return tallies.computeIfAbsent(key, k -> new Tally());
  }

  public static Problem problem(ProblemKind kind, Place place, String column, ProblemText words) {
    return problem(kind.severity(), place, column, words);
  }

  private static Problem problem(Severity severity, Place place, String column, ProblemText words) {
    return new Problem(
        severity,
        place.file(),
        place.line(),
        column,
        words.found(),
        words.expected(),
        words.remedy());
  }

  /** All problems kept in full, in the order found. */
  public List<Problem> problems() {
    return tallies.values().stream()
        .flatMap(tally -> tally.kept.stream())
        .sorted(Comparator.comparingLong(Kept::sequence))
        .map(Kept::problem)
        .toList();
  }

  Map<Key, Tally> tallies() {
    return tallies;
  }
}
