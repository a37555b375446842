package org.taketally.plan.size;

import java.util.OptionalInt;
import java.util.function.IntPredicate;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.plan.size.TrialQuestion.Claim;

/**
 * How many grafts a trial of two stocks needs, to find a difference, and to show that there is none
 * that matters, both by the rules of the verdict ({@link TrialQuestion#FALSE_DIFFERENCE}, {@link
 * TrialQuestion#FALSE_EQUIVALENCE}).
 *
 * <pre>
 *   single grafts: the normal approximation, both tails ({@link
 *     org.taketally.answers.counts.DifferencePower}, {@link
 *     org.taketally.answers.counts.MarginPower}), but exact sums where a stock has few takes or few
 *     failures
 *   beds of m grafts whose takes have variance S, k beds of the first stock and k' of the second:
 *     variance of a stock's mean   (S + (p (1 - p) - S) / m) / k
 *     t tests with k + k' - 2 degrees of freedom
 *   no chance with fewer than {@value SuggestedModel#LEAST_GRAFTS} grafts on a stock: the records
 *     of fewer aren't judged
 *   off types, share s: the difference seen is (1 - s) times the true one
 *   hands, days and cultivars shared alike whose takes have variance V about p: p (1 - p) - V in
 *     place of p (1 - p) of grafts
 * </pre>
 *
 * @param question what is to be shown
 * @param units what is given a stock independently
 * @param difference what finding the difference takes
 * @param equivalence what showing "no difference that matters" takes, if there is none at all: both
 *     stocks then take as the first
 */
