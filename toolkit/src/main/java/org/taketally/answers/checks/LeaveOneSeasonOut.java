package org.taketally.answers.checks;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.checks.FitChecks.SeasonInfluence;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.CannotFit;
import org.taketally.model.FitOptions;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

/**
 * A fit without one season: fitted again, or above {@value #REFIT_CELLS} cells, or of a large fit,
 * by one step (covariance of the fixed effects times the season's score, over the share that
 * stays).
 */
final class LeaveOneSeasonOut {

  static final int REFIT_CELLS = 20_000;

  private static final double TOLERANCE = 1e-6;

  private final TakeFit fit;
  private final List<FixedContrast> contrasts;
  private final String season;
  private final boolean[] out;
  private final long grafts;

  LeaveOneSeasonOut(TakeFit fit, List<FixedContrast> contrasts, Factor seasons, int season) {
    this.fit = fit;
    this.contrasts = contrasts;
    this.season = seasons.levels().get(season);
    this.out = new boolean[seasons.cells()];
    long sum = 0;
    for (int i = 0; i < out.length; i++) {
      out[i] = seasons.code(i) == season;
      sum += out[i] ? fit.cells().grafts(i) : 0;
    }
    this.grafts = sum;
  }

  /** Empty if there is nothing in it, nothing beside it, or the rest can't be fitted. */
  Optional<SeasonInfluence> influence(AnswerOptions options) {
    if (grafts == 0 || grafts == fit.cells().graftsTotal()) {
      return Optional.empty();
    }
    return shifts(!fit.isLarge() && fit.cells().size() <= REFIT_CELLS)
        .map(
            shifts -> {
              int largest =
                  IntStream.range(0, shifts.length)
                      .boxed()
                      .max(Comparator.comparingDouble(c -> shifts[c]))
                      .orElseThrow();
              return new SeasonInfluence(
                  season,
                  grafts,
                  shifts[largest],
                  contrasts.get(largest).shown(fit.cells(), options));
            });
  }

  /** How far each contrast moves, in its errors. */
  Optional<double[]> shifts(boolean fitAgain) {
    if (!fitAgain) {
      double[] change = oneStep();
      return Optional.of(contrasts.stream().mapToDouble(c -> c.shift(change)).toArray());
    }
    try {
      Cells rest = fit.cells().where(i -> !out[i]);
      TakeFit without =
          TakeModel.of(fit.model())
              .fitNear(
                  fit,
                  rest,
                  FitOptions.defaults().withTolerance(TOLERANCE).withExpectedInformation());
      return Optional.of(contrasts.stream().mapToDouble(c -> c.shift(without)).toArray());
    } catch (CannotFit reason) {
      return Optional.empty();
    }
  }

  private double[] oneStep() {
    double stays = 1 - (double) grafts / fit.cells().graftsTotal();
    double[] score = score();
    double[][] covariance = fit.betaCovariance();
    double[] change = new double[score.length];
    for (int j = 0; j < score.length; j++) {
      for (int k = 0; k < score.length; k++) {
        change[j] -= covariance[j][k] * score[k] / stays;
      }
    }
    return change;
  }

  /** The season's part of the derivative of the log-likelihood by the fixed effects. */
  private double[] score() {
    double[] take = fit.fittedTake();
    double[] score = new double[fit.beta().length];
    for (int j = 0; j < score.length; j++) {
      double[] unit = new double[score.length];
      unit[j] = 1;
      double[] column = fit.design().fixedPart(unit);
      for (int i = 0; i < out.length; i++) {
        if (out[i]) {
          score[j] += column[i] * (fit.cells().takes(i) - fit.cells().grafts(i) * take[i]);
        }
      }
    }
    return score;
  }
}
