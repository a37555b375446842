package org.taketally.model;

import java.util.Arrays;
import org.taketally.model.numeric.Vectors;

/**
 * A part of the logit of take that fixed effects make: how much of each is in it. Found once, it
 * can be worked out draw by draw.
 */
public final class LogitPart {

  private final double[] weights;

  LogitPart(double[] weights) {
    this.weights = weights;
  }

  /**
   * Its value.
   *
   * @param beta fixed effects, in the order of the fit
   * @return logits
   */
  public double at(double[] beta) {
    return Vectors.dot(weights, beta);
  }

  /**
   * Together with another.
   *
   * @param share how much of the other, 1 for all of it
   * @param other of the same fit
   * @return the sum
   */
  public LogitPart plus(double share, LogitPart other) {
    return new LogitPart(Vectors.plus(weights, share, other.weights));
  }

  @Override
  public String toString() {
    return Arrays.toString(weights);
  }
}