public record TrialSize(
    TrialQuestion question, TrialUnits units, Need difference, Need equivalence) {

  private static final int MOST_UNITS = 20_000;

  /** Grafts in a unit beyond which more of them change nothing that matters. */
  private static final int ENDLESS = 100_000;

  /**
   * What one claim takes.
   *
   * @param reason whether it can be had
   * @param firstGrafts grafts on the first stock; empty if it can't be had
   * @param secondGrafts grafts on the second stock; empty if it can't be had
   * @param firstUnits beds, trays or days of the first stock; empty if it can't be had or grafts
   *     count one by one
   * @param secondUnits the same of the second stock
   * @param unitSize grafts in each unit: as asked for, or more where units are limited
   * @param mostChance the chance that could be had with endless grafts, in the units there can be
   *     at most; 0 to 1
   */
  public record Need(
      Reason reason,
      OptionalInt firstGrafts,
      OptionalInt secondGrafts,
      OptionalInt firstUnits,
      OptionalInt secondUnits,
      int unitSize,
      double mostChance) {}

  /** Whether a claim can be had. */
  public enum Reason {
    /** With the numbers given. */
    ENOUGH_GRAFTS,
    /** In the units there can be at most, if each holds more grafts than was said. */
    LARGER_UNITS,
    /** No number of grafts helps: there are too few beds, trays or days. */
    TOO_FEW_UNITS,
    /** No number of grafts helps: it isn't true of the takes supposed. */
    NOT_TRUE
  }

  /**
   * The size of a trial.
   *
   * @param question what is to be shown
   * @param units what is given a stock independently
   * @return grafts and units for either claim
   * @throws IllegalArgumentException if units can't differ so far about a take, or if there can't
   *     be so many of one stock per one of the other
   */
  public static TrialSize of(TrialQuestion question, TrialUnits units) {
    for (double take : new double[] {question.firstTake(), question.secondTake()}) {
      if (!units.canDiffer(take)) {
        throw new IllegalArgumentException(
            "beds, trays or days can't differ by %s about a take of %s; give less"
                .formatted(units.spread(), take));
      }
    }
    if (!units.isSingle()) {
      requireUnits(question, units);
    }
    return new TrialSize(
        question, units, difference(question, units), equivalence(question, units));
  }

  private static Need difference(TrialQuestion question, TrialUnits units) {
    double first = question.firstTake();
    double second = question.secondTakeAsMixed();
    if (first == second) {
      return impossible(Reason.NOT_TRUE, units, TrialQuestion.FALSE_DIFFERENCE);
    }
    if (units.isSingle()) {
      return single(new SingleGraftsPower(question, Claim.DIFFERENCE).grafts(), question);
    }
    return inUnits(
        question,
        units,
        (k, m) ->
            power(question, units, second, k, m)
                .differs(first - second, TrialQuestion.FALSE_DIFFERENCE));
  }

  private static Need equivalence(TrialQuestion question, TrialUnits units) {
    double take = question.firstTake();
    if (units.isSingle()) {
      return single(new SingleGraftsPower(question, Claim.EQUIVALENCE).grafts(), question);
    }
    return inUnits(
        question,
        units,
        (k, m) ->
            power(question, units, take, k, m)
                .equivalent(0, question.margin(), TrialQuestion.FALSE_EQUIVALENCE));
  }

  private static Need single(double grafts, TrialQuestion question) {
    int first = (int) Math.ceil(grafts - 1e-9);
    return new Need(
        Reason.ENOUGH_GRAFTS,
        OptionalInt.of(first),
        OptionalInt.of((int) question.secondGrafts(grafts)),
        OptionalInt.empty(),
        OptionalInt.empty(),
        1,
        1);
  }

  private static Need impossible(Reason reason, TrialUnits units, double mostChance) {
    OptionalInt none = OptionalInt.empty();
    return new Need(reason, none, none, none, none, units.size(), mostChance);
  }

  /** Chance of the claim with k units of the first stock, m grafts in each. */
  private interface Chance {
    double of(int units, double size);
  }

  private static Need inUnits(TrialQuestion question, TrialUnits units, Chance ofBeds) {
    Chance chance = (k, m) -> isJudged(question, k, m) ? ofBeds.of(k, m) : 0;
    int most = mostUnits(question, units);
    double best = chance.of(most, ENDLESS);
    if (best < question.power()) {
      return impossible(Reason.TOO_FEW_UNITS, units, best);
    }
    if (chance.of(most, units.size()) >= question.power()) {
      int k =
          least(leastUnits(question), most, n -> chance.of(n, units.size()) >= question.power());
      return need(Reason.ENOUGH_GRAFTS, question, k, units.size(), best);
    }
    int m = least(units.size(), ENDLESS, size -> chance.of(most, size) >= question.power());
    return need(Reason.LARGER_UNITS, question, most, m, best);
  }

  private static boolean isJudged(TrialQuestion question, int units, double size) {
    return Math.min(units, secondUnits(question, units)) * size >= SuggestedModel.LEAST_GRAFTS;
  }

  private static Need need(Reason reason, TrialQuestion question, int k, int m, double best) {
    int second = secondUnits(question, k);
    return new Need(
        reason,
        OptionalInt.of(Math.multiplyExact(k, m)),
        OptionalInt.of(Math.multiplyExact(second, m)),
        OptionalInt.of(k),
        OptionalInt.of(second),
        m,
        best);
  }

  private static int secondUnits(TrialQuestion question, int first) {
    return (int) Math.min(Integer.MAX_VALUE, Math.round(first * question.secondPerFirst()));
  }

  private static void requireUnits(TrialQuestion question, TrialUnits units) {
    if (leastUnits(question) > mostUnits(question, units)) {
      throw new IllegalArgumentException(
          "with %s grafts on the second stock per graft on the first, and 2 to %,d beds, trays or days of each stock, there is no trial: one stock would have fewer than 2 or the other too many; give a number nearer to 1, or allow more beds"
              .formatted(question.secondPerFirst(), units.most().orElse(MOST_UNITS)));
    }
  }

  /** Fewest units of the first stock, so that either has two. */
  private static int leastUnits(TrialQuestion question) {
    int first = 2;
    while (first <= MOST_UNITS && secondUnits(question, first) < 2) {
      first++;
    }
    return first;
  }

  /** Most units of the first stock, so that neither has more than there can be. */
  private static int mostUnits(TrialQuestion question, TrialUnits units) {
    int most = units.most().orElse(MOST_UNITS);
    int first = most;
    while (first > 0 && secondUnits(question, first) > most) {
      first--;
    }
    return first;
  }

  /**
   * Fewest beds, trays or days of the first stock a trial can have, at the ratio asked for.
   *
   * @return 2 or more
   */
  public int leastUnits() {
    return leastUnits(question);
  }

  /**
   * Most beds, trays or days of the first stock a trial can have, at the ratio asked for.
   *
   * @return 2 or more
   */
  public int mostUnits() {
    return mostUnits(question, units);
  }

  /**
   * Beds, trays or days of the second stock.
   *
   * @param first so many of the first
   * @return 2 or more
   */
  public int secondUnits(int first) {
    return secondUnits(question, first);
  }

  /** The least whole number from {@code low} to {@code high} that is enough; {@code high} is. */
  private static int least(int low, int high, IntPredicate enough) {
    int below = low - 1;
    int above = high;
    while (above - below > 1) {
      int middle = below + (above - below) / 2;
      if (enough.test(middle)) {
        above = middle;
      } else {
        below = middle;
      }
    }
    return above;
  }

  private static FewUnitsPower power(
      TrialQuestion question, TrialUnits units, double second, int k, double m) {
    int others = secondUnits(question, k);
    double variance =
        ofUnit(question, units, question.firstTake(), m) / k
            + ofUnit(question, units, second, m) / others;
    return new FewUnitsPower(Math.sqrt(variance), Math.max(1, k + others - 2));
  }

  private static double ofUnit(TrialQuestion question, TrialUnits units, double take, double m) {
    double between = units.spread() * units.spread();
    return between + Math.max(0, question.varianceWithin(take) - between) / m;
  }

  /**
   * The chance that a trial of so many grafts finds the difference, or shows that there is none
   * that matters.
   *
   * @param firstGrafts grafts on the first stock, 2 or more; whole units of the trial's size where
   *     stocks come by the unit
   * @param claim which of the two
   * @return chance, 0 to 1
   */
  public double chance(int firstGrafts, Claim claim) {
    if (units.isSingle()) {
      return new SingleGraftsPower(question, claim).chance(firstGrafts);
    }
    double second = claim == Claim.DIFFERENCE ? question.secondTakeAsMixed() : question.firstTake();
    int k = Math.max(leastUnits(), Math.min(mostUnits(), firstGrafts / units.size()));
    double size = (double) firstGrafts / k;
    if (!isJudged(question, k, size)) {
      return 0;
    }
    FewUnitsPower power = power(question, units, second, k, size);
    return claim == Claim.DIFFERENCE
        ? power.differs(question.firstTake() - second, TrialQuestion.FALSE_DIFFERENCE)
        : power.equivalent(0, question.margin(), TrialQuestion.FALSE_EQUIVALENCE);
  }
}
