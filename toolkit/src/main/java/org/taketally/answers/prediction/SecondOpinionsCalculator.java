package org.taketally.answers.prediction;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Words;
import org.taketally.answers.checks.SeasonsLeftOut;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.prediction.SecondOpinions.Opinion;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.CannotFit;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

/** Lets each way of predicting predict each season from the others, and compares. */
public final class SecondOpinionsCalculator {

  /** Grafts above which cells are drawn from the records. */
  static final long GRAFTS_AT_MOST = 20_000;

  private static final double CLEAR = 2;

  private final TakeFit fit;
  private final Cells cells;
  private final Factor seasons;
  private final AnswerOptions options;
  private final boolean subsampled;

  private SecondOpinionsCalculator(TakeFit fit, AnswerOptions options, boolean subsampled) {
    this.fit = fit;
    this.cells = fit.cells();
    this.seasons = cells.findFactor(SeasonsLeftOut.SEASON).orElse(null);
    this.options = options;
    this.subsampled = subsampled;
  }

  /**
   * Fits the model and asks for second opinions.
   *
   * @param model what take may depend on
   * @param cells the records, seasons included
   * @param options draws and seed
   * @return the opinions
   * @throws org.taketally.model.CannotFit if the model can't be fitted to all records
   */
  public static SecondOpinions of(TakeModel model, Cells cells, AnswerOptions options) {
    return of(model.fit(cells), options);
  }

  /**
   * Second opinions on a fit: each way of predicting predicts every season from the others. Above
   * 20,000 grafts only so many are used, drawn evenly.
   *
   * @param fit the fit, its cells with a season
   * @param options draws and seed
   * @return the opinions
   */
  public static SecondOpinions of(TakeFit fit, AnswerOptions options) {
    if (fit.cells().graftsTotal() <= GRAFTS_AT_MOST) {
      return new SecondOpinionsCalculator(fit, options, false).answer();
    }
    try {
      TakeFit part = fit.model().fit(some(fit.cells(), options.seed()));
      return new SecondOpinionsCalculator(part, options, true).answer();
    } catch (CannotFit reason) {
      return new SecondOpinionsCalculator(fit, options, false)
          .without(
              "a part of the records small enough to compare on can't be fitted: "
                  + reason.getMessage());
    }
  }

  /** About {@value #GRAFTS_AT_MOST} grafts in whole cells, drawn evenly. */
  static Cells some(Cells cells, long seed) {
    Random random = new Random(seed);
    double share = (double) GRAFTS_AT_MOST / cells.graftsTotal();
    boolean[] kept = new boolean[cells.size()];
    for (int i = 0; i < kept.length; i++) {
      kept[i] = random.nextDouble() < share;
    }
    return cells.where(i -> kept[i]);
  }

  private SecondOpinions without(String reason) {
    return new SecondOpinions(
        List.of(),
        List.of(),
        "No second opinion: %s (%s).".formatted(reason, Words.count(cells.graftsTotal(), "graft")),
        SeasonsLeftOut.SEASON,
        TakeCounter.all(cells),
        subsampled);
  }

  private SecondOpinions answer() {
    int[] inUse =
        seasons == null
            ? new int[0]
            : Arrays.stream(seasons.codes()).filter(s -> s >= 0).distinct().sorted().toArray();
    if (inUse.length < 2) {
      return without("it takes two seasons or more to predict one from the others");
    }
    if (Arrays.stream(seasons.codes()).anyMatch(s -> s < 0)) {
      return without("some grafts have no season");
    }
    List<String> columns = lasting(ModelForecaster.columns(fit.model()));
    if (columns.isEmpty()) {
      return without("the model has nothing that carries over from one season to another");
    }
    GraftFeatures features = new GraftFeatures(cells, columns);
    ForestForecaster forest = new ForestForecaster(features, options.seed());
    List<Forecaster> ways =
        List.of(
            new ModelForecaster(fit, options),
            new RidgeForecaster(features),
            forest,
            new PlainShare(cells));
    try {
      List<ForecastScores> scores = ways.stream().map(way -> scores(way, inUse)).toList();
      List<Opinion> opinions = opinions(ways, scores);
      return new SecondOpinions(
          opinions,
          forest.importance(),
          sentence(opinions, scores),
          SeasonsLeftOut.SEASON,
          TakeCounter.all(cells),
          subsampled);
    } catch (CannotFit reason) {
      return without("without one of the seasons the rest can't be fitted: " + reason.getMessage());
    }
  }

  /** Columns with a level that occurs in two seasons or more: others can't predict a new one. */
  private List<String> lasting(List<String> columns) {
    return columns.stream()
        .filter(column -> cells.findFactor(column).map(this::lasts).orElse(true))
        .toList();
  }

