package org.taketally.answers.counts;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.taketally.terms.Interval;

/**
 * Two lots of grafts compared within strata: Mantel and Haenszel's way, which can be followed by
 * hand. Strata that say nothing are left out of each figure: those with one lot only, and for odds
 * ratios those where all grafts took or all failed.
 *
 * <pre>
 *   a, b, c, d, n   the four counts of a stratum and their sum, see {@link Stratum}
 *   R = a d / n     S = b c / n     P = (a + d) / n     Q = (b + c) / n
 *   w = n1 n2 / n   weight of a stratum's difference
 * </pre>
 */
public final class StratifiedTable {

  private final List<Stratum> strata;

  private StratifiedTable(List<Stratum> strata) {
    this.strata = List.copyOf(strata);
  }

  /**
   * A stratified table.
   *
   * @param strata any number, each named
   * @return the table
   */
  public static StratifiedTable of(List<Stratum> strata) {
    return new StratifiedTable(strata);
  }

  /**
   * All strata as given.
   *
   * @return in the order given
   */
  public List<Stratum> strata() {
    return strata;
  }

  /**
   * The strata that say something about the odds ratio.
   *
   * @return in the order given
   */
  public List<Stratum> informative() {
    return strata.stream().filter(Stratum::isInformative).toList();
  }

  /**
   * Mantel-Haenszel odds ratio of taking, first lot against second, with the interval of Robins,
   * Breslow and Greenland.
   *
   * @param coverage coverage, strictly between 0 and 1, e.g. 0.95
   * @return the ratio, above 0; empty if no stratum is informative or the ratio is 0 or infinite
   * @see <a href="https://doi.org/10.1093/jnci/22.4.719">Mantel and Haenszel (1959)</a>
   * @see <a href="https://doi.org/10.2307/2531052">Robins, Breslow and Greenland (1986)</a>
   */
  public Optional<PooledEstimate> oddsRatio(double coverage) {
    double z = Quantiles.twoSided(coverage);
    double ratio = ratio();
    if (!(ratio > 0) || Double.isInfinite(ratio)) {
      return Optional.empty();
    }
    double half = z * Math.sqrt(varianceOfLogRatio());
    Interval interval = new Interval(ratio * Math.exp(-half), ratio * Math.exp(half), coverage);
    return Optional.of(new PooledEstimate(ratio, interval, agreement()));
  }

  private double ratio() {
    return sum(informative(), StratifiedTable::r) / sum(informative(), StratifiedTable::s);
  }

  private double varianceOfLogRatio() {
    List<Stratum> used = informative();
    double sumR = sum(used, StratifiedTable::r);
    double sumS = sum(used, StratifiedTable::s);
    return sum(used, k -> p(k) * r(k)) / (2 * sumR * sumR)
        + sum(used, k -> p(k) * s(k) + q(k) * r(k)) / (2 * sumR * sumS)
        + sum(used, k -> q(k) * s(k)) / (2 * sumS * sumS);
  }

  /**
   * Mantel-Haenszel difference in take, first lot minus second, with Sato's interval. Strata where
   * all took or all failed count here: their difference is 0.
   *
   * @param coverage coverage, strictly between 0 and 1, e.g. 0.95
   * @return the difference, -1 to 1, limits cut to that; empty if no stratum has both lots
   * @see "Greenland and Robins (1985), Biometrics 41, 55-68"
   * @see "Sato (1989), Biometrics 45, 1323-1324"
   */
  public Optional<PooledEstimate> difference(double coverage) {
    double z = Quantiles.twoSided(coverage);
    List<Stratum> used = strata.stream().filter(Stratum::hasBoth).toList();
    if (used.isEmpty()) {
      return Optional.empty();
    }
    double weights = sum(used, StratifiedTable::weight);
    double difference =
        sum(used, k -> weight(k) * (k.first().rate() - k.second().rate())) / weights;
    double variance =
        (difference * sum(used, StratifiedTable::satoP) + sum(used, StratifiedTable::satoQ))
            / (weights * weights);
    double half = z * Math.sqrt(Math.max(0, variance));
    Interval interval =
        new Interval(Math.max(-1, difference - half), Math.min(1, difference + half), coverage);
    return Optional.of(new PooledEstimate(difference, interval, agreement()));
  }

  /**
   * Cochran, Mantel and Haenszel's test that the lots take alike within all strata.
   *
   * @param corrected with continuity correction
   * @return chi-square with 1 degree of freedom; empty if no stratum is informative
   * @see <a href="https://doi.org/10.1093/jnci/22.4.719">Mantel and Haenszel (1959)</a>
   */
  public Optional<ChiSquare> test(boolean corrected) {
    List<Stratum> used = informative();
    if (used.isEmpty()) {
      return Optional.empty();
    }
    double gap = Math.abs(sum(used, k -> k.first().takes() - k.expectedTakes()));
    double kept = corrected && gap >= 0.5 ? gap - 0.5 : gap;
    return Optional.of(new ChiSquare(kept * kept / sum(used, Stratum::varianceOfTakes), 1));
  }

  /**
   * Breslow and Day's test that all strata share the Mantel-Haenszel odds ratio, and Tarone's
   * correction of it.
   *
   * @return the tests, or that there is too little to compare
   * @see "Breslow and Day (1980), IARC Scientific Publications 32, section 4.4"
   * @see <a href="https://doi.org/10.1093/biomet/72.1.91">Tarone (1985)</a>
   */
  public Agreement agreement() {
    List<Stratum> used = informative();
    double ratio = ratio();
    if (used.size() < 2 || !(ratio > 0) || Double.isInfinite(ratio)) {
      return new Agreement(used.size(), Optional.empty(), Optional.empty());
    }
    double breslowDay = 0;
    double gap = 0;
    double variance = 0;
    for (Stratum stratum : used) {
      double expected = stratum.takesAtOddsRatio(ratio);
      double own = stratum.varianceAbout(expected);
      double stray = stratum.first().takes() - expected;
      breslowDay += stray * stray / own;
      gap += stray;
      variance += own;
    }
    double tarone = Math.max(0, breslowDay - gap * gap / variance);
    int df = used.size() - 1;
    return new Agreement(
        used.size(),
        Optional.of(new ChiSquare(breslowDay, df)),
        Optional.of(new ChiSquare(tarone, df)));
  }

  private static double sum(List<Stratum> strata, ToDoubleFunction<Stratum> term) {
    return strata.stream().mapToDouble(term).sum();
  }

  private static double r(Stratum k) {
    return (double) k.first().takes() * k.second().failures() / k.grafts();
  }

  private static double s(Stratum k) {
    return (double) k.first().failures() * k.second().takes() / k.grafts();
  }

  private static double p(Stratum k) {
    return (double) (k.first().takes() + k.second().failures()) / k.grafts();
  }

  private static double q(Stratum k) {
    return (double) (k.first().failures() + k.second().takes()) / k.grafts();
  }

  private static double weight(Stratum k) {
    return (double) k.first().grafts() * k.second().grafts() / k.grafts();
  }

  private static double satoP(Stratum k) {
    double n1 = k.first().grafts();
    double n2 = k.second().grafts();
    double n = n1 + n2;
    return (n1 * n1 * k.second().takes() - n2 * n2 * k.first().takes() + n1 * n2 * (n2 - n1) / 2)
        / (n * n);
  }

  private static double satoQ(Stratum k) {
    return ((double) k.first().takes() * k.second().failures()
            + (double) k.second().takes() * k.first().failures())
        / (2.0 * k.grafts());
  }
}
