package org.taketally.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.taketally.model.laplace.BlockLaplace;
import org.taketally.model.laplace.JointMode;
import org.taketally.model.laplace.LevelVector;
import org.taketally.model.numeric.Dense;
import org.taketally.model.numeric.SmallMatrix;

/**
 * Draws of a fit with the levels of one adjusted column drawn toward each other, as if the column
 * varied around a common mean. What the levels move by moves everything else along by its
 * covariance with them.
 */
final class ShrunkenDraws {

  private final LevelContrasts contrasts;
  private final int[] effects;
  private final SmallMatrix covariance;
  private final List<TakeDraws.Draw> along = new ArrayList<>();

  /**
   * Of one column.
   *
   * @param fit any fit by Laplace (nodes 1)
   * @param contrasts of the column's levels
   * @param effects places of these among the fixed effects
   */
  ShrunkenDraws(TakeFit fit, LevelContrasts contrasts, int[] effects) {
    this.contrasts = contrasts;
    this.effects = effects;
    BlockLaplace engine = fit.engine();
    JointMode mode = engine.joint(fit.point().tau, fit.beta());
    int fixed = fit.beta().length;
    double[][] among = new double[effects.length][];
    for (int j = 0; j < effects.length; j++) {
      LevelVector column = mode.covarianceWith(effects[j]);
      int end = column.rest.length;
      double[] beta = Arrays.copyOfRange(column.rest, end - fixed, end);
      along.add(new TakeDraws.Draw(beta, new double[0], engine.split(column)));
      among[j] = picked(beta);
    }
    covariance = SmallMatrix.of(among);
  }

  private double[] picked(double[] beta) {
    return IntStream.of(effects).mapToDouble(j -> beta[j]).toArray();
  }

  /** One draw, from the same draw with the levels free. */
  TakeDraws.Draw of(TakeDraws.Draw free, long seed, int number) {
    double[] differences = picked(free.beta());
    double[] moves =
        contrasts.drawnTogether(differences, new SplittableRandom(seed * 9_176_867L + number));
    for (int j = 0; j < moves.length; j++) {
      moves[j] -= differences[j];
    }
    double[] scale = covariance.solve(moves);
    double[] beta = free.beta().clone();
    double[][] deviations =
        Arrays.stream(free.effects()).map(double[]::clone).toArray(double[][]::new);
    for (int j = 0; j < scale.length; j++) {
      TakeDraws.Draw column = along.get(j);
      Dense.axpy(beta, scale[j], column.beta(), 0, beta.length);
      for (int k = 0; k < deviations.length; k++) {
        Dense.axpy(deviations[k], scale[j], column.effects()[k], 0, deviations[k].length);
      }
    }
    return new TakeDraws.Draw(beta, free.sds(), deviations);
  }
}
