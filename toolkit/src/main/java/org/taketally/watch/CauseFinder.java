package org.taketally.watch;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * What the failures beyond those expected have in common: the level whose own odds of failing would
 * explain most, then the one that explains most of the rest, and so on.
 *
 * <pre>
 *   gain = log-likelihood of the lots if the level's odds of failing were r times as high, at its
 *   best r of 1 or more, less that at r = 1, less the log of the number of levels of its column
 * </pre>
 */
final class CauseFinder {

  private static final int STEPS = 60;
  private static final double MOST_LOG_RATIO = 6;

  /** A gain below this is what chance alone gives one level in twenty: half of 3.84. */
  private static final double WORTH_NAMING = 1.92;

  private static final int MOST_CAUSES = 3;

  private final List<WatchedLot> lots;
  private final List<LotExpectation> expected;
  private final double[] logRatios;

  CauseFinder(List<WatchedLot> lots, List<LotExpectation> expected) {
    this.lots = lots;
    this.expected = expected;
    this.logRatios = new double[lots.size()];
  }

  List<Cause> causes() {
    List<Cause> causes = new ArrayList<>();
    while (causes.size() < MOST_CAUSES) {
      Optional<Cause> next = best();
      if (next.isEmpty()) {
        break;
      }
      causes.add(next.get());
      for (int i : members(next.get().column(), next.get().level())) {
        logRatios[i] += Math.log(next.get().oddsRatio());
      }
    }
    return causes;
  }

  private Optional<Cause> best() {
    Cause best = null;
    Set<String> columns = new LinkedHashSet<>();
    lots.forEach(lot -> columns.addAll(lot.groups().keySet()));
    for (String column : columns) {
      Set<String> levels = new LinkedHashSet<>();
      lots.forEach(lot -> Optional.ofNullable(lot.groups().get(column)).ifPresent(levels::add));
      for (String level : levels) {
        Cause cause = cause(column, level, levels.size());
        if (cause.gain() > WORTH_NAMING && (best == null || cause.gain() > best.gain())) {
          best = cause;
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private int[] members(String column, String level) {
    return IntStream.range(0, lots.size())
        .filter(i -> level.equals(lots.get(i).groups().get(column)))
        .toArray();
  }

  private Cause cause(String column, String level, int levels) {
    int[] members = members(column, level);
    double none = logLikelihood(members, 0);
    double low = 0;
    double high = MOST_LOG_RATIO;
    for (int step = 0; step < STEPS; step++) {
      double a = low + (high - low) / 3;
      double b = high - (high - low) / 3;
      if (logLikelihood(members, a) < logLikelihood(members, b)) {
        low = a;
      } else {
        high = b;
      }
    }
    double ratio = (low + high) / 2;
    long grafts = 0;
    long failed = 0;
    double failing = 0;
    for (int i : members) {
      grafts += lots.get(i).grafts();
      failed += lots.get(i).failures();
      failing += lots.get(i).grafts() * (1 - take(i, 0));
    }
    double gain = logLikelihood(members, ratio) - none - Math.log(levels);
    return new Cause(column, level, gain, Math.exp(ratio), grafts, failed, failing);
  }

  private double logLikelihood(int[] members, double logRatio) {
    double sum = 0;
    for (int i : members) {
      WatchedLot lot = lots.get(i);
      sum +=
          LotCounts.logProbability(
              lot.takes(), lot.grafts(), take(i, logRatio), expected.get(i).correlation());
    }
    return sum;
  }

  private double take(int i, double logRatio) {
    return LotCounts.shifted(expected.get(i).mean(), Math.exp(logRatios[i] + logRatio));
  }
}
