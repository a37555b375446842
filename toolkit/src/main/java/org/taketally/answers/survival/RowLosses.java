package org.taketally.answers.survival;

import java.util.Arrays;
import java.util.List;

/**
 * How far rows of several grafts move a curve of survival, each taken as one thing that may die
 * together; added up day by day.
 *
 * <pre>
 *   n, d, n_i, d_i   grafts at risk and lost on a day, of all and of row i
 *   u_i              sum (d_i - n_i d/n) / (n - d)           what row i adds to log S
 *   variance         R / (R - 1) sum u_i^2                    R rows
 *   dispersion       R / (R - 1) sum (n_i parts of u_i)^2 over what single grafts would give
 * </pre>
 *
 * @see "Williams (1995), Biometrics 51, 1450-1456"
 */
final class RowLosses {

  private final List<List<FollowUp>> rows;
  private final double[] moved;
  private final double[] surplus;
  private double bySingleGrafts;

  /** Of rows; of none it says nothing. */
  RowLosses(List<List<FollowUp>> rows) {
    this.rows = List.copyOf(rows);
    this.moved = new double[rows.size()];
    this.surplus = new double[rows.size()];
  }

  /** Of rows, with all days on which they lost grafts taken in. */
  static RowLosses of(List<List<FollowUp>> rows) {
    RowLosses losses = new RowLosses(rows);
    List<Watched> one = List.of(Watched.of("", rows.stream().flatMap(List::stream).toList()));
    for (RiskSet set : RiskSet.of(one)) {
      losses.variance(set.day(), set.atRiskTotal(), set.lostTotal());
    }
    return losses;
  }

  /**
   * Takes in a day with losses, later than those before.
   *
   * @param day the day
   * @param atRisk grafts at risk that day
   * @param lost grafts found lost that day
   * @return variance of log S after it, by how rows differ; 0 of fewer than two rows
   */
  double variance(double day, long atRisk, long lost) {
    double share = (double) lost / atRisk;
    for (int i = 0; i < moved.length; i++) {
      double more = 0;
      for (FollowUp graft : rows.get(i)) {
        more += graft.lost() && graft.days() == day ? graft.grafts() : 0;
        more -= graft.atRisk(day) ? graft.grafts() * share : 0;
      }
      moved[i] += lost < atRisk ? more / (atRisk - lost) : 0;
      surplus[i] += more;
    }
    bySingleGrafts += lost * (1 - share);
    return moved.length < 2 ? 0 : spread(moved);
  }

  /** Squares of what rows lost beyond their share, corrected for having but so many rows. */
  double squares() {
    return moved.length < 2 ? 0 : spread(surplus);
  }

  /** What those squares would be, were grafts lost one by one; 0 of fewer than two rows. */
  double bySingleGrafts() {
    return moved.length < 2 ? 0 : bySingleGrafts;
  }

  private static double spread(double[] values) {
    return Arrays.stream(values).map(v -> v * v).sum() * values.length / (values.length - 1);
  }
}
