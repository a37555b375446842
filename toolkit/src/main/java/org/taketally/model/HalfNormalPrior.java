package org.taketally.model;

/**
 * Half-normal.
 *
 * @param scale logits, above 0
 */
record HalfNormalPrior(double scale) implements Prior {

  @Override
  public double logDensity(double sd) {
    return -sd * sd / (2 * scale * scale);
  }
}
