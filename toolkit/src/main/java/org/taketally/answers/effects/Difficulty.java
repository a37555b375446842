package org.taketally.answers.effects;

import java.util.List;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.AnswerOptions.Bands;
import org.taketally.answers.Condition;
import org.taketally.answers.Estimate;
import org.taketally.answers.Question;
import org.taketally.answers.counts.TakeCount;
import org.taketally.terms.Interval;

/**
 * How hard each cultivar is to get to take, other things being equal.
 *
 * @param cultivars hardest first
 * @param standard the standard conditions; the middle of everything that varies besides
 * @param tally grafts and takes behind it
 * @param options level and band thresholds used
 */
public record Difficulty(
    List<CultivarTake> cultivars, List<Condition> standard, TakeCount tally, AnswerOptions options)
    implements Answer {

  public Difficulty {
    cultivars = List.copyOf(cultivars);
    standard = List.copyOf(standard);
  }

  /**
   * One cultivar.
   *
   * @param cultivar name
   * @param tally its grafts and takes
   * @param counted Wilson interval of the counted take, 0 to 1
   * @param standardTake adjusted take under the standard conditions, 0 to 1
   * @param take adjusted take averaged over the conditions of all records, 0 to 1
   * @param drawnIn how far the estimate was drawn toward the middle, 0 not at all to 1 wholly
   * @param rank median rank with its likely range, 1 is the hardest
   * @param probabilityHardestQuarter chance of being among the hardest quarter, 0 to 1
   * @param band easy, middling, hard or can't tell
   */
  public record CultivarTake(
      String cultivar,
      TakeCount tally,
      Interval counted,
      Estimate standardTake,
      Estimate take,
      double drawnIn,
      Estimate rank,
      double probabilityHardestQuarter,
      Band band) {

    /**
     * Whether the whole likely range lies within the band, so that it isn't only probable.
     *
     * @param bands limits of the bands
     * @return false where it can't be told
     */
    public boolean clear(Bands bands) {
      return switch (band) {
        case HARD -> take.high() < bands.hardBelow();
        case EASY -> take.low() >= bands.easyFrom();
        case MIDDLING -> take.low() >= bands.hardBelow() && take.high() < bands.easyFrom();
        case CANT_TELL -> false;
      };
    }
  }

  @Override
  public Question question() {
    return Question.DIFFICULTY;
  }
}
