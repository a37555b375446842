package org.taketally.answers.effects;

import java.util.List;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.Question;
import org.taketally.answers.counts.TakeCount;
import org.taketally.terms.Interval;

/**
 * Each grafter's take had all grafted the same mix. Shown by letters unless names were asked for.
 *
 * @param grafters highest adjusted take first; empty if the model can't compare them
 * @param named whether {@code shownAs} holds names
 * @param typical typical difference between two grafters, 0 to 1; 0 with fewer than two
 * @param tally grafts and takes behind it
 * @param options level used
 */
public record Grafters(
    List<GrafterTake> grafters,
    boolean named,
    Estimate typical,
    TakeCount tally,
    AnswerOptions options)
    implements Answer {

  public Grafters {
    grafters = List.copyOf(grafters);
  }

  /**
   * One grafter.
   *
   * @param shownAs letter or name
   * @param tally grafts and takes
   * @param counted Wilson interval of the counted take, 0 to 1
   * @param take adjusted take over the mix of all records, 0 to 1
   * @param difference adjusted take minus that of the average grafter, -1 to 1
   */
  public record GrafterTake(
      String shownAs, TakeCount tally, Interval counted, Estimate take, Estimate difference) {}

  @Override
  public Question question() {
    return Question.GRAFTERS;
  }
}
