package org.taketally.wording;

import org.taketally.answers.Estimate;
import org.taketally.answers.counts.ChiSquare;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.survival.LateLoss.FactorLoss;
import org.taketally.answers.survival.LateLoss.LevelLoss;
import org.taketally.answers.survival.SurvivalCurve;
import org.taketally.terms.Interval;

/** The tables of {@link LateLoss}. */
final class LateLossTables {

  private LateLossTables() {}

  static AnswerTable levels(LateLoss answer) {
    AnswerTable.Builder table =
        AnswerTable.of(
            "late-loss",
            "Early take, final take and late loss, highest late loss first",
            AnswerColumn.FACTOR,
            AnswerColumn.LEVEL,
            AnswerColumn.GRAFTS,
            AnswerColumn.EARLY_TAKE,
            AnswerColumn.EARLY_LOW,
            AnswerColumn.EARLY_HIGH,
            AnswerColumn.LATE_STARTERS,
            AnswerColumn.LOST,
            AnswerColumn.FINAL_TAKE,
            AnswerColumn.FINAL_LOW,
            AnswerColumn.FINAL_HIGH,
            AnswerColumn.LATE_LOSS,
            AnswerColumn.LATE_LOSS_LOW,
            AnswerColumn.LATE_LOSS_HIGH,
            AnswerColumn.TIMES_AS_FAST,
            AnswerColumn.TIMES_LOW,
            AnswerColumn.TIMES_HIGH);
    addLevel(table, null, answer.all(), answer.options().coverage());
    for (FactorLoss factor : answer.factors()) {
      factor
          .levels()
          .forEach(level -> addLevel(table, factor.factor(), level, answer.options().coverage()));
    }
    return table.build();
  }

  private static void addLevel(
      AnswerTable.Builder table, String factor, LevelLoss level, double coverage) {
    Interval early =
        TakeRateInterval.wilson(level.early().takes(), level.early().grafts(), coverage);
    Interval last = TakeRateInterval.wilson(level.last().takes(), level.last().grafts(), coverage);
    table.row(
        factor,
        factor == null ? null : level.name(),
        level.early().grafts(),
        level.early().rate(),
        early,
        level.lateStarters(),
        level.lost(),
        level.last().rate(),
        last,
        level.lateLoss(),
        level.timesAsFast().map(Estimate::value).orElse(null),
        level.timesAsFast().map(Estimate::low).orElse(null),
        level.timesAsFast().map(Estimate::high).orElse(null));
  }

  static AnswerTable curves(LateLoss answer) {
    AnswerTable.Builder table =
        AnswerTable.of(
            "late-loss-curves",
            "Share of grafts once alive that are still alive, by days after the first count",
            AnswerColumn.FACTOR,
            AnswerColumn.LEVEL,
            AnswerColumn.VALUE,
            AnswerColumn.AT_RISK,
            AnswerColumn.LOST,
            AnswerColumn.STILL_ALIVE,
            AnswerColumn.STILL_ALIVE_LOW,
            AnswerColumn.STILL_ALIVE_HIGH);
    addCurve(table, answer, null, answer.all());
    for (FactorLoss factor : answer.factors()) {
      factor.levels().forEach(level -> addCurve(table, answer, factor.factor(), level));
    }
    return table.build();
  }

  private static void addCurve(
      AnswerTable.Builder table, LateLoss answer, String factor, LevelLoss level) {
    for (int round = 1; round <= level.curve().lastDay(); round++) {
      SurvivalCurve.Step step = level.curve().at(round);
      table.row(
          factor,
          factor == null ? null : level.name(),
          (double) answer.rounds().get(round - 1).middle(),
          step.atRisk(),
          step.lost(),
          step.alive(),
          step.interval());
    }
  }

  static AnswerTable tests(LateLoss answer) {
    AnswerTable.Builder table =
        AnswerTable.of(
            "late-loss-tests",
            "Whether levels are lost alike: log-rank tests",
            AnswerColumn.FACTOR,
            AnswerColumn.COMPARED_WITHIN,
            AnswerColumn.STATISTIC,
            AnswerColumn.DEGREES,
            AnswerColumn.P_VALUE);
    for (FactorLoss factor : answer.factors()) {
      factor.plainTest().ifPresent(test -> addTest(table, factor.factor(), null, test));
      if (!factor.testedWithin().isEmpty()) {
        String within = String.join(", ", factor.testedWithin());
        factor.test().ifPresent(test -> addTest(table, factor.factor(), within, test));
      }
    }
    return table.build();
  }

  private static void addTest(
      AnswerTable.Builder table, String factor, String within, ChiSquare test) {
    table.row(factor, within, test.statistic(), (double) test.degreesOfFreedom(), test.pValue());
  }
}
