package org.taketally.figure;

/** How values along an axis are written. */
public enum Scale {
  /** Shares of 1 as percentages: 0.7 is 70 %. */
  PERCENT,
  /** Differences of shares in points, with their sign: 0.04 is +4. */
  POINTS,
  /** Plain numbers. */
  NUMBER;

  String words(double value) {
    return switch (this) {
      case PERCENT -> Math.round(100 * value) + " %";
      case POINTS -> DifferencesFigure.signedPoints(value);
      case NUMBER -> SvgElement.number(value);
    };
  }
}
