package org.taketally.answers.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.taketally.answers.counts.ChiSquare;

/**
 * Are some lots lost sooner than others? On each day with losses, those of each lot are held
 * against what its share of the grafts at risk would give; within strata if there are any.
 *
 * <pre>
 *   n, d     grafts at risk and lost on a day, all lots     n_i, d_i   of lot i
 *   E_i      sum w d n_i / n                                O_i        sum w d_i
 *   V_ij     sum w^2 d (n - d) / (n - 1) * (n_i / n) ([i = j] - n_j / n)
 *   chi2     (O - E)' V^- (O - E), rank of V degrees of freedom
 * </pre>
 *
 * @param groups one per lot name, in order of appearance
 * @param test whether the lots differ; empty if no day with losses had two lots at risk
 * @see "Mantel (1966), Cancer Chemotherapy Reports 50, 163-170"
 */
public record LogRank(List<Group> groups, Optional<ChiSquare> test) {

  /** Below this share of the largest, a singular value counts as zero. */
  private static final double RANK_TOLERANCE = 1e-9;

  /** How days with losses are weighed. */
  public enum Weights {
    /** All alike: the log-rank test. */
    ALIKE,
    /** By the share alive before, so that early losses weigh more: Peto and Peto's test. */
    EARLY_MORE
  }

  /**
   * One lot in the comparison.
   *
   * @param name the lot
   * @param grafts grafts watched
   * @param lost grafts found lost
   * @param expected losses expected if all lots were lost alike
   */
  public record Group(String name, long grafts, long lost, double expected) {}

  /**
   * Compares lots, all days alike.
   *
   * @param lots at least two names; lots of one name are taken together within each stratum
   * @return losses, expected losses and the test
   */
  public static LogRank of(List<Watched> lots) {
    return of(lots, Weights.ALIKE);
  }

  /**
   * Compares lots.
   *
   * @param lots at least two names; lots of one name are taken together within each stratum
   * @param weights how days are weighed in the test; losses and expected losses are never weighed
   * @return losses, expected losses and the test
   * @throws IllegalArgumentException with fewer than two names
   */
  public static LogRank of(List<Watched> lots, Weights weights) {
    List<String> names = RiskSet.names(lots);
    if (names.size() < 2) {
      throw new IllegalArgumentException(
          "a comparison needs at least two lots, got %s".formatted(names));
    }
    List<RiskSet> sets = RiskSet.of(lots);
    double[] gap = new double[names.size()];
    double[][] variance = new double[names.size()][names.size()];
    double[] expected = new double[names.size()];
    for (RiskSet set : sets) {
      double weight = weights == Weights.ALIKE ? 1 : set.aliveBefore();
      add(set, weight, gap, variance);
      for (int i = 0; i < expected.length; i++) {
        expected[i] += (double) set.lostTotal() * set.atRisk()[i] / set.atRiskTotal();
      }
    }
    return new LogRank(groups(lots, names, expected), test(gap, variance));
  }

  private static void add(RiskSet set, double weight, double[] gap, double[][] variance) {
    double n = set.atRiskTotal();
    double d = set.lostTotal();
    double spread = n > 1 ? weight * weight * d * (n - d) / (n - 1) : 0;
    for (int i = 0; i < gap.length; i++) {
      double share = set.atRisk()[i] / n;
      gap[i] += weight * (set.lost()[i] - d * share);
      for (int j = 0; j < gap.length; j++) {
        variance[i][j] += spread * share * ((i == j ? 1 : 0) - set.atRisk()[j] / n);
      }
    }
  }

  private static Optional<ChiSquare> test(double[] gap, double[][] variance) {
    SingularValueDecomposition svd =
        new SingularValueDecomposition(new Array2DRowRealMatrix(variance));
    double[] sizes = svd.getSingularValues();
    double statistic = 0;
    int rank = 0;
    for (int k = 0; k < sizes.length && sizes[k] > RANK_TOLERANCE * sizes[0]; k++) {
      double along = svd.getU().getColumnVector(k).dotProduct(vector(gap));
      statistic += along * along / sizes[k];
      rank++;
    }
    return rank == 0 ? Optional.empty() : Optional.of(new ChiSquare(statistic, rank));
  }

  private static RealVector vector(double[] values) {
    return new ArrayRealVector(values, false);
  }

  private static List<Group> groups(List<Watched> lots, List<String> names, double[] expected) {
    List<Group> groups = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      String name = names.get(i);
      List<FollowUp> grafts =
          lots.stream()
              .filter(lot -> lot.name().equals(name))
              .flatMap(lot -> lot.grafts().stream())
              .toList();
      groups.add(
          new Group(
              name,
              grafts.stream().mapToLong(FollowUp::grafts).sum(),
              grafts.stream().filter(FollowUp::lost).mapToLong(FollowUp::grafts).sum(),
              expected[i]));
    }
    return groups;
  }
}
