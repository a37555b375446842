package org.taketally.answers.prediction;

/** A way of predicting takes of some cells from the others. */
interface Forecaster {

  /** What it is. */
  SecondOpinions.Way way();

  /**
   * Chances of take.
   *
   * @param held which cells are kept from it
   * @return one a cell, 0 to 1; those of cells not held are of no use
   */
  double[] takes(boolean[] held);

  /**
   * How well each cultivar takes, from all cells, on any rising scale.
   *
   * @return one a cultivar level of the cells; NaN for levels without grafts; empty if it can't say
   */
  double[] cultivars();
}
