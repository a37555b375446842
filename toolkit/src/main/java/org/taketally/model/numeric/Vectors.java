package org.taketally.model.numeric;

/** Small vector arithmetic. */
public final class Vectors {

  private Vectors() {}

  public static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  /** a + scale * b. */
  public static double[] plus(double[] a, double scale, double[] b) {
    double[] sum = new double[a.length];
    for (int i = 0; i < a.length; i++) {
      sum[i] = a[i] + scale * b[i];
    }
    return sum;
  }
}
