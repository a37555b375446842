package org.taketally.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.Verdict;

/**
 * What came of one trial.
 *
 * @param kind name
 * @param number of the trial within its kind
 * @param verdict name of the verdict
 * @param named levels named as standing out, as letters
 * @param wronglyNamed whether one of them isn't beyond the margin from any other
 * @param equivalent levels named as making no practical difference, as letters
 * @param wronglyEquivalent whether two of those truly lie the margin or more apart
 * @param wronglyDepends whether it was said to depend on the cultivar, and doesn't
 * @param inside ranges of single pairs, those that decide equivalence, that hold the truth
 * @param ranges such ranges
 * @param allInside whether the simultaneous ranges all hold the truth
 * @param millis time taken
 */
record StudyTrial(
    String kind,
    int number,
    String verdict,
    String named,
    boolean wronglyNamed,
    String equivalent,
    boolean wronglyEquivalent,
    boolean wronglyDepends,
    int inside,
    int ranges,
    boolean allInside,
    long millis) {

  private static final double EXACT = 1e-9;

  static StudyTrial run(StudyKind kind, int number) {
    TrialRows trial = kind.design().get().make(kind.seed() + number);
    long start = System.nanoTime();
    FactorVerdict verdict = StudyRun.verdict(trial.csv(), kind.seed() + number);
    long millis = (System.nanoTime() - start) / 1_000_000;
    return of(kind, number, trial, verdict, millis);
  }

  private static StudyTrial of(
      StudyKind kind, int number, TrialRows trial, FactorVerdict verdict, long millis) {
    double[] truth = trial.takes();
    int inside = 0;
    boolean all = true;
    List<FactorVerdict.Pair> pairs =
        verdict.size().map(FactorVerdict.Size::pairs).orElse(List.of());
    for (FactorVerdict.Pair pair : pairs) {
      double gap = truth[TrialRows.stockOf(pair.level())] - truth[TrialRows.stockOf(pair.other())];
      inside += pair.equivalence().contains(gap) ? 1 : 0;
      all &= pair.difference().interval().contains(gap);
    }
    List<Integer> named = verdict.standingOut().stream().map(TrialRows::stockOf).toList();
    List<Integer> equal = verdict.equivalentLevels().stream().map(TrialRows::stockOf).toList();
    return new StudyTrial(
        kind.name(),
        number,
        verdict.verdict().name(),
        letters(named),
        named.stream().anyMatch(k -> apart(truth, k) <= StudyKinds.MARGIN + EXACT),
        letters(equal),
        spread(truth, equal) >= StudyKinds.MARGIN - EXACT,
        verdict.verdict() == Verdict.DEPENDS_ON_CULTIVAR
            && !trial.dependsOnCultivar(StudyKinds.MARGIN),
        inside,
        pairs.size(),
        all,
        millis);
  }

  /** How far a stock lies from the one furthest from it. */
  private static double apart(double[] truth, int k) {
    return Arrays.stream(truth).map(other -> Math.abs(other - truth[k])).max().orElse(0);
  }

  private static double spread(double[] truth, List<Integer> levels) {
    double[] takes = levels.stream().mapToDouble(k -> truth[k]).toArray();
    return Arrays.stream(takes).max().orElse(0) - Arrays.stream(takes).min().orElse(0);
  }

  private static String letters(List<Integer> levels) {
    StringBuilder text = new StringBuilder();
    levels.stream().sorted().forEach(k -> text.append((char) ('A' + k)));
    return text.toString();
  }

  String line() {
    return String.format(
        Locale.ROOT,
        "%s,%d,%s,%s,%b,%s,%b,%b,%d,%d,%b,%d",
        kind,
        number,
        verdict,
        named,
        wronglyNamed,
        equivalent,
        wronglyEquivalent,
        wronglyDepends,
        inside,
        ranges,
        allInside,
        millis);
  }

  static StudyTrial read(String line) {
    List<String> f = new ArrayList<>(List.of(line.split(",", -1)));
    return new StudyTrial(
        f.get(0),
        Integer.parseInt(f.get(1)),
        f.get(2),
        f.get(3),
        Boolean.parseBoolean(f.get(4)),
        f.get(5),
        Boolean.parseBoolean(f.get(6)),
        Boolean.parseBoolean(f.get(7)),
        Integer.parseInt(f.get(8)),
        Integer.parseInt(f.get(9)),
        Boolean.parseBoolean(f.get(10)),
        Long.parseLong(f.get(11)));
  }
}
