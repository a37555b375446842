package org.taketally.answers.prediction;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.checks.SeasonsLeftOut;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.prediction.SecondOpinions.Best;
import org.taketally.answers.prediction.SecondOpinions.NoOpinion;
import org.taketally.answers.prediction.SecondOpinions.Opinion;
import org.taketally.answers.prediction.SecondOpinions.Reason;
import org.taketally.answers.prediction.SecondOpinions.Standing;
import org.taketally.answers.prediction.SecondOpinions.Way;
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
      TakeFit part = TakeModel.of(fit.model()).fit(some(fit.cells(), options.seed()));
      return new SecondOpinionsCalculator(part, options, true).answer();
    } catch (CannotFit reason) {
      return new SecondOpinionsCalculator(fit, options, false)
          .without(Reason.PART_CANT_BE_FITTED, Optional.of(reason));
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

  private SecondOpinions without(Reason reason, Optional<CannotFit> cause) {
    return new SecondOpinions(
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.of(new NoOpinion(reason, cause)),
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
      return without(Reason.ONE_SEASON, Optional.empty());
    }
    if (Arrays.stream(seasons.codes()).anyMatch(s -> s < 0)) {
      return without(Reason.SEASON_MISSING, Optional.empty());
    }
    List<String> columns = lasting(ModelForecaster.columns(fit.model()));
    if (columns.isEmpty()) {
      return without(Reason.NOTHING_LASTS, Optional.empty());
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
          Optional.of(best(opinions, scores)),
          Optional.empty(),
          SeasonsLeftOut.SEASON,
          TakeCounter.all(cells),
          subsampled);
    } catch (CannotFit reason) {
      return without(Reason.REST_CANT_BE_FITTED, Optional.of(reason));
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
      int level = factor.code(i);
      int season = seasons.code(i);
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
        held[i] = seasons.code(i) == season;
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
      double slope = ways.get(w).way() == Way.SAME_CHANCE ? Double.NaN : s.calibrationSlope();
      opinions.add(
          new Opinion(ways.get(w).way(), s.logScore(), s.brier(), slope, agreement, s.tenths()));
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

  private static Best best(List<Opinion> opinions, List<ForecastScores> scores) {
    int best =
        IntStream.range(1, opinions.size())
            .boxed()
            .max((a, b) -> Double.compare(scores.get(a).logScore(), scores.get(b).logScore()))
            .orElseThrow();
    double lead = scores.get(best).lead(scores.get(0));
    Standing standing = lead < -CLEAR ? Standing.WORSE : Standing.ABOUT_AS_GOOD;
    return new Best(opinions.get(best).way(), lead > CLEAR ? Standing.BETTER : standing);
  }

  /** The same chance for every graft: the counted take of the other seasons. */
  private record PlainShare(Cells cells) implements Forecaster {

    @Override
    public Way way() {
      return Way.SAME_CHANCE;
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
