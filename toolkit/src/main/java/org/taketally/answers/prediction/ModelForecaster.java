package org.taketally.answers.prediction;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.checks.SeasonsLeftOut;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.LogitPart;
import org.taketally.model.ModelTerms;
import org.taketally.model.NormalAverage;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.columns.RecordColumn;

/**
 * The model itself: posterior mean of the take, a level it has not seen (a new season above all)
 * averaged over the normal spread of its column.
 */
final class ModelForecaster implements Forecaster {

  private static final int DRAWS = 200;

  private final TakeFit all;
  private final AnswerOptions options;

  ModelForecaster(TakeFit all, AnswerOptions options) {
    this.all = all;
    this.options = options;
  }

  @Override
  public SecondOpinions.Way way() {
    return SecondOpinions.Way.THIS_MODEL;
  }

  @Override
  public double[] takes(boolean[] held) {
    TakeFit seen = TakeModel.of(all.model()).fit(all.cells().where(i -> !held[i]));
    TakeDraws draws = seen.draws(DRAWS, options.seed());
    List<Part> parts = parts(seen, draws, all.cells());
    double[] intercepts = IntStream.range(0, DRAWS).mapToDouble(d -> draws.beta(d)[0]).toArray();
    return IntStream.range(0, held.length)
        .parallel()
        .mapToDouble(i -> held[i] ? take(parts, intercepts, i) : Double.NaN)
        .toArray();
  }

  private static double take(List<Part> parts, double[] intercepts, int cell) {
    double sum = 0;
    for (int d = 0; d < DRAWS; d++) {
      double logit = intercepts[d];
      double variance = 0;
      for (Part part : parts) {
        int code = part.codes[cell];
        logit += code >= 0 ? part.logits[d][code] : part.otherwise[d];
        variance += code >= 0 ? 0 : part.spread[d] * part.spread[d];
      }
      sum += NormalAverage.take(logit, variance);
    }
    return sum / DRAWS;
  }

  /**
   * One column's part of the logit.
   *
   * <pre>
   *   codes       level or distinct value of each cell, -1 if the fit hasn't seen it
   *   logits      by draw and code
   *   otherwise   by draw, for what the fit hasn't seen; spread   its standard deviation
   * </pre>
   */
  private static final class Part {
    private final int[] codes;
    private final double[][] logits;
    private final double[] otherwise;
    private final double[] spread = new double[DRAWS];

    private Part(int[] codes, double[][] logits, double[] otherwise) {
      this.codes = codes;
      this.logits = logits;
      this.otherwise = otherwise;
    }
  }

  private static List<Part> parts(TakeFit seen, TakeDraws draws, Cells cells) {
    List<String> fixed = new ArrayList<>(seen.model().adjusted());
    fixed.addAll(seen.model().curves().keySet());
    List<Part> parts = new ArrayList<>();
    fixed.stream()
        .filter(seen.design()::adjustsFor)
        .forEach(column -> parts.add(fixed(seen, draws, cells, column)));
    for (int k = 0; k < seen.varying().size(); k++) {
      parts.add(varying(seen, draws, cells, k));
    }
    return parts;
  }

  private static Part varying(TakeFit seen, TakeDraws draws, Cells cells, int k) {
    String column = seen.varying().get(k).factor();
    double[][] effects = each(d -> draws.effects(column, d));
    int[] codes = codes(cells.factor(column), seen.varying().get(k).levels());
    Part part = new Part(codes, effects, new double[DRAWS]);
    for (int d = 0; d < DRAWS; d++) {
      part.spread[d] = draws.sds(d)[k];
    }
    return part;
  }

  /** A fixed level not seen is taken as the mean of those seen. */
  private static Part fixed(TakeFit seen, TakeDraws draws, Cells cells, String column) {
    List<String> levels = seen.design().levels(column);
    int[] codes;
    List<String> contents;
    if (levels.isEmpty()) {
      double[] values = cells.measure(column).values();
      double[] distinct = Arrays.stream(values).distinct().sorted().toArray();
      codes = Arrays.stream(values).mapToInt(v -> Arrays.binarySearch(distinct, v)).toArray();
      contents = Arrays.stream(distinct).mapToObj(Double::toString).toList();
    } else {
      codes = codes(cells.factor(column), levels);
      contents = levels;
    }
    List<LogitPart> parts = contents.stream().map(c -> seen.design().part(column, c)).toList();
    double[][] logits =
        each(
            d -> {
              double[] beta = draws.beta(d);
              return parts.stream().mapToDouble(part -> part.at(beta)).toArray();
            });
    return new Part(
        codes, logits, Arrays.stream(logits).mapToDouble(ModelForecaster::mean).toArray());
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElse(0);
  }

  private static double[][] each(java.util.function.IntFunction<double[]> ofDraw) {
    return IntStream.range(0, DRAWS).mapToObj(ofDraw).toArray(double[][]::new);
  }

  private static int[] codes(Factor factor, List<String> levels) {
    int[] place = factor.levels().stream().mapToInt(levels::indexOf).toArray();
    return Arrays.stream(factor.codes()).map(code -> place[code]).toArray();
  }

  @Override
  public double[] cultivars() {
    MarginalTakes averaging = MarginalTakes.of(all, options.withDraws(DRAWS));
    if (!averaging.knows(RecordColumn.CULTIVAR.columnName())) {
      return new double[0];
    }
    double[][] logits = averaging.logits(RecordColumn.CULTIVAR.columnName());
    List<String> known = averaging.levels(RecordColumn.CULTIVAR.columnName());
    return all.cells().factor(RecordColumn.CULTIVAR.columnName()).levels().stream()
        .mapToInt(known::indexOf)
        .mapToDouble(l -> l < 0 ? Double.NaN : mean(DrawSummary.column(logits, l)))
        .toArray();
  }

  /** Columns that other ways of predicting may use: all but the season and the pairing. */
  static List<String> columns(ModelTerms model) {
    return model.columns().stream()
        .filter(c -> !c.equals(SeasonsLeftOut.SEASON) && !c.equals(TakeModel.PAIRING))
        .toList();
  }
}
