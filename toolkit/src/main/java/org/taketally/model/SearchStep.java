package org.taketally.model;

import java.util.List;

/**
 * One line of the search log.
 *
 * @param step 0 for the start
 * @param logLikelihood of single grafts, at this step
 * @param gainLeft log-likelihood the next step promises, 0 or more
 * @param standardDeviations of the varying columns, in the model's order, logits
 */
public record SearchStep(
    int step, double logLikelihood, double gainLeft, List<Double> standardDeviations) {

  public SearchStep {
    standardDeviations = List.copyOf(standardDeviations);
  }
}
