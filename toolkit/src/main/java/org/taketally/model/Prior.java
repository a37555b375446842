package org.taketally.model;

/**
 * What is believed of a standard deviation (logits), and of fixed effects, before the records are
 * seen. Used by draws only; the fit itself has no prior.
 */
public interface Prior {

  /** What is believed of fixed effects. */
  enum Fixed {
    /** Every value alike. With few grafts a level, draws then lie further out than the records. */
    FLAT,
    /**
     * In proportion to the root of the information the records hold (Jeffreys), given the standard
     * deviations: draws then centre on the fit, and ranges hold as often as they say also with few
     * grafts a level.
     *
     * @see "Welch and Peers (1963), Journal of the Royal Statistical Society B 25, 318-329"
     */
    JEFFREYS
  }

  /**
   * Log density, up to a constant.
   *
   * @param sd standard deviation, above 0, logits
   * @return log density
   */
  double logDensity(double sd);

  /**
   * What is believed of fixed effects.
   *
   * @return flat, unless changed
   */
  default Fixed fixed() {
    return Fixed.FLAT;
  }

  /**
   * The same of standard deviations, with another belief of fixed effects.
   *
   * @param other the belief
   * @return the prior
   */
  default Prior fixed(Fixed other) {
    return new WithFixed(this, other);
  }

  /**
   * What draws take unless told otherwise.
   *
   * @return half-normal with scale 1, fixed effects by {@link Fixed#JEFFREYS}
   */
  static Prior usual() {
    return halfNormal(1).fixed(Fixed.JEFFREYS);
  }

  /**
   * Half-normal: the usual choice. With scale 1, two in three standard deviations lie below 1
   * logit, and above 2 hardly any.
   *
   * @param scale logits, above 0
   * @return the prior
   * @see <a href="https://doi.org/10.1214/06-BA117A">Gelman (2006)</a>
   */
  static Prior halfNormal(double scale) {
    if (!(scale > 0)) {
      throw new IllegalArgumentException("scale must be above 0, got " + scale);
    }
    return new HalfNormal(scale);
  }

  /**
   * Flat on the standard deviation.
   *
   * @return the prior; improper, needs at least three levels
   */
  static Prior flat() {
    return sd -> 0;
  }

  /**
   * Gamma on the precision 1/sd^2, for comparison with older published analyses.
   *
   * @param shape above 0
   * @param rate above 0
   * @return the prior
   */
  static Prior gammaOnPrecision(double shape, double rate) {
    if (!(shape > 0 && rate > 0)) {
      throw new IllegalArgumentException(
          "shape and rate must be above 0, got %s and %s".formatted(shape, rate));
    }
    return sd -> -(2 * shape + 1) * Math.log(sd) - rate / (sd * sd);
  }

  /**
   * Half-normal; equal where scales are, so that draws made once are known again.
   *
   * @param scale logits, above 0
   */
  record HalfNormal(double scale) implements Prior {

    @Override
    public double logDensity(double sd) {
      return -sd * sd / (2 * scale * scale);
    }
  }

  /**
   * A prior with a belief of fixed effects of its own.
   *
   * @param sds prior of standard deviations
   * @param fixed belief of fixed effects
   */
  record WithFixed(Prior sds, Fixed fixed) implements Prior {

    @Override
    public double logDensity(double sd) {
      return sds.logDensity(sd);
    }
  }
}
