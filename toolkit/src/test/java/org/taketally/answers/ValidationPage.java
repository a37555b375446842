package org.taketally.answers;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import org.taketally.answers.ErrorRates.Result;
import org.taketally.answers.VerdictStudy.Range;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.answers.verdict.Verdict;
import org.taketally.terms.Interval;

/** docs/validation.md from the results of the study. */
final class ValidationPage {

  private static final double LEVEL = 0.95;

  private final List<Result> results;
  private final String drawsTable;

  /**
   * A page.
   *
   * @param results of the study
   * @param drawsTable the table of the draws' calibration
   */
  ValidationPage(List<Result> results, String drawsTable) {
    this.results = results;
    this.drawsTable = drawsTable;
  }

  /** How often something happened. */
  record Share(int times, int of) {
    double rate() {
      return (double) times / of;
    }

    Interval likely() {
      return TakeRateInterval.wilson(times, of, LEVEL);
    }

    String words() {
      return String.format(
          Locale.ROOT,
          "%.1f %% (%.1f to %.1f %%)",
          100 * rate(),
          100 * likely().low(),
          100 * likely().high());
    }
  }

  private Share share(Predicate<Trial> which, ToIntFunction<VerdictStudy.Counts> counted) {
    int times = 0;
    int of = 0;
    for (Result result : results) {
      if (which.test(result.trial())) {
        times += counted.applyAsInt(result.counts());
        of += result.counts().trials;
      }
    }
    return new Share(times, of);
  }

  Share falseMatters() {
    return share(t -> t.gap() == 0, ValidationPage::differenceClaimed);
  }

  Share falseNoDifference() {
    return share(t -> t.gap() >= ErrorRates.MARGIN, ValidationPage::noDifferenceClaimed);
  }

  static int differenceClaimed(VerdictStudy.Counts counts) {
    return counts.of(Verdict.MATTERS);
  }

  static int noDifferenceClaimed(VerdictStudy.Counts counts) {
    return counts.of(Verdict.NO_PRACTICAL_DIFFERENCE) + counts.of(Verdict.LESS_THAN_YOU_CARE_ABOUT);
  }

  Share covered(Range range) {
    return covered(range, t -> true);
  }

  private Share covered(Range range, Predicate<Trial> which) {
    int inside = 0;
    int all = 0;
    for (Result result : results) {
      if (which.test(result.trial())) {
        inside += result.counts().inside(range);
        all += result.counts().all(range);
      }
    }
    return new Share(inside, all);
  }

  String text() {
    int trials = results.stream().mapToInt(r -> r.counts().trials).sum();
    return """
    # How often are the answers wrong?

    Made by `ErrorRatesTest` from %,d simulated trials whose truth is known; see the end for how to make it again. Whether the draws behind every chance and range are calibrated stands below and, with the design, on a page of its own: [validation-draws.md](validation-draws.md).

    ## The trials

    Rootstocks by 8 cultivars, grafted one by one over days by 4 hands, on swelling or dormant buds; cultivars, hands and days differ at random (standard deviations 0.6, 0.3 and 0.3 logits), about 69 %% take. The rootstocks' true takes, averaged over the trial's own mix, lie exactly a stated gap apart: none, half the margin, the margin, twice the margin. The margin is 10 points. "One worse": one stock lies below the others, which are alike; "even steps": spaced evenly. "Even": each graft's stock is drawn by lot; "uneven": the commonest stock has ten times the grafts of the rarest and cultivars go with hands; "one rootstock a day": as in many nurseries, the hardest to tell. Every trial is analysed with the usual settings (1,000 draws): bud stage adjusted for; cultivar, grafter and grafting day varying; rootstock compared.

    ## Wrong verdicts

    | wrong verdict | how often |
    |---|---|
    | `matters`, though the stocks are alike | %s |
    | `no practical difference`, or less than you care about, though they lie the margin or more apart | %s |

    Each promised to be at most 5 %%. In brackets: what the number of trials leaves open.

    ## Every kind of trial

    Shares of trials in per cent. "Named": among verdicts `matters`, how often the worse stock and no other was named (one worse only).

    | stocks | grafts | layout | pattern | true gap | trials | matters | no practical difference | differs, less than you care about | can't tell yet | entangled | named |
    |--:|--:|---|---|--:|--:|--:|--:|--:|--:|--:|--:|
    %s
    ## Do the ranges hold what they say?

    How often the likely range held the truth. A range of 95 %% should do so in 95 of 100; levels that vary are drawn toward the middle, so theirs hold on average over levels, not for each.

    | range | all trials | under 800 grafts | 800 grafts and more |
    |---|--:|--:|--:|
    %s
    ## Are the posterior draws calibrated?

    500 studies with truths drawn from the prior (Talts et al. 2018): in which tenth of its draws each truth lies. Right draws put about 50 in each.

    %s
    ## What this can't show

    * Trials made by the model itself: it can't show what happens where the model is wrong, e.g. where an unrecorded circumstance goes with a rootstock.
    * Records of fewer than 300 grafts were not tried here: with 200, ranges held about 1 to 3 points less often than they say.
    * The chance of an answer at all: with few grafts nearly every verdict is `can't tell yet`, which is never counted as wrong.

    ## Making it again

        ./mvnw -Pslow verify -Dtest=ErrorRatesTest -Dgolden=write

    runs all trials (about an hour on two cores) and rewrites `toolkit/src/test/resources/validation/error-rates.csv` and this page. Trials are seeded: the first of the n-th row has seed n million, the following ones count on.
    """
        .formatted(
            trials,
            falseMatters().words(),
            falseNoDifference().words(),
            rows(),
            coverage(),
            drawsTable);
  }

  private String rows() {
    StringBuilder rows = new StringBuilder();
    for (Result result : results) {
      Trial t = result.trial();
      VerdictStudy.Counts c = result.counts();
      rows.append(
          "| %d | %,d | %s | %s | %.0f points | %d | %s | %s | %s | %s | %s | %s |\n"
              .formatted(
                  t.stocks(),
                  t.grafts(),
                  t.layout().words,
                  t.gap() == 0 ? "alike" : t.pattern().words,
                  100 * t.gap(),
                  c.trials,
                  percent(c.of(Verdict.MATTERS), c.trials),
                  percent(c.of(Verdict.NO_PRACTICAL_DIFFERENCE), c.trials),
                  percent(c.of(Verdict.LESS_THAN_YOU_CARE_ABOUT), c.trials),
                  percent(c.of(Verdict.CANT_TELL_YET), c.trials),
                  percent(c.of(Verdict.ENTANGLED), c.trials),
                  named(t, c)));
    }
    return rows.toString();
  }

  private static String named(Trial trial, VerdictStudy.Counts counts) {
    boolean one = trial.pattern() == Trial.Pattern.ONE_BAD && trial.gap() > 0 && trial.stocks() > 2;
    int matters = counts.of(Verdict.MATTERS);
    return one && matters > 0 ? percent(counts.named, matters) : "";
  }

  private static String percent(int times, int of) {
    return String.format(Locale.ROOT, "%.0f", 100.0 * times / of);
  }

  private String coverage() {
    StringBuilder rows = new StringBuilder();
    for (Range range : Range.values()) {
      rows.append(
          "| %s | %s | %s | %s |\n"
              .formatted(
                  range.words,
                  covered(range).words(),
                  covered(range, t -> t.grafts() < 800).words(),
                  covered(range, t -> t.grafts() >= 800).words()));
    }
    return rows.toString();
  }
}
