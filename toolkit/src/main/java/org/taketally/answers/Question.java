package org.taketally.answers;

/** What an answer answers. Its words are in {@code wording}. */
public enum Question {
  /** Whether one level of a column, such as a fridge batch, stands apart from all others. */
  LEVEL_APART,
  /** Whether the levels of one column, usually the rootstock, take differently. */
  DOES_IT_MATTER,
  /** Whether levels taken together, as planned in advance, take differently from others. */
  CONTRASTS,
  /** What a drop in take costs. */
  MARGIN_COST,
  /** Which cultivars are hard to get to take. */
  DIFFICULTY,
  /** Every factor on one scale. */
  IMPORTANCE,
  /** How take changes with a number, such as days of storage. */
  CURVE,
  /** How many takes are lost later. */
  LATE_LOSS,
  /** Whether a cultivar fails on one rootstock alone. */
  PAIRINGS,
  /** Whether it is the hand or the wood. */
  GRAFTERS,
  /** Whether a block of a site does worse. */
  BLOCKS,
  /** What was compared with what. */
  CONFOUNDING,
  /** Whether the model fits. */
  FIT,
  /** Whether another way of predicting does better. */
  SECOND_OPINIONS,
  /** How many took, as counted. */
  COUNTS
}
