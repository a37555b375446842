package org.taketally.model.numeric;

/**
 * Small vector arithmetic. Products are summed in four sums side by side, because a processor can't
 * begin an addition before the one it depends on has ended.
 */
public final class Vectors {

  private Vectors() {}

  public static double dot(double[] a, double[] b) {
    return dot(a, 0, b, 0, a.length);
  }

  /** Of {@code count} numbers of each, from these places on. */
  public static double dot(double[] a, int aFrom, double[] b, int bFrom, int count) {
    double s0 = 0;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    int i = 0;
    for (; i < count - 3; i += 4) {
      s0 += a[aFrom + i] * b[bFrom + i];
      s1 += a[aFrom + i + 1] * b[bFrom + i + 1];
      s2 += a[aFrom + i + 2] * b[bFrom + i + 2];
      s3 += a[aFrom + i + 3] * b[bFrom + i + 3];
    }
    for (; i < count; i++) {
      s0 += a[aFrom + i] * b[bFrom + i];
    }
    return s0 + s1 + (s2 + s3);
  }

  /** Sum of a[i] * b[place[i]] over {@code from} to {@code to - 1}. */
  public static double dotAt(double[] a, double[] b, int[] place, int from, int to) {
    double s0 = 0;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    int i = from;
    for (; i < to - 3; i += 4) {
      s0 += a[i] * b[place[i]];
      s1 += a[i + 1] * b[place[i + 1]];
      s2 += a[i + 2] * b[place[i + 2]];
      s3 += a[i + 3] * b[place[i + 3]];
    }
    for (; i < to; i++) {
      s0 += a[i] * b[place[i]];
    }
    return s0 + s1 + (s2 + s3);
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
