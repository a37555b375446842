package org.taketally.answers.adjusted;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.model.Prior;
import org.taketally.model.TakeDesign;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;
import org.taketally.records.columns.DerivedColumn;

/**
 * Average takes as if every graft had one level of a column, all else as recorded, in each
 * posterior draw.
 *
 * <pre>
 *   eta    logit of take of a condition in a draw, see {@link ObservedConditions}
 *   swap   the part of eta that the column contributes
 *   e      what a level would contribute instead
 *   take   sum[weight * logistic(eta - swap + e)]
 * </pre>
 */
public final class MarginalTakes {

  private static final long DRAWN_NUMBERS = 40_000_000;

  private static final int SECOND_LOOK = 1_000;

  /** Draws that count must be this share of all, or few of them would stand for the rest. */
  private static final double ENOUGH_COUNT = 0.25;

  /** Takes are kept to be asked for again up to so many numbers. */
  private static final long KEPT_NUMBERS = 4_000_000;

  private final TakeFit fit;
  private final TakeDesign design;
  private final TakeDraws draws;
  private final ObservedConditions conditions;
  private final float[][] eta;
  private final Optional<Picked> picked;
  private final Map<String, double[][]> takesOf = new ConcurrentHashMap<>();
  private final Map<String, double[][]> contributionsOf = new ConcurrentHashMap<>();
  private final Map<String, double[][][]> takesByPartnerOf = new ConcurrentHashMap<>();

  /** Where draws were picked from. */
  private record Picked(MarginalTakes from, PickedDraws draws) {}

  /**
   * Averages over the conditions of a fit.
   *
   * @param fit any fit
   * @param options draws and seed
   * @return takes by any of its columns
   */
  public static MarginalTakes of(TakeFit fit, AnswerOptions options) {
    return new MarginalTakes(
        fit,
        fit.draws(affordable(fit, options), options.seed(), prior(options)),
        new ObservedConditions(fit));
  }

  /**
   * Averages over the conditions of a fit by draws with the standard deviations at their estimates:
   * for a second look at what is shown already, for which {@value #SECOND_LOOK} draws are plenty:
   * the end of a range is then known to a tenth of its standard error.
   *
   * @param fit any fit
   * @param options most draws, and seed
   * @return takes by any of its columns
   */
  public static MarginalTakes atEstimates(TakeFit fit, AnswerOptions options) {
    return new MarginalTakes(
        fit,
        fit.drawsAtEstimates(Math.min(SECOND_LOOK, affordable(fit, options)), options.seed()),
        new ObservedConditions(fit));
  }

  private MarginalTakes(TakeFit fit, TakeDraws draws, ObservedConditions conditions) {
    this(fit, draws, conditions, new float[draws.count()][], Optional.empty());
    IntStream.range(0, eta.length).parallel().forEach(d -> eta[d] = conditions.eta(draws, d));
  }

  private MarginalTakes(
      TakeFit fit,
      TakeDraws draws,
      ObservedConditions conditions,
      float[][] eta,
      Optional<Picked> picked) {
    this.fit = fit;
    this.design = fit.design();
    this.draws = draws;
    this.conditions = conditions;
    this.eta = eta;
    this.picked = picked;
  }

  private static Prior prior(AnswerOptions options) {
    return Prior.halfNormal(options.priorScale()).fixed(Prior.Fixed.JEFFREYS);
  }

  private static int affordable(TakeFit fit, AnswerOptions options) {
    long levels = fit.varying().stream().mapToLong(f -> f.levels().size()).sum();
    return (int) Math.min(options.draws(), DRAWN_NUMBERS / Math.max(1, levels));
  }

  /** Averages over the same conditions in other draws of the same fit. */
  public MarginalTakes with(TakeDraws others) {
    return new MarginalTakes(fit, others, conditions);
  }

  /**
   * The same where something else is believed of spreads: draws in hand, picked as often as the
   * other belief makes them more likely.
   *
   * @param of what these draws were made with
   * @param scale scale of the other prior of standard deviations, above 0, logits
   * @return as many draws as say something of their own; empty where that is under a quarter of
   *     them
   */
  public Optional<MarginalTakes> withPriorScale(AnswerOptions of, double scale) {
    Prior own = Prior.halfNormal(of.priorScale());
    Prior other = Prior.halfNormal(scale);
    double[] more = new double[count()];
    Arrays.setAll(
        more,
        d ->
            Arrays.stream(draws.sds(d)).map(sd -> other.logDensity(sd) - own.logDensity(sd)).sum());
    PickedDraws some = PickedDraws.of(more);
    return some.effective() < ENOUGH_COUNT * count()
        ? Optional.empty()
        : Optional.of(
            new MarginalTakes(
                fit,
                draws.picked(some.numbers()),
                conditions,
                some.of(eta),
                Optional.of(new Picked(this, some))));
  }

  /**
   * Which of other draws these are.
   *
   * @param others draws of the same fit
   * @return place of each of these among the others; empty if these weren't picked from them
   */
  public Optional<int[]> pickedFrom(MarginalTakes others) {
    return picked.filter(p -> p.from() == others).map(p -> p.draws().numbers());
  }

  public TakeFit fit() {
    return fit;
  }

  public TakeDraws draws() {
    return draws;
  }

  public int count() {
    return draws.count();
  }

  /** How many draws can be kept in memory, the conditions of each included. */
  public int most(int wanted) {
    long numbers = conditions.size();
    for (VaryingFactor factor : fit.varying()) {
      numbers += factor.levels().size();
    }
    return (int) Math.min(wanted, DRAWN_NUMBERS / Math.max(1, numbers));
  }

