package org.taketally.model;

import java.lang.ref.SoftReference;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.taketally.model.laplace.BlockLaplace;
import org.taketally.model.laplace.Engines;
import org.taketally.model.laplace.JointMode;
import org.taketally.model.laplace.LevelVector;
import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.numeric.LogLinearDensity;

/**
 * Posterior draws with the standard deviations integrated over design points.
 *
 * <p>Each point has weight p(y | theta) p(theta) / proposal, p(y | theta) by Laplace over beta
 * (flat prior) and deviations together; the prior of beta, if another, moves the means only. Points
 * are a Halton sequence through a proposal that is the product of the conditional densities along
 * each standard deviation from the fit's.
 */
final class PosteriorSampler {

  private static final int[] PRIMES = {2, 3, 5, 7, 11, 13, 17, 19, 23, 29};

  /** From this share of its levels' worth of information on, a spread counts as known. */
  private static final double KNOWN_FROM = 0.5;

  /** Proposals are wider than the density, so that no weight is large. */
  private static final double WIDER = 0.85;

  /** Up to so many cells, densities of standard deviations are measured, not supposed. */
  private static final int MEASURED_CELLS = 5_000;

  private static final int LARGE_CELLS = 100_000;
  private static final int LARGE_TOGETHER = 1_000;

