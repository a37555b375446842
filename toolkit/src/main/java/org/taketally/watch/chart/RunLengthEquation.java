package org.taketally.watch.chart;

import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * Average run length of a chart whose state moves on an interval and may also be put back to zero.
 *
 * <pre>
 *   L(z) = 1 + r(z) L(0) + integral over [a, b] of L(x) k(z, x) dx
 *   k   density of the next state x from z       r   chance of being put back to 0
 * </pre>
 *
 * <p>Solved by Gauss-Legendre quadrature with {@value #NODES} nodes (Nystrom's method).
 *
 * @see "Crowder (1987), Technometrics 29, 401-407"
 */
final class RunLengthEquation {

  private static final int NODES = 120;

  /** Nodes and weights from -1 to 1; working them out takes longer than an equation. */
  private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(NODES);

  private final double low;
  private final double high;
  private final DoubleBinaryOperator density;
  private final DoubleUnaryOperator putBack;

  /**
   * An equation.
   *
   * @param low lowest state within the limits
   * @param high highest state within the limits
   * @param density of the next state (second argument) from a state (first argument)
   * @param putBack chance of the next state being exactly 0
   */
  RunLengthEquation(
      double low, double high, DoubleBinaryOperator density, DoubleUnaryOperator putBack) {
    this.low = low;
    this.high = high;
    this.density = density;
    this.putBack = putBack;
  }

  /** Average number of steps to the alarm from state 0. */
  double fromZero() {
    double half = (high - low) / 2;
    double[] state = new double[NODES + 1];
    double[] weight = new double[NODES + 1];
    for (int j = 0; j < NODES; j++) {
      state[j + 1] = RULE.getPoint(j) * half + low + half;
      weight[j + 1] = RULE.getWeight(j) * half;
    }
    double[][] left = new double[NODES + 1][NODES + 1];
    double[] ones = new double[NODES + 1];
    for (int i = 0; i <= NODES; i++) {
      ones[i] = 1;
      left[i][i] = 1;
      left[i][0] -= putBack.applyAsDouble(state[i]);
      for (int j = 1; j <= NODES; j++) {
        left[i][j] -= weight[j] * density.applyAsDouble(state[i], state[j]);
      }
    }
    return new LUDecomposition(new Array2DRowRealMatrix(left, false))
        .getSolver()
        .solve(new ArrayRealVector(ones, false))
        .getEntry(0);
  }
}
