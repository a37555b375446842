package org.taketally.model;

import org.taketally.terms.Interval;

/**
 * A fixed effect on the logit scale.
 *
 * @param term column name, or {@value #INTERCEPT}
 * @param level the level compared with the base; empty for the intercept and straight lines; {@code
 *     curve 1}, ... for the parts of a curve
 * @param estimate logits (per unit, for straight lines)
 * @param standardError logits, above 0
 * @param interval Wald interval, logits
 */
public record FixedEffect(
    String term, String level, double estimate, double standardError, Interval interval) {

  /** Term name of the intercept. */
  public static final String INTERCEPT = "intercept";

  /**
   * Term and level in one.
   *
   * @return e.g. {@code method: chip-bud}
   */
  public String name() {
    return level.isEmpty() ? term : term + ": " + level;
  }
}