  private record Weighted(double[] theta, double logWeight, LevelVector modes) {
    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return Arrays.hashCode(theta);
    }
  }

  /** How many points can be afforded; by cells, so that it doesn't depend on the machine. */
  private record Effort(int grid, int points, boolean shapes) {
    static Effort of(int cells, int together) {
      if (cells <= MEASURED_CELLS) {
        return new Effort(24, 128, false);
      }
      return isLarge(cells, together) ? new Effort(0, 1, true) : new Effort(12, 32, true);
    }
  }

  private final BlockLaplace engine;
  private final Engines engines;
  private final LikelihoodPoint fit;
  private final Prior prior;
  private final Effort effort;

  /** Worked out once: they depend on neither the number of draws nor the seed. */
  private List<Weighted> points;

  /** The last draws while memory lasts: several answers ask for the same. */
  private SoftReference<Drawn> last = new SoftReference<>(null);

  /** Draws made. */
  private record Drawn(int count, long seed, TakeDraws.Source source) {}

  PosteriorSampler(BlockLaplace engine, LikelihoodPoint fit, Prior prior, int cells) {
    this.engine = engine;
    this.engines = new Engines(engine);
    this.fit = fit;
    this.prior = prior;
    this.effort = Effort.of(cells, engine.together());
  }

  /** Whether looking for modes again takes so long that it is done once only. */
  static boolean isLarge(int cells, int together) {
    return cells > LARGE_CELLS || (cells > MEASURED_CELLS && together > LARGE_TOGETHER);
  }

  synchronized TakeDraws.Source source(int count, long seed) {
    if (fit.tau.length == 0 || effort.points() == 1) {
      return aroundFit(seed);
    }
    Drawn known = last.get();
    if (known == null || known.count() != count || known.seed() != seed) {
      known = new Drawn(count, seed, drawn(count, seed));
      last = new SoftReference<>(known);
    }
    return known.source();
  }

  private TakeDraws.Source drawn(int count, long seed) {
    if (points == null) {
      points = points();
    }
    int[] chosen = choose(points, count, seed);
    TakeDraws.Draw[] draws = new TakeDraws.Draw[count];
    List<Weighted> all = points;
    engine.parallel().run(all.size(), p -> draw(all.get(p), chosen, p, seed, draws));
    return number -> draws[number];
  }

  private void draw(Weighted point, int[] chosen, int p, long seed, TakeDraws.Draw[] draws) {
    int[] numbers = IntStream.range(0, draws.length).filter(d -> chosen[d] == p).toArray();
    if (numbers.length > 0) {
      double[] theta = point.theta();
      JointMode mode =
          engines.lend(
              own ->
                  own.startAt(point.modes())
                      .joint(squares(theta))
                      .correct(prior.fixed() == Prior.Fixed.JEFFREYS));
      for (int number : numbers) {
        draws[number] = draw(mode, theta, seed, number);
      }
    }
  }

  /**
   * Effects and deviations at the fit's standard deviations, which so many cells pin down as far as
   * deviations are concerned; the standard deviations themselves from their own shapes. One
   * estimated as zero stays there.
   */
  TakeDraws.Source aroundFit(long seed) {
    double[] theta = fit.thetas();
    JointMode mode = at(theta);
    LogLinearDensity[] shapes = new LogLinearDensity[theta.length];
    for (int k = 0; k < theta.length; k++) {
      shapes[k] = fit.tau[k] > 0 ? shape(k, 1) : null;
    }
    return number -> {
      SplittableRandom random = new SplittableRandom(seed * 7_368_787L + number);
      double[] sds = theta.clone();
      for (int k = 0; k < sds.length; k++) {
        double share = random.nextDouble();
        sds[k] = shapes[k] == null ? sds[k] : shapes[k].quantile(share);
      }
      return draw(mode, sds, seed, number);
    };
  }

  /** How many levels would say as much about a standard deviation, were they known exactly. */
  private double information(int k) {
    return 2 * fit.tau[k] * fit.tau[k] * fit.information[k][k];
  }

  /** Density of a standard deviation from the curvature of the fit, wider for a share below 1. */
  private LogLinearDensity shape(int k, double share) {
    double estimate = Math.sqrt(fit.tau[k]);
    double levels = information(k);
    return levels >= KNOWN_FROM * fit.modes[k].length
        ? LogLinearDensity.known(estimate, share * levels, prior::logDensity)
        : LogLinearDensity.measured(estimate, share * fit.information[k][k], prior::logDensity);
  }

  /** Effects and deviations given standard deviations. */
  JointMode at(double[] theta) {
    return engine.joint(squares(theta), fit.beta).correct(prior.fixed() == Prior.Fixed.JEFFREYS);
  }

  TakeDraws.Draw draw(JointMode mode, double[] theta, long seed, int number) {
    LevelVector x = mode.draw(new SplittableRandom(seed * 1_000_003L + number));
    double[] beta = Arrays.copyOfRange(x.rest, x.rest.length - fit.beta.length, x.rest.length);
    return new TakeDraws.Draw(beta, theta, engine.split(x));
  }

  private static double[] squares(double[] theta) {
    return Arrays.stream(theta).map(t -> t * t).toArray();
  }

  /** Log density at standard deviations, and the modes there. Safe from several threads. */
  private Weighted weighed(double[] theta, LevelVector start) {
    BlockLaplace.Likely likely = engines.lend(own -> own.startAt(start).roughly(squares(theta)));
    double sum = likely.logDensity();
    for (double t : theta) {
      sum += prior.logDensity(t);
    }
    return new Weighted(theta, sum, likely.mode());
  }

  private List<Weighted> points() {
    int varying = fit.tau.length;
    List<LogLinearDensity> proposals = new ArrayList<>();
    double[] centre = new double[varying];
    for (int k = 0; k < varying; k++) {
      centre[k] = Math.max(0.05, Math.sqrt(fit.tau[k]));
    }
    LevelVector start = engine.joint(squares(centre), fit.beta).mode;
    for (int k = 0; k < varying; k++) {
      int place = k;
      LogLinearDensity along =
          effort.shapes() && fit.tau[k] > 0
              ? shape(k, WIDER)
              : LogLinearDensity.of(
                  centre[k],
                  effort.grid(),
                  t -> {
                    double[] theta = centre.clone();
                    theta[place] = t;
                    return weighed(theta, start).logWeight();
                  },
                  engine.parallel());
      proposals.add(along);
      centre[k] = along.quantile(0.5);
    }
    Weighted[] points = new Weighted[effort.points()];
    engine.parallel().run(points.length, p -> points[p] = proposed(p + 1, proposals, start));
    return List.of(points);
  }

  private Weighted proposed(int number, List<LogLinearDensity> proposals, LevelVector start) {
    double[] theta = new double[proposals.size()];
    double proposed = 0;
    for (int k = 0; k < theta.length; k++) {
      theta[k] = proposals.get(k).quantile(halton(number, PRIMES[k % PRIMES.length]));
      proposed += proposals.get(k).logDensity(theta[k]);
    }
    Weighted there = weighed(theta, start);
    return new Weighted(theta, there.logWeight() - proposed, there.modes());
  }

  private static double halton(int number, int base) {
    double value = 0;
    double digit = 1;
    for (int rest = number; rest > 0; rest /= base) {
      digit /= base;
      value += digit * (rest % base);
    }
    return value;
  }

  /** Systematic resampling, then a seeded shuffle so that neighbouring draws differ. */
  private static int[] choose(List<Weighted> points, int count, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int[] chosen =
        SystematicPicks.of(points.stream().mapToDouble(Weighted::logWeight).toArray())
            .numbers(count, random.nextDouble());
    for (int d = count - 1; d > 0; d--) {
      int other = random.nextInt(d + 1);
      int swap = chosen[d];
      chosen[d] = chosen[other];
      chosen[other] = swap;
    }
    return chosen;
  }
}