  /** The levels a column has in the fit, in the order of {@link #takes}. */
  public List<String> levels(String column) {
    requireKnown(column);
    return LevelSubstitution.varies(fit, column)
        ? fit.varying(column).levels()
        : design.levels(column);
  }

  /**
   * Sees to it that the fit has a column.
   *
   * @param column its name
   * @throws IllegalArgumentException if it hasn't, saying what to do about it
   */
  public void requireKnown(String column) {
    if (knows(column)) {
      return;
    }
    if (fit.model().columns().contains(column)) {
      throw new IllegalArgumentException(
          "\"%s\" is in the model, but the fit had to leave it out; the fit's warnings say why. The fit has: %s"
              .formatted(column, String.join(", ", columns())));
    }
    throw new IllegalArgumentException(
        "\"%s\" isn't in this fit; add it to the model (adjustFor(\"%s\") or varyBy(\"%s\")) and fit again. The fit has: %s"
            .formatted(column, column, column, String.join(", ", columns())));
  }

  private List<String> columns() {
    return Stream.concat(design.terms().stream(), fit.varying().stream().map(VaryingFactor::factor))
        .distinct()
        .toList();
  }

  /** Whether the fit has the column, fixed or varying. */
  public boolean knows(String column) {
    return LevelSubstitution.varies(fit, column) || design.adjustsFor(column);
  }

  /**
   * Average takes by level.
   *
   * @param column fixed or varying column of levels
   * @return one row a draw, one take a level
   */
  public double[][] takes(String column) {
    double[][] kept = takesOf.get(column);
    if (kept != null) {
      return copy(kept);
    }
    double[][] takes =
        picked.map(p -> p.draws().of(p.from().takes(column))).orElseGet(() -> workedOut(column));
    if (fewEnough(takes)) {
      takesOf.put(column, copy(takes));
    }
    return takes;
  }

  private double[][] workedOut(String column) {
    LevelSubstitution swap = swap(column);
    return takes(swap, contributions(column, swap));
  }

  /**
   * Average takes along a column of numbers.
   *
   * @param column adjusted column of numbers
   * @param values in the column's unit
   * @return one row a draw, one take a value
   */
  public double[][] takes(String column, double[] values) {
    LevelSubstitution swap = LevelSubstitution.ofValues(fit, draws, conditions, column, values);
    return takes(swap, contributions(swap));
  }

  /**
   * Takes of each level on each of its partners, where pairings vary.
   *
   * @param column {@code rootstock} (partners are cultivars) or {@code cultivar}
   * @return for each draw one row a partner, one take a level; empty where pairings don't vary, or
   *     there are too many of them
   */
  public Optional<double[][][]> takesByPartner(String column) {
    double[][][] kept = takesByPartnerOf.get(column);
    if (kept != null) {
      return Optional.of(copy(kept));
    }
    Optional<double[][][]> takes =
        picked
            .map(p -> p.from().takesByPartner(column).map(p.draws()::of))
            .orElseGet(() -> workedOutByPartner(column));
    takes
        .filter(t -> (long) t.length * t[0].length * levels(column).size() <= KEPT_NUMBERS)
        .ifPresent(t -> takesByPartnerOf.put(column, copy(t)));
    return takes;
  }

  private static double[][] copy(double[][] rows) {
    return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
  }

  private static double[][][] copy(double[][][] tables) {
    return Arrays.stream(tables).map(MarginalTakes::copy).toArray(double[][][]::new);
  }

  private Optional<double[][][]> workedOutByPartner(String column) {
    LevelSubstitution swap = swap(column);
    if (!swap.pairs()
        || (long) count() * fit.varying(DerivedColumn.PAIRING.columnName()).levels().size()
            > DRAWN_NUMBERS) {
      return Optional.empty();
    }
    return Optional.of(
        IntStream.range(0, count())
            .parallel()
            .mapToObj(d -> swap.takesByPartner(d, eta[d]))
            .toArray(double[][][]::new));
  }

  /** What each level contributes to the logit, one row a draw. */
  public double[][] logits(String column) {
    return copy(contributions(column, swap(column)));
  }

  private LevelSubstitution swap(String column) {
    return LevelSubstitution.ofLevels(fit, draws, conditions, column, levels(column));
  }

  private double[][] contributions(String column, LevelSubstitution swap) {
    double[][] kept = contributionsOf.get(column);
    if (kept == null) {
      kept = contributions(swap);
      if (fewEnough(kept)) {
        contributionsOf.put(column, kept);
      }
    }
    return kept;
  }

  private double[][] contributions(LevelSubstitution swap) {
    return IntStream.range(0, count())
        .parallel()
        .mapToObj(swap::contributions)
        .toArray(double[][]::new);
  }

  private static boolean fewEnough(double[][] rows) {
    return (long) rows.length * rows[0].length <= KEPT_NUMBERS;
  }

  private double[][] takes(LevelSubstitution swap, double[][] contributions) {
    return IntStream.range(0, count())
        .parallel()
        .mapToObj(
            d -> ShiftedMean.of(swap.rest(d, eta[d]), conditions.weights()).at(contributions[d]))
        .toArray(double[][]::new);
  }

  /** Share of the grafts each level of a column has. */
  public double[] shares(String column) {
    TakeCount[] counts = TakeCounter.byLevel(fit.cells(), column, levels(column));
    double total = fit.cells().graftsTotal();
    return Arrays.stream(counts).mapToDouble(count -> count.grafts() / total).toArray();
  }
}
