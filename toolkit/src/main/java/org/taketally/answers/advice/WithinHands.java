package org.taketally.answers.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.adjusted.WithinGroups;
import org.taketally.answers.counts.CrossTabulation;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.effects.TakeCurveCalculator;
import org.taketally.answers.verdict.FactorVerdict.Pair;
import org.taketally.answers.verdict.LevelComparison;
import org.taketally.answers.verdict.LevelComparisonCalculator;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.model.CannotFit;
import org.taketally.model.FitOptions;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;

/**
 * The fit once more, asked what one choice does within the same hands, days and seasons: wood that
 * a beginner used, or that came on bad days, must not be blamed for either.
 *
 * <p>Levels are compared by {@link WithinGroups}. Of numbers, the mean of each hand, day and season
 * enters beside the number itself wherever these means differ by more than dealing by lot gives
 * (Mundlak 1978, Econometrica 46, 69-85); of few groups each enters by itself. What is asked here
 * was shown by the main fit already, so draws with spreads at their estimates will do.
 */
final class WithinHands {

  /** With less of what a choice differed in than this within hands, or days, it wasn't compared. */
  private static final double HARDLY_MET = 0.25;

  /** How often dealing by lot gives means as far apart. */
  private static final double BY_LOT = 0.05;

  /** Groups needed for a mean to enter. */
  private static final int LEAST_GROUPS = 4;

  /** Hands that enter each by itself. */
  private static final int MOST_HANDS = 30;

  private static final String HAND = RecordColumn.GRAFTER.columnName();
  private static final List<String> LUCK = List.of(HAND, DerivedColumn.GRAFTING_DAY.columnName());

  private final TakeFit fit;
  private final AnswerOptions options;

  WithinHands(TakeFit fit, AnswerOptions options) {
    this.fit = fit;
    this.options = options;
  }

  /**
   * Pairs of a comparison made in the fit itself that met within hands and days.
   *
   * @param comparison of a column of levels that the fit adjusts for
   * @return the same, without pairs that hardly met
   */
  LevelComparison met(LevelComparison comparison) {
    List<Pair> pairs =
        comparison.pairs().stream()
            .filter(pair -> met(comparison.factor(), pair.level()))
            .filter(pair -> met(comparison.factor(), pair.other()))
            .toList();
    return new LevelComparison(
        comparison.factor(),
        comparison.levels(),
        pairs,
        comparison.confounding(),
        comparison.options());
  }

  /**
   * Whether hands, days, seasons and sites used the levels as unevenly as dealing by lot hardly
   * would. Where they didn't, the fit itself compares within them.
   *
   * @param factor a column of levels that the fit adjusts for
   * @return whether to compare by {@link #levels}
   */
  boolean uneven(String factor) {
    return WithinGroups.of(fit.cells(), asking(factor)).groups().stream()
        .filter(group -> !isMadeOf(group.column(), factor))
        .anyMatch(group -> group.way() != WithinGroups.Way.BY_LOT);
  }

  private boolean isMadeOf(String column, String factor) {
    return fit.model().together().getOrDefault(column, List.of()).contains(factor);
  }

  /**
   * Levels compared within hands and days in a fit of its own.
   *
   * @param factor a column of levels that the fit adjusts for
   * @return only pairs of levels that met within hands and days; empty if that can't be worked out
   */
  Optional<LevelComparison> levels(String factor) {
    TakeModel asked = asking(factor);
    return fitted(within(handByHand(asked)), fit.cells())
        .or(() -> fitted(within(asked), fit.cells()))
        .flatMap(
            again ->
                LevelComparisonCalculator.of(
                        MarginalTakes.atEstimates(again, options), List.of(factor), options)
                    .stream()
                    .findFirst())
        .map(this::met);
  }

  /**
   * A curve within hands and days.
   *
   * @param shown the curve of a column of numbers in the fit
   * @return the same where hands, days and seasons used it as evenly as by lot; empty if the number
   *     hardly changed within hands or days, or that can't be worked out
   */
  Optional<TakeCurve> curve(TakeCurve shown) {
    Measure number = fit.cells().measure(shown.column());
    boolean met =
        LUCK.stream()
            .flatMap(luck -> fit.cells().findFactor(luck).stream())
            .allMatch(group -> new GroupMeans(fit.cells(), number, group).within() >= HARDLY_MET);
    return met ? curve(shown, number) : Optional.empty();
  }

  private Optional<TakeCurve> curve(TakeCurve shown, Measure number) {
    TakeModel model = TakeModel.of(fit.model());
    List<Measure> more = new ArrayList<>();
    boolean uneven = false;
    for (String group : fit.model().varying()) {
      Optional<GroupMeans> found =
          fit.cells().findFactor(group).map(f -> new GroupMeans(fit.cells(), number, f));
      if (found.isEmpty() || found.get().byLot() >= BY_LOT) {
        continue;
      }
      uneven = true;
      if (found.get().groups() < LEAST_GROUPS) {
        model = model.without(group).adjustFor(group);
      } else {
        Measure mean = found.get().measure(number.name() + " of " + group);
        more.add(mean);
        model = model.adjustFor(mean.name());
      }
    }
    return uneven
        ? fitted(model, fit.cells().with(more))
            .map(again -> MarginalTakes.atEstimates(again, options))
            .map(again -> TakeCurveCalculator.of(again, options, number.name()))
        : Optional.of(shown);
  }

  private TakeModel within(TakeModel model) {
    return WithinGroups.of(fit.cells(), model).model();
  }

  /** Hands each by itself: with a few the shares of a beginner say too little of what is theirs. */
  private TakeModel handByHand(TakeModel model) {
    boolean few =
        model.varying().contains(HAND)
            && fit.cells().findFactor(HAND).filter(f -> f.size() <= MOST_HANDS).isPresent();
    return few ? model.without(HAND).adjustFor(HAND) : model;
  }

  private Optional<TakeFit> fitted(TakeModel model, Cells cells) {
    try {
      return Optional.of(
          model.fitNear(fit, cells, FitOptions.defaults().withExpectedInformation()));
    } catch (CannotFit cannot) {
      return Optional.empty();
    }
  }

  /** The fit's model with another question. */
  private TakeModel asking(String factor) {
    return TakeModel.of(fit.model().asking(factor));
  }

  private boolean met(String column, String level) {
    Factor factor = fit.cells().factor(column);
    int code = factor.levels().indexOf(level);
    return LUCK.stream()
        .flatMap(luck -> fit.cells().findFactor(luck).stream())
        .map(group -> new CrossTabulation(fit.cells(), factor, group))
        .allMatch(beside -> beside.efficiency(code) >= HARDLY_MET);
  }
}
