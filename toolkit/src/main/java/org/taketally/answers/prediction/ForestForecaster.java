package org.taketally.answers.prediction;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.taketally.answers.prediction.SecondOpinions.Importance;
import org.taketally.records.columns.RecordColumn;
import smile.base.cart.SplitRule;
import smile.classification.RandomForest;
import smile.data.DataFrame;
import smile.data.formula.Formula;

/** A random forest: no shape assumed, and every pairing of columns allowed. */
final class ForestForecaster implements Forecaster {

  private static final int TREES = 100;
  private static final int DEPTH = 12;
  private static final int LEAF = 10;

  /** Rows whose predictions are taken apart, and over which a cultivar's take is averaged. */
  private static final int EXPLAINED = 300;

  private static final int ASKED = 6000;

  private final GraftFeatures features;
  private final long seed;
  private RandomForest whole;

  ForestForecaster(GraftFeatures features, long seed) {
    this.features = features;
    this.seed = seed;
  }

  @Override
  public SecondOpinions.Way way() {
    return SecondOpinions.Way.FOREST;
  }

  private RandomForest fit(boolean[] held) {
    int[] rows = features.grafts(held);
    DataFrame table = features.table(rows, features.outcomes(held), -1, 0);
    int tried = (int) Math.ceil(Math.sqrt(features.columns().size()));
    return SingleThreaded.call(
        () ->
            RandomForest.fit(
                Formula.lhs(GraftFeatures.TAKE),
                table,
                TREES,
                tried,
                SplitRule.GINI,
                DEPTH,
                Math.max(2, rows.length / LEAF),
                LEAF,
                1.0,
                null,
                LongStream.range(seed, seed + TREES)));
  }

  /** The forest grown on all cells. */
  private RandomForest whole() {
    if (whole == null) {
      whole = fit(new boolean[features.cells().size()]);
    }
    return whole;
  }

  @Override
  public double[] takes(boolean[] held) {
    RandomForest forest = fit(held);
    int[] cells = IntStream.range(0, held.length).toArray();
    return predict(forest, features.table(cells, new int[cells.length], -1, 0));
  }

  private static double[] predict(RandomForest forest, DataFrame table) {
    return IntStream.range(0, table.size())
        .parallel()
        .mapToDouble(
            i -> {
              double[] chances = new double[2];
              forest.predict(table.get(i), chances);
              return chances[1];
            })
        .toArray();
  }

  @Override
  public double[] cultivars() {
    int column = features.columns().indexOf(RecordColumn.CULTIVAR.columnName());
    if (column < 0) {
      return new double[0];
    }
    int levels = features.cells().factor(RecordColumn.CULTIVAR.columnName()).size();
    int[] rows = some(Math.max(20, Math.min(EXPLAINED, ASKED / levels)));
    return IntStream.range(0, levels)
        .mapToDouble(
            level -> {
              DataFrame table = features.table(rows, new int[rows.length], column, level);
              return Arrays.stream(predict(whole(), table)).average().orElseThrow();
            })
        .toArray();
  }

  /**
   * Share of each column in the mean absolute SHAP values.
   *
   * @see <a href="https://doi.org/10.1038/s42256-019-0138-9">Lundberg et al. (2020)</a>
   */
  List<Importance> importance() {
    int[] rows = some(EXPLAINED);
    DataFrame table = features.table(rows, new int[rows.length], -1, 0);
    double[] weights = SingleThreaded.call(() -> whole().shap(table));
    int classes = weights.length / features.columns().size();
    double[] byColumn =
        IntStream.range(0, features.columns().size())
            .mapToDouble(c -> weights[c * classes + classes - 1])
            .toArray();
    double total = Arrays.stream(byColumn).sum();
    return IntStream.range(0, byColumn.length)
        .mapToObj(
            c -> new Importance(features.columns().get(c), total > 0 ? byColumn[c] / total : 0))
        .sorted((a, b) -> Double.compare(b.share(), a.share()))
        .toList();
  }

  /** Some grafts, drawn evenly, as their cells. */
  private int[] some(int count) {
    int[] all = features.grafts(new boolean[features.cells().size()]);
    return new Random(seed).ints(count, 0, all.length).map(g -> all[g]).toArray();
  }
}
