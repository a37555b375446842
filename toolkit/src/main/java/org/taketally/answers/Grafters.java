package org.taketally.answers;

import java.util.List;
import org.taketally.answers.counts.TakeCount;
import org.taketally.terms.Interval;

/**
 * Each grafter's take had all grafted the same mix. Shown by letters unless names were asked for.
 *
 * @param grafters highest adjusted take first
 * @param named whether {@code shownAs} holds names
 * @param typical typical difference between two grafters, 0 to 1
 * @param tally grafts and takes behind it
 * @param options level used
 */
public record Grafters(
    List<GrafterTake> grafters,
    boolean named,
    Estimate typical,
    TakeCount tally,
    AnswerOptions options) {

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
}
