package org.taketally.model.numeric;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Nodes and weights for integrals against the standard normal density.
 *
 * @param nodes z, from the highest to the lowest
 * @param weights sum 1
 * @param logWeights log of the weight times exp(z^2 / 2), for adaptive use
 */
public record GaussHermite(double[] nodes, double[] weights, double[] logWeights) {

  /** In closed form where it is needed most, else searched for. */
  public static GaussHermite of(int count) {
    return count == 5 ? five() : searched(count);
  }

  private static GaussHermite five() {
    double root10 = Math.sqrt(10);
    double near = Math.sqrt(5 - root10);
    double far = Math.sqrt(5 + root10);
    double more = (7 + 2 * root10) / 60;
    double less = (7 - 2 * root10) / 60;
    double[] nodes = {far, near, 0, -near, -far};
    double[] weights = {less, more, 8.0 / 15, more, less};
    double[] logWeights = new double[nodes.length];
    Arrays.setAll(logWeights, i -> Math.log(weights[i]) + nodes[i] * nodes[i] / 2);
    return new GaussHermite(nodes, weights, logWeights);
  }

  /**
   * Newton's method on orthonormal Hermite functions; Press et al. (2007), Numerical Recipes,
   * section 4.6.2.
   */
  private static GaussHermite searched(int count) {
    double[] nodes = new double[count];
    double[] logWeights = new double[count];
    double x = 0;
    for (int i = 0; i < (count + 1) / 2; i++) {
      x = guess(i, count, x, nodes);
      double slope = 1;
      for (int iteration = 0; iteration < 200; iteration++) {
        double[] values = hermite(count, x);
        slope = Math.sqrt(2.0 * count) * values[1];
        double step = values[0] / slope;
        x -= step;
        if (Math.abs(step) < 1e-14) {
          break;
        }
      }
      nodes[i] = x;
      nodes[count - 1 - i] = -x;
      logWeights[i] = Math.log(2 / (slope * slope)) + x * x - Math.log(Math.PI) / 2;
      logWeights[count - 1 - i] = logWeights[i];
    }
    for (int i = 0; i < count; i++) {
      nodes[i] *= Math.sqrt(2);
    }
    double[] weights = new double[count];
    Arrays.setAll(weights, i -> Math.exp(logWeights[i] - nodes[i] * nodes[i] / 2));
    return new GaussHermite(nodes, weights, logWeights);
  }

  /** Mean of a function of N(mean, sd^2); nodes on both sides are taken together. */
  public double average(double mean, double sd, DoubleUnaryOperator function) {
    int pairs = nodes.length / 2;
    double sum = nodes.length % 2 == 0 ? 0 : weights[pairs] * function.applyAsDouble(mean);
    for (int i = pairs - 1; i >= 0; i--) {
      sum +=
          weights[i]
              * (function.applyAsDouble(mean - nodes[i] * sd)
                  + function.applyAsDouble(mean + nodes[i] * sd));
    }
    return sum;
  }

  private static double guess(int i, int count, double last, double[] nodes) {
    return switch (i) {
      case 0 -> Math.sqrt(2.0 * count + 1) - 1.85575 * Math.pow(2.0 * count + 1, -0.16667);
      case 1 -> last - 1.14 * Math.pow(count, 0.426) / last;
      case 2 -> 1.86 * last - 0.86 * nodes[0];
      case 3 -> 1.91 * last - 0.91 * nodes[1];
      default -> 2 * last - nodes[i - 2];
    };
  }

  /** Orthonormal Hermite polynomials of degrees count and count - 1. */
  private static double[] hermite(int count, double x) {
    double before = 0;
    double here = Math.pow(Math.PI, -0.25);
    for (int j = 0; j < count; j++) {
      double next = x * Math.sqrt(2.0 / (j + 1)) * here - Math.sqrt((double) j / (j + 1)) * before;
      before = here;
      here = next;
    }
    return new double[] {here, before};
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return nodes.length;
  }
}
