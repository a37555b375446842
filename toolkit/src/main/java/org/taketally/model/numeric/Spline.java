package org.taketally.model.numeric;

import java.util.Arrays;
import org.taketally.terms.SampleQuantiles;

/**
 * Natural cubic spline basis without constant: cubic between knots, straight outside them.
 *
 * <p>Truncated-power form, Hastie, Tibshirani and Friedman (2009), The Elements of Statistical
 * Learning, eq. 5.4, on x scaled so that the outer knots lie at 0 and 1.
 */
public final class Spline {

  private final double[] knots;

  private Spline(double[] knots) {
    this.knots = knots;
  }

  /**
   * Knots at the ends and at equally spaced quantiles of the grafts between.
   *
   * @return null if the column has too few distinct values for so many knots
   */
  public static Spline through(double[] values, int[] grafts, int degreesOfFreedom) {
    Integer[] order = new Integer[values.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, (a, b) -> Double.compare(values[a], values[b]));
    double[] sorted = new double[values.length];
    long[] upTo = new long[values.length];
    long total = 0;
    for (int i = 0; i < values.length; i++) {
      sorted[i] = values[order[i]];
      total += grafts[order[i]];
      upTo[i] = total;
    }
    double[] knots = new double[degreesOfFreedom + 1];
    for (int k = 0; k <= degreesOfFreedom; k++) {
      knots[k] = SampleQuantiles.of(sorted, upTo, (double) k / degreesOfFreedom);
      if (k > 0 && !(knots[k] > knots[k - 1])) {
        return null;
      }
    }
    return new Spline(knots);
  }

  public int width() {
    return knots.length - 1;
  }

  /** Basis values at x into {@code row}, from {@code at}. */
  public void fill(double x, double[] row, int at) {
    int last = knots.length - 1;
    double span = knots[last] - knots[0];
    row[at] = (x - knots[0]) / span;
    double tail = ratio(x, last - 1, span);
    for (int k = 0; k < last - 1; k++) {
      row[at + 1 + k] = ratio(x, k, span) - tail;
    }
  }

  private double ratio(double x, int k, double span) {
    int last = knots.length - 1;
    double here = Math.max(0, (x - knots[k]) / span);
    double end = Math.max(0, (x - knots[last]) / span);
    return (here * here * here - end * end * end) / ((knots[last] - knots[k]) / span);
  }
}
