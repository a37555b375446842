package org.taketally.plan.layout;

/** How plots are put into blocks. */
public enum LayoutKind {
  /** Every pairing once in every session. */
  COMPLETE_BLOCKS,
  /** Every pairing once in each row (grafter) and each column (day). */
  LATIN_SQUARE,
  /** Sessions too short for all pairings; every pair of pairings meets equally often. */
  BALANCED_INCOMPLETE_BLOCKS,
  /** Sessions too short for all; groups of sessions hold every pairing once. */
  RESOLVABLE_INCOMPLETE_BLOCKS,
  /** Sessions too short for all, or not enough wood or stocks for equal numbers. */
  INCOMPLETE_BLOCKS,
  /** Stocks by the bed or tray, cultivars within. */
  SPLIT_PLOT
}
