package org.taketally.model;

import java.util.ArrayList;
import java.util.List;
import org.taketally.model.FitWarning.Kind;
import org.taketally.model.laplace.LevelIntegrals;
import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.laplace.ModelData;

/**
 * Whether Laplace's approximation can be trusted with the spread of each varying column: where
 * levels hold few grafts it puts spreads too low.
 *
 * <pre>
 *   g       what quadrature, level by level, adds to the slope of the log-likelihood in tau
 *   se      standard error of tau          shift = g se^2, to first order
 * </pre>
 */
final class ThinLevels {

  /** Above this the spread would move by more than half its standard error. */
  private static final double SHIFT_IN_ERRORS = 0.5;

  /** Where there are more cells, levels are many and spreads known; and looking takes seconds. */
  private static final int MOST_CELLS = 100_000;

  private ThinLevels() {}

  static List<FitWarning> warnings(
      FitInput ready, LikelihoodPoint point, double[] errors, double[] shifts) {
    List<FitWarning> warnings = new ArrayList<>();
    int k = 0;
    for (String column : ready.levels().keySet()) {
      if (shifts[k] > SHIFT_IN_ERRORS * errors[k]) {
        warnings.add(warning(column, point.tau[k], shifts[k], perLevel(ready.evidence(), k)));
      }
      k++;
    }
    return warnings;
  }

  /** How far each variance would move, were each level integrated over exactly. */
  static double[] shifts(ModelData evidence, LikelihoodPoint point, double[] eta, double[] errors) {
    double[] shifts = new double[point.tau.length];
    if (evidence.cells() > MOST_CELLS) {
      return shifts;
    }
    LevelIntegrals integrals = new LevelIntegrals(evidence, eta, point.modes);
    for (int k = 0; k < shifts.length; k++) {
      if (point.tau[k] > 0 && errors[k] > 0) {
        shifts[k] = integrals.slope(k, point.tau[k]) * errors[k] * errors[k];
      }
    }
    return shifts;
  }

  private static double perLevel(ModelData evidence, int column) {
    double grafts = 0;
    for (int n : evidence.grafts()) {
      grafts += n;
    }
    return grafts / evidence.sizes()[column];
  }

  private static FitWarning warning(String column, double tau, double shift, double perLevel) {
    double higher = Math.sqrt((tau + shift) / tau) - 1;
    return new FitWarning(
        Kind.THIN_LEVELS,
        column,
        "levels of %s hold so few grafts (%.1f on average) that the spread between them is put about %.0f %% too low; see docs/when-a-fit-warns.md"
            .formatted(column, perLevel, 100 * higher));
  }
}
