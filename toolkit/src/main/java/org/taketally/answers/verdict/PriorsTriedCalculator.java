package org.taketally.answers.verdict;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.MarginalTakes;

/** Whether a verdict hangs on what was believed of spreads before the records were seen. */
final class PriorsTriedCalculator {

  /** Times the scale of the prior. */
  private static final List<Double> TIMES = List.of(0.5, 2.0);

  /** Draws to begin with; more are taken where they leave the verdict open. */
  private static final int DRAWS = 1000;

  private PriorsTriedCalculator() {}

  /** A verdict with the note; as it is where the prior has no say, or it would take minutes. */
  static FactorVerdict added(MarginalTakes main, FactorVerdictCalculator.Judged judged) {
    FactorVerdict verdict = judged.verdict();
    boolean whole =
        verdict.verdict() != Verdict.ENTANGLED
            && verdict.confounding().groups().size() == 1
            && verdict.notes().stream().noneMatch(PriorsTriedCalculator::otherwiseMade);
    return whole && !main.fit().varying().isEmpty() && !main.fit().isLarge()
        ? judged.free().map(free -> added(verdict, free, judged)).orElse(verdict)
        : verdict;
  }

  private static FactorVerdict added(
      FactorVerdict verdict, MarginalTakes free, FactorVerdictCalculator.Judged judged) {
    AnswerOptions options = verdict.options();
    SortedMap<Double, Verdict> tried = new TreeMap<>();
    for (double times : TIMES) {
      AnswerOptions other =
          options
              .withPriorScale(times * options.priorScale())
              .withDraws(Math.min(DRAWS, options.draws()));
      MarginalTakes there =
          free.withPriorScale(options, other.priorScale())
              .orElseGet(() -> MarginalTakes.of(free.fit(), other));
      tried.put(other.priorScale(), FactorVerdictCalculator.wordOf(there, judged, other));
    }
    return verdict.with(new FactorVerdict.PriorsTried(tried));
  }

  /** By counts, or by another fit than this. */
  private static boolean otherwiseMade(FactorVerdict.Note note) {
    return note instanceof FactorVerdict.NoneOrAllTook
        || note instanceof FactorVerdict.CountsAlone
        || note instanceof FactorVerdict.BatchAdded;
  }
}
