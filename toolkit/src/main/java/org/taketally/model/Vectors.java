package org.taketally.model;

/** Small vector arithmetic. */
final class Vectors {

  private Vectors() {}

  static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  /** a + scale * b. */
  static double[] plus(double[] a, double scale, double[] b) {
    double[] sum = new double[a.length];
    for (int i = 0; i < a.length; i++) {
      sum[i] = a[i] + scale * b[i];
    }
    return sum;
  }
}
