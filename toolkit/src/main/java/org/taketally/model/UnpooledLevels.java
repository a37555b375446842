package org.taketally.model;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.model.laplace.BlockLaplace;
import org.taketally.model.laplace.JointMode;
import org.taketally.model.numeric.SmallMatrix;

/**
 * The levels of one column with nothing drawing them together, from the fit in hand: what fitting
 * the column as fixed levels would give, without the search.
 *
 * <p>All standard deviations stay at the estimates of the fit, except that of the column itself,
 * which is set so wide ({@value #WIDE} logits) that it no longer matters. The modes found so are
 * those of a fit with fixed levels at these standard deviations. Meant for many cells, where
 * standard deviations hardly change with one column more or less and log-likelihoods are quadratic
 * over the range that matters.
 */
public final class UnpooledLevels {

  /** A level of 20 grafts is still drawn in by less than a hundredth of its standard error. */
  private static final double WIDE = 10;

  private final TakeFit fit;
  private final LevelContrasts contrasts;
  private final int[] effects;
  private final JointMode mode;
  private final PosteriorSampler engine;

  private UnpooledLevels(
      TakeFit fit,
      LevelContrasts contrasts,
      int[] effects,
      JointMode mode,
      PosteriorSampler engine) {
    this.fit = fit;
    this.contrasts = contrasts;
    this.effects = effects;
    this.mode = mode;
    this.engine = engine;
  }

  /**
   * Of a column of a fit.
   *
   * @param fit any fit by Laplace (nodes 1)
   * @param column an adjusted column of levels, or a varying one
   * @return empty if the fit lacks the column, or if it varies and is the finest or lies above it
   *     (cultivars, where pairings vary): those would need a matrix of all their levels
   */
  public static Optional<UnpooledLevels> of(TakeFit fit, String column) {
    int[] fixed = placesOf(fit, column);
    if (fixed.length > 0) {
      double[] differences = IntStream.of(fixed).mapToDouble(j -> fit.beta()[j]).toArray();
      double[][] covariance = SmallMatrix.part(fit.betaCovariance(), fixed);
      return Optional.of(
          new UnpooledLevels(fit, new LevelContrasts(differences, covariance), fixed, null, null));
    }
    int k = fit.varying().stream().map(VaryingFactor::factor).toList().indexOf(column);
    return k < 0 ? Optional.empty() : ofVarying(fit, k);
  }

  private static int[] placesOf(TakeFit fit, String column) {
    List<FixedEffect> effects = fit.fixed();
    boolean levels = fit.design().adjustsFor(column) && !fit.design().levels(column).isEmpty();
    return IntStream.range(0, levels ? effects.size() : 0)
        .filter(j -> effects.get(j).term().equals(column))
        .toArray();
  }

  private static Optional<UnpooledLevels> ofVarying(TakeFit fit, int k) {
    BlockLaplace blocks = fit.engine();
    int[] places = blocks.placesInRemainder(k);
    if (places.length == 0) {
      return Optional.empty();
    }
    PosteriorSampler engine =
        new PosteriorSampler(blocks, fit.point(), Prior.usual(), fit.cells().size());
    double[] theta = fit.point().thetas();
    theta[k] = WIDE;
    JointMode mode = engine.at(theta);
    return Optional.of(
        new UnpooledLevels(fit, LevelContrasts.of(mode, places), new int[0], mode, engine));
  }

  /**
   * Whether there is any difference between levels: Wald's test.
   *
   * @return chi-square with one degree of freedom fewer than there are levels
   */
  public LevelTest anyDifference() {
    return contrasts.anyDifference();
  }

  /**
   * Whether the levels have any spread: likelihood-ratio test of their standard deviation, the
   * levels taken as measured with normal error. At the edge the statistic is half the time 0 (Self
   * and Liang 1987).
   *
   * @return one degree of freedom
   */
  public LevelTest anySpread() {
    return contrasts.anySpread();
  }

  /**
   * Draws from the posterior with these levels left free. Standard deviations are the fit's.
   *
   * @param count number of draws, at least 1
   * @param seed the same seed gives the same draws
   * @return the draws
   */
  public TakeDraws draws(int count, long seed) {
    return effects.length > 0
        ? fit.draws(count, seed)
        : new TakeDraws(
            fit.design(),
            fit.varying(),
            count,
            number -> engine.draw(mode, fit.point().thetas(), seed, number));
  }

  /**
   * Draws with the levels drawn toward each other, their standard deviation as likely as the levels
   * and the usual prior make it.
   *
   * @param free draws of the fit
   * @param seed the same seed gives the same draws
   * @return as many; {@code free} itself if the column varies, since its levels are drawn so there
   */
  public TakeDraws drawnTogether(TakeDraws free, long seed) {
    if (effects.length == 0) {
      return free;
    }
    ShrunkenDraws together = new ShrunkenDraws(fit, contrasts, effects);
    return new TakeDraws(
        fit.design(),
        fit.varying(),
        free.count(),
        number -> together.of(free.draw(number), seed, number));
  }
}
