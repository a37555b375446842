package org.taketally.answers.counts;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.HypergeometricDistribution;

/**
 * Counts by two groupings: do they go together?
 *
 * <pre>
 *   o   a count      e = row total * column total / total
 *   Pearson: sum (o - e)^2 / e        likelihood ratio: 2 sum o log(o / e)
 * </pre>
 */
public final class TwoWayTable {

  /** Counts as likely as the one seen, up to rounding, belong to the tail: as R's fisher.test. */
  private static final double AS_LIKELY = 1 + 1e-7;

  private final long[][] counts;

  private TwoWayTable(long[][] counts) {
    this.counts = counts;
  }

  /**
   * A table of counts.
   *
   * @param counts rows of equal length, each count 0 or more; at least two rows and two columns
   *     with anything in them
   * @return the table without empty rows and columns
   * @throws IllegalArgumentException if there are fewer
   */
  public static TwoWayTable of(long[][] counts) {
    boolean[] columns = new boolean[counts.length == 0 ? 0 : counts[0].length];
    for (long[] row : counts) {
      for (int j = 0; j < columns.length; j++) {
        if (row[j] < 0) {
          throw new IllegalArgumentException("counts must be 0 or more, got " + row[j]);
        }
        columns[j] |= row[j] > 0;
      }
    }
    long[][] kept =
        Arrays.stream(counts)
            .filter(row -> Arrays.stream(row).anyMatch(count -> count > 0))
            .map(row -> pick(row, columns))
            .toArray(long[][]::new);
    if (kept.length < 2 || kept[0].length < 2) {
      throw new IllegalArgumentException(
          "a table needs at least two rows and two columns with counts, got %d and %d"
              .formatted(kept.length, kept.length == 0 ? 0 : kept[0].length));
    }
    return new TwoWayTable(kept);
  }

  private static long[] pick(long[] row, boolean[] columns) {
    return IntStream.range(0, row.length).filter(j -> columns[j]).mapToLong(j -> row[j]).toArray();
  }

  /**
   * Lots of grafts against taken or failed.
   *
   * @param lots takes of each lot, at least two with grafts; not all taken, not all failed
   * @return the table
   * @throws IllegalArgumentException if there is nothing to compare
   */
  public static TwoWayTable ofTakes(List<TakeCount> lots) {
    return of(
        lots.stream().map(lot -> new long[] {lot.takes(), lot.failures()}).toArray(long[][]::new));
  }

  /**
   * Pearson's chi-square that the groupings have nothing to do with each other.
   *
   * @return the test, (rows - 1)(columns - 1) degrees of freedom
   */
  public ChiSquare pearson() {
    double statistic = 0;
    for (int i = 0; i < counts.length; i++) {
      for (int j = 0; j < counts[i].length; j++) {
        double e = expected(i, j);
        statistic += (counts[i][j] - e) * (counts[i][j] - e) / e;
      }
    }
    return new ChiSquare(statistic, degreesOfFreedom());
  }

  /**
   * The likelihood-ratio chi-square of the same question.
   *
   * @return the test, (rows - 1)(columns - 1) degrees of freedom
   */
  public ChiSquare likelihoodRatio() {
    double statistic = 0;
    for (int i = 0; i < counts.length; i++) {
      for (int j = 0; j < counts[i].length; j++) {
        long o = counts[i][j];
        statistic += o == 0 ? 0 : 2 * o * Math.log(o / expected(i, j));
      }
    }
    return new ChiSquare(Math.max(0, statistic), degreesOfFreedom());
  }

  private int degreesOfFreedom() {
    return (counts.length - 1) * (counts[0].length - 1);
  }

  private double expected(int i, int j) {
    long row = Arrays.stream(counts[i]).sum();
    long column = 0;
    long total = 0;
    for (long[] each : counts) {
      column += each[j];
      total += Arrays.stream(each).sum();
    }
    return (double) row * column / total;
  }

  /**
   * Fisher's exact test that two lots take alike, two-sided: the chance, given the margins, of all
   * tables no likelier than the one seen.
   *
   * @param first takes of the first lot
   * @param second takes of the second lot; both lots together at most about two thousand million
   *     grafts
   * @return chance, 0 to 1
   * @see "Fisher (1934), Statistical Methods for Research Workers, 5th edition, section 21.02"
   */
  public static double fisher(TakeCount first, TakeCount second) {
    int grafts = Math.toIntExact(first.grafts() + second.grafts());
    int takes = Math.toIntExact(first.takes() + second.takes());
    int drawn = Math.toIntExact(first.grafts());
    HypergeometricDistribution tables = new HypergeometricDistribution(null, grafts, takes, drawn);
    double seen = tables.probability(Math.toIntExact(first.takes())) * AS_LIKELY;
    double pValue = 0;
    for (int x = tables.getSupportLowerBound(); x <= tables.getSupportUpperBound(); x++) {
      double probability = tables.probability(x);
      pValue += probability <= seen ? probability : 0;
    }
    return Math.min(1, pValue);
  }
}
