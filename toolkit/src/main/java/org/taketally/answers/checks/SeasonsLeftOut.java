package org.taketally.answers.checks;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.checks.FitChecks.Check;
import org.taketally.answers.checks.FitChecks.CheckKind;
import org.taketally.answers.checks.FitChecks.SeasonInfluence;
import org.taketally.answers.checks.FitChecks.SeasonsUntried;
import org.taketally.answers.checks.FitChecks.State;
import org.taketally.cells.Factor;
import org.taketally.model.TakeFit;
import org.taketally.records.columns.RecordColumn;

/**
 * How far the fixed effects move when a season is left out: see {@link LeaveOneSeasonOut}.
 *
 * @param influences one a season that could be left out, most influential first
 * @param check what that means
 */
public record SeasonsLeftOut(List<SeasonInfluence> influences, Check check) {

  public static final String SEASON = RecordColumn.SEASON.columnName();
  private static final double FALSE_ALARM = 0.01;

  static SeasonsLeftOut of(TakeFit fit, AnswerOptions options) {
    List<FixedContrast> contrasts = FixedContrast.all(fit);
    Factor seasons = fit.cells().findFactor(SEASON).orElse(null);
    if (seasons == null || contrasts.isEmpty()) {
      return unchecked(SeasonsUntried.NOTHING_TO_TRY);
    }
    List<SeasonInfluence> influences = new ArrayList<>();
    for (int s = 0; s < seasons.size(); s++) {
      new LeaveOneSeasonOut(fit, contrasts, seasons, s)
          .influence(options)
          .ifPresent(influences::add);
    }
    if (influences.isEmpty()) {
      return unchecked(SeasonsUntried.REST_CANT_BE_FITTED);
    }
    influences.sort(Comparator.comparingDouble(SeasonInfluence::largestShift).reversed());
    long grafts = fit.cells().graftsTotal();
    double far = far(influences.size() * contrasts.size());
    boolean alarm = influences.stream().anyMatch(influence -> sways(influence, grafts, far));
    return new SeasonsLeftOut(List.copyOf(influences), check(influences.get(0), alarm));
  }

  private static SeasonsLeftOut unchecked(SeasonsUntried finding) {
    return new SeasonsLeftOut(
        List.of(), new Check(CheckKind.SEASONS_LEFT_OUT, State.NOT_CHECKABLE, Double.NaN, finding));
  }

  /** Errors that chance alone exceeds in one record set of a hundred, for so many shifts. */
  private static double far(int shifts) {
    return NormalDistribution.of(0, 1).inverseSurvivalProbability(FALSE_ALARM / 2 / shifts);
  }

  /** Leaving out a share f at random moves an estimate by about sqrt(f / (1 - f)) errors. */
  private static boolean sways(SeasonInfluence influence, long grafts, double far) {
    double share = (double) influence.grafts() / grafts;
    double usual = Math.sqrt(share / (1 - share));
    return influence.largestShift() > 1 && influence.largestShift() > far * usual;
  }

  private static Check check(SeasonInfluence most, boolean alarm) {
    return new Check(
        CheckKind.SEASONS_LEFT_OUT,
        alarm ? State.LOOK : State.FINE,
        most.largestShift(),
        new FitChecks.MostSwayed(most));
  }
}
