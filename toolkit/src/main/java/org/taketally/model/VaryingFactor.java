package org.taketally.model;

import java.util.List;

/**
 * A column whose levels deviate at random from the middle.
 *
 * @param factor column name
 * @param levels levels with grafts in the cells used
 * @param standardDeviation of the deviations, logits, 0 or more
 * @param modes most likely deviation per level, logits
 * @param conditionalSds spread of each deviation given the standard deviations and fixed effects,
 *     logits
 * @param grafts grafts per level
 * @param takes takes per level
 */
public record VaryingFactor(
    String factor,
    List<String> levels,
    double standardDeviation,
    double[] modes,
    double[] conditionalSds,
    long[] grafts,
    long[] takes) {

  public VaryingFactor {
    levels = List.copyOf(levels);
  }
}
