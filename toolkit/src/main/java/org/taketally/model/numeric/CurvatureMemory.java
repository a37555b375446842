package org.taketally.model.numeric;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * What the last few steps taught of the curvature: the information at the current point, corrected
 * by them so that it explains the changes of the gradient they met (BFGS with limited memory;
 * Nocedal and Wright 2006, sections 6.1 and 7.2). Small matrices: parameters, not levels.
 */
public final class CurvatureMemory {

  private static final int KEPT = 8;

  private record Change(double[] step, double[] slopeLost) {}

  private final Deque<Change> changes = new ArrayDeque<>();

  public boolean isEmpty() {
    return changes.isEmpty();
  }

  public void clear() {
    changes.clear();
  }

  /** Keeps a step if the slope along it fell. */
  public void remember(double[] step, double[] slopeLost) {
    if (Vectors.dot(step, slopeLost) > 1e-10 * lengths(step, slopeLost)) {
      changes.addLast(new Change(step, slopeLost));
      if (changes.size() > KEPT) {
        changes.removeFirst();
      }
    }
  }

  /**
   * The corrected curvature.
   *
   * @param information at the current point; not changed
   */
  public double[][] correct(double[][] information) {
    double[][] curvature = new double[information.length][];
    for (int i = 0; i < curvature.length; i++) {
      curvature[i] = information[i].clone();
    }
    for (Change change : changes) {
      update(curvature, change);
    }
    return curvature;
  }

  private static void update(double[][] curvature, Change change) {
    double[] bent = new double[curvature.length];
    for (int i = 0; i < bent.length; i++) {
      bent[i] = Vectors.dot(curvature[i], change.step());
    }
    double supposed = Vectors.dot(bent, change.step());
    double met = Vectors.dot(change.slopeLost(), change.step());
    if (!(supposed > 1e-10 * lengths(bent, change.step()))) {
      return;
    }
    for (int i = 0; i < bent.length; i++) {
      double[] row = curvature[i];
      for (int j = 0; j < bent.length; j++) {
        row[j] +=
            change.slopeLost()[i] * change.slopeLost()[j] / met - bent[i] * bent[j] / supposed;
      }
    }
  }

  private static double lengths(double[] a, double[] b) {
    return Math.sqrt(Vectors.dot(a, a) * Vectors.dot(b, b));
  }
}
