package org.taketally.answers.effects;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
 * @param within cultivars compared within hands and days; empty where these used them evenly, or it
 *     can't be worked out
 * @param options level and band thresholds used
 */
public record Difficulty(
    List<CultivarTake> cultivars,
    List<Condition> standard,
    TakeCount tally,
    Optional<Within> within,
    AnswerOptions options)
    implements Answer {

  public Difficulty {
    cultivars = List.copyOf(cultivars);
    standard = List.copyOf(standard);
  }

  /**
   * Cultivars compared within groups that used them unevenly.
   *
   * @param groups columns of these groups, e.g. {@code grafter}, {@code grafting_day}
   * @param takes adjusted take by cultivar, averaged over the conditions of all records, 0 to 1
   */
  public record Within(List<String> groups, Map<String, Estimate> takes) {

    public Within {
      groups = List.copyOf(groups);
      takes = Collections.unmodifiableMap(new LinkedHashMap<>(takes));
    }
  }

  /**
   * Cultivars whose take within groups is surely another one than over all records, and by half the
   * margin or more.
   *
   * @return in the order of {@link #cultivars}; empty where there is nothing to compare within
   */
  public List<CultivarTake> otherWithin() {
    return cultivars.stream().filter(this::isOtherWithin).toList();
  }

  private boolean isOtherWithin(CultivarTake cultivar) {
    return within
        .map(found -> found.takes().get(cultivar.cultivar()))
        .filter(take -> !take.interval().contains(cultivar.take().value()))
        .filter(take -> Math.abs(take.value() - cultivar.take().value()) >= options.margin() / 2)
        .isPresent();
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
