package org.taketally.answers.checks;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Words;
import org.taketally.answers.checks.FitChecks.Check;
import org.taketally.answers.checks.FitChecks.SeasonInfluence;
import org.taketally.answers.checks.FitChecks.State;
import org.taketally.cells.Factor;
import org.taketally.model.TakeFit;

/**
 * How far the fixed effects move when a season is left out: see {@link LeaveOneSeasonOut}.
 *
 * @param influences one a season that could be left out, most influential first
 * @param check what that means
 */
public record SeasonsLeftOut(List<SeasonInfluence> influences, Check check) {

  public static final String SEASON = "season";
  private static final double FALSE_ALARM = 0.01;
  private static final String NAME = "seasons left out";

  static SeasonsLeftOut of(TakeFit fit, AnswerOptions options) {
    List<FixedContrast> contrasts = FixedContrast.all(fit);
    Factor seasons = fit.cells().findFactor(SEASON).orElse(null);
    if (seasons == null || contrasts.isEmpty()) {
      return unchecked("can't be tried: the records or the model have nothing to try it with.");
    }
    List<SeasonInfluence> influences = new ArrayList<>();
    for (int s = 0; s < seasons.size(); s++) {
      new LeaveOneSeasonOut(fit, contrasts, seasons, s)
          .influence(options)
          .ifPresent(influences::add);
    }
    if (influences.isEmpty()) {
      return unchecked("can't be tried: no season can be left out and the rest still be fitted.");
    }
    influences.sort(Comparator.comparingDouble(SeasonInfluence::largestShift).reversed());
    long grafts = fit.cells().graftsTotal();
    double far = far(influences.size() * contrasts.size());
    boolean alarm = influences.stream().anyMatch(influence -> sways(influence, grafts, far));
    return new SeasonsLeftOut(List.copyOf(influences), check(influences.get(0), alarm));
  }

  private static SeasonsLeftOut unchecked(String finding) {
    return new SeasonsLeftOut(
        List.of(), new Check(NAME, State.NOT_CHECKABLE, Double.NaN, finding, ""));
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
    String finding =
        "leaving out %s (%s) moves %s most, by %.1f times its usual error."
            .formatted(
                most.season(),
                Words.count(most.grafts(), "graft"),
                most.term(),
                most.largestShift());
    return new Check(
        NAME,
        alarm ? State.LOOK : State.FINE,
        most.largestShift(),
        finding,
        alarm
            ? "That answer leans on one season: read what was different in it before you trust it."
            : "");
  }
}
