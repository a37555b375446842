package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.counts.TakeCount;
import org.taketally.model.TakeFit;

/**
 * Every factor on one scale: pick two grafts at random that differ in this factor and in nothing
 * else; how far apart are their takes on average?
 *
 * @param movers largest first
 * @param tally grafts and takes behind it
 * @param options level used
 */
public record WhatMovesTake(List<Mover> movers, TakeCount tally, AnswerOptions options)
    implements Answer {

  public WhatMovesTake {
    movers = List.copyOf(movers);
  }

  /** How a factor stands in the model. */
  public enum Kind {
    /** Levels of their own, e.g. method. */
    LEVELS,
    /** A number. */
    NUMBER,
    /** Levels taken as a sample of many, e.g. cultivar. */
    VARYING
  }

  /**
   * One factor.
   *
   * @param factor column of the records
   * @param kind how it stands in the model
   * @param levels number of levels in the records; for a number, of distinct values
   * @param typical typical difference between two grafts that differ in it, 0 to 1 (0.04 is 4
   *     points)
   * @param best the level, or value, with the highest take
   * @param worst the level, or value, with the lowest; numbers: within the middle nine tenths of
   *     the grafts
   * @param span take at {@code best} minus take at {@code worst}, 0 to 1
   * @param compared whether it is the factor the question is about
   * @param sentence the same in words
   */
  public record Mover(
      String factor,
      Kind kind,
      int levels,
      Estimate typical,
      String best,
      String worst,
      Estimate span,
      boolean compared,
      String sentence) {}

  /**
   * Works it out from a fit.
   *
   * @param fit any fit
   * @param options level, draws, seed
   * @return the answer
   */
  public static WhatMovesTake of(TakeFit fit, AnswerOptions options) {
    return Movers.of(new Averaging(fit, options), options);
  }

  @Override
  public String title() {
    return "What moves take?";
  }

  @Override
  public String headline() {
    String from = ", from " + Words.count(tally.grafts(), "graft") + ".";
    if (movers.isEmpty()) {
      return "Nothing in these records varies that could move take" + from;
    }
    List<String> first =
        movers.stream().limit(3).map(m -> Words.column(m.factor()) + " " + size(m)).toList();
    String rest =
        movers.stream()
            .skip(3)
            .filter(Mover::compared)
            .map(
                m ->
                    "; %s comes %s of %d %s"
                        .formatted(
                            Words.column(m.factor()),
                            Words.place(movers.indexOf(m) + 1),
                            movers.size(),
                            size(m)))
            .findFirst()
            .orElse("");
    return "What moves take most: " + Words.list(first) + rest + from;
  }

  private static String size(Mover mover) {
    return "(typically %s, likely %s)"
        .formatted(Words.points(mover.typical().value()), Words.points(mover.typical().interval()));
  }

  @Override
  public String text() {
    List<String> lines = new ArrayList<>(List.of(headline()));
    if (!movers.isEmpty()) {
      lines.add(
          "How far apart the takes of two grafts typically are that differ in one thing only, then"
              + " from its worst to its best, over the conditions in these records:");
    }
    movers.forEach(mover -> lines.add(mover.sentence()));
    lines.add("This shows what goes with take here, which is not always what causes it.");
    return String.join("\n", lines);
  }

  @Override
  public AnswerTable table() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "what-moves-take",
            "What moves take, largest first",
            AnswerColumn.FACTOR,
            AnswerColumn.LEVELS,
            AnswerColumn.DIFFERENCE,
            AnswerColumn.DIFFERENCE_LOW,
            AnswerColumn.DIFFERENCE_HIGH,
            AnswerColumn.BEST,
            AnswerColumn.WORST,
            AnswerColumn.LARGEST,
            AnswerColumn.LARGEST_LOW,
            AnswerColumn.LARGEST_HIGH,
            AnswerColumn.COMPARED);
    for (Mover m : movers) {
      table.row(m.factor(), m.levels(), m.typical(), m.best(), m.worst(), m.span(), m.compared());
    }
    return table.build();
  }
}
