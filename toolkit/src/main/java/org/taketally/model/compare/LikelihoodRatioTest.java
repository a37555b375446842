package org.taketally.model.compare;

import java.util.List;
import org.taketally.model.TakeFit;
import org.taketally.model.numeric.ChiSquares;

/**
 * Likelihood-ratio comparison of two nested fits to the same cells.
 *
 * <p>A standard deviation more is tested at the edge of its range, where the statistic is half the
 * time 0: its distribution is a mixture of chi-squares (Self and Liang 1987), the simple chi-square
 * would give up to twice the p-value.
 *
 * @param chiSquare twice the gain in log-likelihood, 0 or more
 * @param fixedEffects fixed effects the larger fit has more
 * @param standardDeviations standard deviations the larger fit has more
 * @param pValue how often the smaller model would give at least this, 0 to 1
 * @param simplePValue the same without regard to the edge
 */
public record LikelihoodRatioTest(
    double chiSquare,
    int fixedEffects,
    int standardDeviations,
    double pValue,
    double simplePValue) {

  /**
   * Compares two fits.
   *
   * @param smaller the fit with fewer columns
   * @param larger the fit with more, to the same cells
   * @return the comparison
   * @throws IllegalArgumentException if the fits aren't nested or used other cells
   */
  public static LikelihoodRatioTest of(TakeFit smaller, TakeFit larger) {
    int fixed = larger.beta().length - smaller.beta().length;
    int spreads = larger.varying().size() - smaller.varying().size();
    requireNested(smaller, larger, fixed, spreads);
    double chiSquare = Math.max(0, 2 * (larger.logLikelihood() - smaller.logLikelihood()));
    return new LikelihoodRatioTest(
        chiSquare,
        fixed,
        spreads,
        ChiSquares.upperAtEdge(chiSquare, fixed, spreads),
        ChiSquares.upper(chiSquare, fixed + spreads));
  }

  private static void requireNested(TakeFit smaller, TakeFit larger, int fixed, int spreads) {
    List<String> small = smaller.model().columns();
    List<String> large = larger.model().columns();
    if (!large.containsAll(small) || fixed < 0 || spreads < 0 || fixed + spreads == 0) {
      throw new IllegalArgumentException(
          "the first model must be the second with columns left out, got %s and %s"
              .formatted(small, large));
    }
    if (smaller.cells().graftsTotal() != larger.cells().graftsTotal()
        || smaller.cells().takesTotal() != larger.cells().takesTotal()) {
      throw new IllegalArgumentException(
          "both fits must use the same grafts, got %,d and %,d: drop the grafts lacking a column first"
              .formatted(smaller.cells().graftsTotal(), larger.cells().graftsTotal()));
    }
  }
}
