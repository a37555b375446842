package org.taketally.answers.counts;

/**
 * Score statistic for a supposed difference of two take rates.
 *
 * <pre>
 *   x1, n1, x2, n2   takes and grafts           delta   supposed difference p1 - p2
 *   r1, r2           rates of largest likelihood with r1 - r2 = delta
 *   v                r1(1-r1)/n1 + r2(1-r2)/n2
 *   score            (x1/n1 - x2/n2 - delta) / sqrt(v)
 *   c3 p^3 + c2 p^2 + c1 p + c0 = 0   has r2 as its middle root
 * </pre>
 *
 * @see <a href="https://doi.org/10.1002/sim.4780040211">Miettinen and Nurminen (1985), appendix</a>
 */
final class DifferenceScore {

  private final TakeCount first;
  private final TakeCount second;

  DifferenceScore(TakeCount first, TakeCount second) {
    this.first = first.assessed();
    this.second = second.assessed();
  }

  double difference() {
    return first.rate() - second.rate();
  }

  /** Mee's score: falls as delta rises; 0 at the counted difference. */
  double at(double delta) {
    return standardised(delta, variance(delta));
  }

  /** Miettinen and Nurminen's score. */
  double scaledAt(double delta) {
    double total = (double) first.grafts() + second.grafts();
    return standardised(delta, variance(delta) * total / (total - 1));
  }

  /** Gart and Nam's score: the root z of score = z + skewness * (z^2 - 1). */
  double skewnessCorrectedAt(double delta) {
    double r2 = secondRate(delta);
    double r1 = r2 + delta;
    double n1 = first.grafts();
    double n2 = second.grafts();
    double v = variance(delta);
    double thirdMoment =
        r1 * (1 - r1) * (1 - 2 * r1) / (n1 * n1) - r2 * (1 - r2) * (1 - 2 * r2) / (n2 * n2);
    double skewness = thirdMoment / (6 * v * Math.sqrt(v));
    double score = standardised(delta, v);
    if (!(Math.abs(skewness) > 1e-12)) {
      return score;
    }
    double root = 1 + 4 * skewness * (score + skewness);
    return root < 0 ? score : (Math.sqrt(root) - 1) / (2 * skewness);
  }

  private double standardised(double delta, double variance) {
    double gap = difference() - delta;
    return gap == 0 ? 0 : gap / Math.sqrt(variance);
  }

  private double variance(double delta) {
    double r2 = secondRate(delta);
    double r1 = Math.min(1, Math.max(0, r2 + delta));
    return r1 * (1 - r1) / first.grafts() + r2 * (1 - r2) / second.grafts();
  }

  private double secondRate(double delta) {
    double n1 = first.grafts();
    double n2 = second.grafts();
    double x2 = second.takes();
    double takes = first.takes() + x2;
    double c3 = n1 + n2;
    double c2 = (n1 + 2 * n2) * delta - c3 - takes;
    double c1 = (n2 * delta - c3 - 2 * x2) * delta + takes;
    double c0 = x2 * delta * (1 - delta);
    return Math.min(
        Math.min(1, 1 - delta), Math.max(Math.max(0, -delta), middleRoot(c3, c2, c1, c0)));
  }

  /** Trigonometric solution of a cubic with three real roots. */
  private static double middleRoot(double c3, double c2, double c1, double c0) {
    double shift = c2 / (3 * c3);
    double q = shift * shift * shift - c1 * c2 / (6 * c3 * c3) + c0 / (2 * c3);
    double size = Math.sqrt(Math.max(0, shift * shift - c1 / (3 * c3)));
    double p = q < 0 ? -size : size;
    if (p == 0) {
      return -shift;
    }
    double cosine = Math.max(-1, Math.min(1, q / (p * p * p)));
    double angle = (Math.PI + Math.acos(cosine)) / 3;
    return 2 * p * Math.cos(angle) - shift;
  }
}
