package org.taketally.answers.survival;

import java.util.List;
import java.util.Optional;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.Question;
import org.taketally.answers.counts.ChiSquare;
import org.taketally.answers.counts.TakeCount;

/**
 * Early take, final take and late loss, kept apart: from rows whose living grafts were counted more
 * than once. For each level and for all: final take = early take + late starters - lost.
 *
 * <p>A graft counted alive, then not, then alive again had been overlooked; one that was not
 * counted alive at first is a late starter, watched from when it was first seen alive: before, it
 * could not be lost unseen. Curves and late loss run from each row's first count, over {@link
 * #rounds}. Grafts of one row may die together: ranges and tests allow for it by how much rows
 * differ.
 *
 * @param all everything together; its name is empty
 * @param factors one per factor asked for with at least two levels
 * @param rounds the rounds of later counts, in order
 * @param roundsApart whether rounds are parted by days without counts; if not, late loss by a day
 *     is rough
 * @param firstFrom earliest first count, days after grafting
 * @param firstTo latest first count, days after grafting
 * @param countedOnce grafts of rows counted only once, left out of all figures
 * @param dispersion how many times as much rows differ in what they lost as grafts lost one by one
 *     would make them; 1 where they don't differ more, or rows are single grafts
 * @param options level used
 */
public record LateLoss(
    LevelLoss all,
    List<FactorLoss> factors,
    List<Round> rounds,
    boolean roundsApart,
    long firstFrom,
    long firstTo,
    long countedOnce,
    double dispersion,
    AnswerOptions options)
    implements Answer {

  /** Chance alone must part levels so far less often than this before they are said to differ. */
  static final double DIFFER_BELOW = 0.05;

  public LateLoss {
    factors = List.copyOf(factors);
    rounds = List.copyOf(rounds);
  }

  /**
   * A round of later counts.
   *
   * @param from its first day, days after the first count
   * @param to its last day
   * @param middle the middle day of the counts in it, where curves are drawn
   */
  public record Round(long from, long to, long middle) {}

  /**
   * Early take, final take and late loss of one level.
   *
   * @param name the level
   * @param early counted alive at the first count
   * @param last counted alive at the last count
   * @param lateStarters not counted alive at first, but later
   * @param lost alive at some count and not at the last
   * @param hiddenAtMost losses that late starters of the same row could hide, at most
   * @param lateLoss share lost by the last round the level was counted in, 0 to 1, with grafts
   *     watched for a part of the time only, late starters too, used as long as they were
   * @param curve share still alive after each round; its days are numbers of rounds, from 1
   * @param timesAsFast how many times as fast they were lost as those of the base level, above 0,
   *     the other factors allowed for; empty for the base, and where it can't be told
   */
  public record LevelLoss(
      String name,
      TakeCount early,
      TakeCount last,
      long lateStarters,
      long lost,
      long hiddenAtMost,
      Estimate lateLoss,
      SurvivalCurve curve,
      Optional<Estimate> timesAsFast) {

    /**
     * Grafts that were alive at some count.
     *
     * @return early takes and late starters
     */
    public long onceAlive() {
      return early.takes() + lateStarters;
    }
  }

  /**
   * Late loss by the levels of one factor.
   *
   * @param factor column name
   * @param within what is allowed for by {@code timesAsFast}: season, site and the other factors
   * @param testedWithin those of them within whose levels the test compares: as many as leave half
   *     of the losses where two levels can be compared
   * @param base the level others are compared with: most grafts once alive
   * @param levels highest late loss first
   * @param plainTest log-rank test that all levels are lost alike, other factors not looked at;
   *     empty if no graft was lost
   * @param test log-rank test within {@code testedWithin} that all levels are lost alike; empty if
   *     no graft was lost where two levels could be compared
   */
  public record FactorLoss(
      String factor,
      List<String> within,
      List<String> testedWithin,
      String base,
      List<LevelLoss> levels,
      Optional<ChiSquare> plainTest,
      Optional<ChiSquare> test) {

    public FactorLoss {
      within = List.copyOf(within);
      testedWithin = List.copyOf(testedWithin);
      levels = List.copyOf(levels);
    }

    /**
     * Whether levels differ by more than chance would part them.
     *
     * @return true if chance alone does it less than 5 times in 100
     */
    public boolean differ() {
      return test.map(t -> t.pValue() < DIFFER_BELOW).orElse(false);
    }
  }

  @Override
  public Question question() {
    return Question.LATE_LOSS;
  }
}
