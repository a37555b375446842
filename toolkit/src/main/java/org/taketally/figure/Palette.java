package org.taketally.figure;

/**
 * The colours of all figures. Text has a contrast of at least 4.5:1 and every mark that carries
 * meaning at least 3:1 against {@link #PAPER} (tested); lightness differs enough to survive a grey
 * printer, and shape or words always say the same again.
 */
final class Palette {

  /** Background of every figure, so that it reads on light and dark surroundings. */
  static final String PAPER = "#fcfbf7";

  /** Main text and axis lines. */
  static final String INK = "#1f2a25";

  /** Secondary text. */
  static final String SOFT_INK = "#54605a";

  /** Hairlines and grid: decoration only. */
  static final String RULE = "#dcd8cb";

  /** Shaded zones; their edges are drawn in {@link #SOFT_INK}. */
  static final String SHADE = "#efe9d9";

  /** Main marks. */
  static final String LEAF = "#1f5c43";

  /** Intervals behind main marks. */
  static final String LEAF_SOFT = "#739483";

  /** The marks the question is about, such as rootstock. */
  static final String BARK = "#9a3d14";

  /** Intervals behind those. */
  static final String BARK_SOFT = "#c8794f";

  /** A middling case. */
  static final String STRAW = "#7a5c0a";

  /** Intervals behind that. */
  static final String STRAW_SOFT = "#a68a3c";

  /** Undecided. */
  static final String STONE = "#5c6670";

  /** Intervals behind that. */
  static final String STONE_SOFT = "#87919a";

  /** Fill of ribbons between two curves; the curves' edges carry the meaning. */
  static final String RIBBON = "#cfdfd3";

  private Palette() {}
}
