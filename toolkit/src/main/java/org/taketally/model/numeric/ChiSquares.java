package org.taketally.model.numeric;

import org.apache.commons.math3.util.CombinatoricsUtils;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/** Upper tails of chi-square, and of its mixture where parameters are tested at an edge. */
public final class ChiSquares {

  private ChiSquares() {}

  /**
   * How often chance gives at least this.
   *
   * @param chiSquare 0 or more
   * @param degrees 0 or more; with none every value above 0 is impossible
   */
  public static double upper(double chiSquare, int degrees) {
    if (degrees == 0) {
      return chiSquare > 0 ? 0 : 1;
    }
    return ChiSquaredDistribution.of(degrees).survivalProbability(chiSquare);
  }

  /**
   * The same with some parameters at the edge of their range, where each is half the time at it.
   *
   * @param inside parameters that may lie on both sides
   * @param atEdge parameters tested at the edge: binomial weights
   * @see "Self and Liang (1987), Journal of the American Statistical Association 82, 605-610"
   */
  public static double upperAtEdge(double chiSquare, int inside, int atEdge) {
    double pValue = 0;
    for (int above = 0; above <= atEdge; above++) {
      pValue +=
          CombinatoricsUtils.binomialCoefficientDouble(atEdge, above)
              / Math.pow(2, atEdge)
              * upper(chiSquare, inside + above);
    }
    return pValue;
  }
}
