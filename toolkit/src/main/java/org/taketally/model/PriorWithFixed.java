package org.taketally.model;

/**
 * A prior with a belief of fixed effects of its own.
 *
 * @param sds prior of standard deviations
 * @param fixed belief of fixed effects
 */
record PriorWithFixed(Prior sds, Prior.Fixed fixed) implements Prior {

  @Override
  public double logDensity(double sd) {
    return sds.logDensity(sd);
  }
}
