package org.taketally.answers.counts;

import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.taketally.answers.AnswerOptions;

/**
 * Takes of levels by their counts alone, nothing adjusted: draws from the Beta distribution that
 * Jeffreys' prior gives, used where no model can be fitted because none or all took.
 */
public final class CountedTakes {

  private CountedTakes() {}

  /** One row a draw, one take a level. */
  public static double[][] draws(TakeCount[] counts, AnswerOptions options) {
    RandomGenerator random = new Well19937c(options.seed());
    double[][] takes = new double[options.draws()][counts.length];
    for (int l = 0; l < counts.length; l++) {
      BetaDistribution beta =
          new BetaDistribution(random, counts[l].takes() + 0.5, counts[l].failures() + 0.5);
      for (double[] row : takes) {
        row[l] = beta.sample();
      }
    }
    return takes;
  }
}