  private boolean lasts(Factor factor) {
    int[] first = new int[factor.size()];
    Arrays.fill(first, Factor.MISSING);
    for (int i = 0; i < cells.size(); i++) {
      int level = factor.codes()[i];
      int season = seasons.codes()[i];
      if (first[level] != Factor.MISSING && first[level] != season) {
        return true;
      }
      first[level] = season;
    }
    return false;
  }

  private ForecastScores scores(Forecaster way, int[] inUse) {
    double[] takes = new double[cells.size()];
    for (int season : inUse) {
      boolean[] held = new boolean[takes.length];
      for (int i = 0; i < held.length; i++) {
        held[i] = seasons.codes()[i] == season;
      }
      double[] predicted = way.takes(held);
      for (int i = 0; i < held.length; i++) {
        takes[i] = held[i] ? predicted[i] : takes[i];
      }
    }
    return new ForecastScores(cells, takes);
  }

  private List<Opinion> opinions(List<Forecaster> ways, List<ForecastScores> scores) {
    double[] own = ways.get(0).cultivars();
    List<Opinion> opinions = new ArrayList<>();
    for (int w = 0; w < ways.size(); w++) {
      ForecastScores s = scores.get(w);
      double agreement = w == 0 ? Double.NaN : agreement(own, ways.get(w).cultivars());
      double slope = ways.get(w) instanceof PlainShare ? Double.NaN : s.calibrationSlope();
      opinions.add(
          new Opinion(ways.get(w).name(), s.logScore(), s.brier(), slope, agreement, s.tenths()));
    }
    return opinions;
  }

  private static double agreement(double[] own, double[] other) {
    int[] known =
        IntStream.range(0, Math.min(own.length, other.length))
            .filter(l -> !Double.isNaN(own[l]) && !Double.isNaN(other[l]))
            .toArray();
    if (known.length < 3) {
      return Double.NaN;
    }
    return new SpearmansCorrelation()
        .correlation(
            Arrays.stream(known).mapToDouble(l -> own[l]).toArray(),
            Arrays.stream(known).mapToDouble(l -> other[l]).toArray());
  }

  private String sentence(List<Opinion> opinions, List<ForecastScores> scores) {
    int best =
        IntStream.range(1, opinions.size())
            .boxed()
            .max((a, b) -> Double.compare(scores.get(a).logScore(), scores.get(b).logScore()))
            .orElseThrow();
    String from =
        "; on seasons not seen it gave what happened a typical chance of %s, the best other way, the %s, %s (%s)"
            .formatted(
                typicalChance(opinions.get(0)),
                opinions.get(best).name(),
                typicalChance(opinions.get(best)),
                Words.count(cells.graftsTotal(), "graft"));
    return verdict(opinions.get(best).name(), scores.get(best).lead(scores.get(0)))
        + from
        + "."
        + agreement(opinions);
  }

  /** Geometric mean of the chances given to what happened; one decimal, as they lie close. */
  private static String typicalChance(Opinion opinion) {
    return String.format(Locale.ROOT, "%.1f %%", 100 * Math.exp(opinion.logScore()));
  }

  private static String verdict(String best, double lead) {
    if (lead > CLEAR) {
      return "The "
          + best
          + " predicts better than this model, so something moves take that the model doesn't know"
          + " (try a curve, or let the pairing vary)";
    }
    return lead < -CLEAR
        ? "No other way of predicting tried does as well as this model"
        : "No other way of predicting tried does clearly better than this model";
  }

  private static String agreement(List<Opinion> opinions) {
    double[] known =
        opinions.stream()
            .mapToDouble(Opinion::rankAgreement)
            .filter(r -> !Double.isNaN(r))
            .toArray();
    Optional<Double> least = Arrays.stream(known).boxed().min(Double::compare);
    return least
        .map(
            r ->
                " They put the cultivars in %s order (rank agreement at least %.2f of 1)."
                    .formatted(
                        r >= 0.9 ? "nearly the same" : r >= 0.7 ? "a similar" : "another", r))
        .orElse("");
  }

  /** The same chance for every graft: the counted take of the other seasons. */
  private record PlainShare(Cells cells) implements Forecaster {

    @Override
    public String name() {
      return "same chance for every graft";
    }

    @Override
    public double[] takes(boolean[] held) {
      Cells seen = cells.where(i -> !held[i]);
      double[] takes = new double[held.length];
      Arrays.fill(takes, (double) seen.takesTotal() / seen.graftsTotal());
      return takes;
    }

    @Override
    public double[] cultivars() {
      return new double[0];
    }
  }
}
