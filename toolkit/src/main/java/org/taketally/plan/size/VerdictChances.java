package org.taketally.plan.size;

import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.answers.verdict.RootstockVerdictCalculator;
import org.taketally.answers.verdict.Verdict;
import org.taketally.cells.Cells;
import org.taketally.model.CannotFit;
import org.taketally.model.TakeModel;
import org.taketally.records.columns.RecordColumn;

/**
 * What a planned trial would be likely to say: the trial is made up many times from what is
 * supposed to be true, and each time analysed as its records would be, by the same model and rules.
 *
 * @param counts how often each verdict came out
 * @param unanswered how often no verdict could be given
 * @param trials trials made up
 */
public record VerdictChances(Map<Verdict, Integer> counts, int unanswered, int trials) {

  /** With fewer trials made up, a chance may be off by some 30 points. */
  public static final int LEAST_TRIALS = 12;

  private static final Set<Verdict> OPEN =
      EnumSet.of(Verdict.CANT_TELL_YET, Verdict.DIFFERS_UNSETTLED, Verdict.ENTANGLED);

  public VerdictChances {
    counts = Collections.unmodifiableMap(new EnumMap<>(counts));
  }

  /**
   * How the trials are made up.
   *
   * @param truth what is supposed to be true
   * @param answers margin, seed and the rest of what an analysis takes
   * @param trials how many, 1 or more
   * @param progress told after each trial how many are done; may come from any thread
   */
  public record Settings(
      TrialTruth truth, AnswerOptions answers, int trials, IntConsumer progress) {

    public Settings {
      if (trials < 1) {
        throw new IllegalArgumentException("trials to make up must be 1 or more, got " + trials);
      }
    }
  }

  /**
   * Chances of each verdict.
   *
   * @param planned cells of the trial ({@link org.taketally.plan.layout.PlannedCells})
   * @param settings what is true, and how often to try
   * @return counts of verdicts
   */
  public static VerdictChances of(Cells planned, Settings settings) {
    SimulatedTakes takes = new SimulatedTakes(planned, settings.truth());
    TakeModel model =
        SuggestedModel.of(planned).model().compare(RecordColumn.ROOTSTOCK.columnName());
    AtomicInteger done = new AtomicInteger();
    List<Verdict> verdicts =
        IntStream.range(0, settings.trials())
            .parallel()
            .mapToObj(
                i -> {
                  Cells trial = takes.draw(seed(settings.answers(), i));
                  Verdict verdict = verdict(model, trial, settings.answers());
                  settings.progress().accept(done.incrementAndGet());
                  return Optional.ofNullable(verdict);
                })
            .flatMap(Optional::stream)
            .toList();
    Map<Verdict, Integer> counts = new EnumMap<>(Verdict.class);
    verdicts.forEach(verdict -> counts.merge(verdict, 1, Integer::sum));
    return new VerdictChances(counts, settings.trials() - verdicts.size(), settings.trials());
  }

  /** Of the trial so numbered, from 0. */
  static long seed(AnswerOptions answers, int trial) {
    return answers.seed() * 1_000_003L + trial;
  }

  private static Verdict verdict(TakeModel model, Cells cells, AnswerOptions answers) {
    try {
      return RootstockVerdictCalculator.ofTypeAlone(model, cells, answers).verdict();
    } catch (CannotFit unanswered) {
      return null;
    }
  }

  /**
   * Chance of a verdict.
   *
   * @param verdict which
   * @return 0 to 1
   */
  public double chance(Verdict verdict) {
    return (double) counts.getOrDefault(verdict, 0) / trials;
  }

  /**
   * Chance of a verdict, and how far so few trials leave it open.
   *
   * @param verdict which
   * @return the share of the trials with its 95 % Wilson interval, 0 to 1
   */
  public Estimate estimate(Verdict verdict) {
    int count = counts.getOrDefault(verdict, 0);
    return new Estimate(chance(verdict), TakeRateInterval.wilson(count, trials, 0.95));
  }

  /**
   * Whether a verdict settles the question one way or the other.
   *
   * @param verdict any
   * @return all but {@code can't tell yet}, {@code differs, how much isn't settled} and {@code
   *     entangled}
   */
  public static boolean settles(Verdict verdict) {
    return !OPEN.contains(verdict);
  }

  /**
   * Chance that the trial settles the question one way or the other.
   *
   * @return chance of any verdict that {@link #settles}, 0 to 1
   */
  public double settled() {
    return counts.entrySet().stream()
            .filter(e -> settles(e.getKey()))
            .mapToInt(Map.Entry::getValue)
            .sum()
        / (double) trials;
  }

  /**
   * How far a chance may be off because it comes from so many trials: twice its standard error.
   *
   * @param chance 0 to 1
   * @return half-width, 0 to 1
   */
  public double uncertainty(double chance) {
    double kept = Math.max(chance * (1 - chance), 1.0 / trials);
    return Math.min(1, 2 * Math.sqrt(kept / trials));
  }

  /**
   * Trials that bring any chance this near.
   *
   * @param uncertainty how far it may be off, as in {@link #uncertainty}, above 0 and up to 1
   * @return fewest trials
   */
  public static int trialsWithin(double uncertainty) {
    return (int) Math.ceil(1 / (uncertainty * uncertainty));
  }
}
