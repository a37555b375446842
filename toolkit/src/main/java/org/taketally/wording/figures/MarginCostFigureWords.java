package org.taketally.wording.figures;

import org.taketally.answers.verdict.MarginCost;
import org.taketally.wording.Wording;
import org.taketally.wording.Words;

/** The figure of what a drop in take costs in words. */
public final class MarginCostFigureWords {

  /** What is shown. */
  public static final String SUBTITLE = "Cost of a saleable tree, by how far take drops";

  /** What the axis shows. */
  public static final String AXIS = "cost of a saleable tree";

  private final MarginCost cost;

  /**
   * The words of a figure.
   *
   * @param cost the figure shows
   */
  public MarginCostFigureWords(MarginCost cost) {
    this.cost = cost;
  }

  /**
   * The title, which is what was found.
   *
   * @return a sentence without a full stop
   */
  public String title() {
    return "%s less make a tree %s dearer"
        .formatted(Words.points(cost.margin()), Words.percent(cost.atMargin().dearerBy()));
  }

  /**
   * The figure for those who can't see it.
   *
   * @return a few sentences
   */
  public String description() {
    return SUBTITLE + ". " + Wording.of(cost).headline();
  }

  /**
   * A line.
   *
   * @param drop in take, 0 to 1
   * @return a few words
   */
  public String label(MarginCost.Drop drop) {
    return drop.points() == 0
        ? "take as it is, " + Words.percent(cost.take())
        : Words.points(drop.points()) + " less, " + Words.percent(drop.take());
  }
}
