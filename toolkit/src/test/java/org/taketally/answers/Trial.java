package org.taketally.answers;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeModel;
import org.taketally.terms.Provenance;

/**
 * A trial of known truth: rootstocks by cultivars, on swelling or dormant buds, grafted over days
 * by a few hands.
 *
 * @param stocks rootstocks
 * @param grafts grafts in all
 * @param layout how rootstocks are spread over grafts
 * @param pattern how rootstocks differ
 * @param gap true difference in take between the best and the worst rootstock, averaged over the
 *     trial's own mix, 0 to 1
 */
record Trial(int stocks, int grafts, Layout layout, Pattern pattern, double gap) {

  /** How rootstocks are spread over the grafts. */
  enum Layout {
    /** All equally often, drawn by lot for each graft. */
    EVEN("even"),
    /** The commonest ten times as often as the rarest, and cultivars tied to hands. */
    UNEVEN("uneven"),
    /** Each day has one rootstock only. */
    BY_DAY("one rootstock a day");

    final String words;

    Layout(String words) {
      this.words = words;
    }
  }

  /** How rootstocks differ. */
  enum Pattern {
    /** One is worse, the others are alike. */
    ONE_BAD("one worse"),
    /** Spaced evenly from worst to best. */
    STEPS("even steps");

    final String words;

    Pattern(String words) {
      this.words = words;
    }
  }

  static final TakeModel MODEL =
      TakeModel.ofTakes()
          .adjustFor("bud_stage")
          .varyBy("cultivar", "grafter", "grafting_day")
          .compare("rootstock");

  /** True logit of dormant against swelling buds. */
  static final double DORMANT = -0.5;

  private static final int CULTIVARS = 8;
  private static final int GRAFTERS = 4;
  private static final double MIDDLE = 0.8;

  /** True standard deviations, logits. */
  static final double CULTIVAR_SD = 0.6;

  static final double GRAFTER_SD = 0.3;
  static final double DAY_SD = 0.3;

  /**
   * Records of one such trial.
   *
   * @param cells as recorded
   * @param takes true take of each rootstock, averaged over the mix
   * @param cultivarTakes true take of each cultivar, averaged over the mix
   * @param budGap true take of swelling less that of dormant buds, averaged over the mix
   */
  record Made(Cells cells, double[] takes, double[] cultivarTakes, double budGap) {

    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }

  int days() {
    return Math.max(3 * stocks, grafts / 40);
  }

  Made make(long seed) {
    Random random = new Random(seed);
    int[][] codes = codes(random);
    double[] cultivar = effects(random, CULTIVARS, CULTIVAR_SD);
    double[] grafter = effects(random, GRAFTERS, GRAFTER_SD);
    double[] day = effects(random, days(), DAY_SD);
    double[] others = new double[grafts];
    Arrays.setAll(
        others,
        i ->
            MIDDLE
                + cultivar[codes[0][i]]
                + grafter[codes[2][i]]
                + day[codes[3][i]]
                + codes[4][i] * DORMANT);
    double[] stock = stockEffects(others);
    int[] takes = new int[grafts];
    Arrays.setAll(
        takes, i -> random.nextDouble() < logistic(others[i] + stock[codes[1][i]]) ? 1 : 0);
    double[] byStock = Arrays.stream(stock).map(effect -> mean(others, effect)).toArray();
    double[] rest = new double[grafts];
    Arrays.setAll(rest, i -> others[i] - cultivar[codes[0][i]] + stock[codes[1][i]]);
    double[] byCultivar = Arrays.stream(cultivar).map(effect -> mean(rest, effect)).toArray();
    Arrays.setAll(rest, i -> others[i] - codes[4][i] * DORMANT + stock[codes[1][i]]);
    return new Made(cells(codes, takes), byStock, byCultivar, mean(rest, 0) - mean(rest, DORMANT));
  }

  private int[][] codes(Random random) {
    int[][] codes = new int[5][grafts];
    for (int i = 0; i < grafts; i++) {
      codes[3][i] = (int) ((long) i * days() / grafts);
      codes[0][i] = random.nextInt(CULTIVARS);
      codes[2][i] =
          layout == Layout.UNEVEN && random.nextDouble() < 0.6
              ? codes[0][i] % GRAFTERS
              : random.nextInt(GRAFTERS);
      codes[4][i] = random.nextInt(2);
      codes[1][i] =
          switch (layout) {
            case EVEN -> random.nextInt(stocks);
            case UNEVEN -> rare(random);
            case BY_DAY -> codes[3][i] % stocks;
          };
    }
    return codes;
  }

  /** Weights falling geometrically from 1 for the first rootstock to 1/10 for the last. */
  private int rare(Random random) {
    double[] weight =
        IntStream.range(0, stocks).mapToDouble(k -> Math.pow(0.1, k / (stocks - 1.0))).toArray();
    double at = random.nextDouble() * Arrays.stream(weight).sum();
    int stock = 0;
    while (stock < stocks - 1 && at >= weight[stock]) {
      at -= weight[stock];
      stock++;
    }
    return stock;
  }

  private static double[] effects(Random random, int count, double sd) {
    double[] effects = new double[count];
    Arrays.setAll(effects, k -> sd * random.nextGaussian());
    return effects;
  }

  /** Logits such that the averaged takes of best and worst lie exactly {@code gap} apart. */
  private double[] stockEffects(double[] others) {
    double low = 0;
    double high = 5;
    double best = mean(others, 0);
    for (int step = 0; step < 60; step++) {
      double half = (low + high) / 2;
      if (best - mean(others, -half) < gap) {
        low = half;
      } else {
        high = half;
      }
    }
    double worst = -(low + high) / 2;
    double[] effects = new double[stocks];
    for (int k = 0; k < stocks; k++) {
      effects[k] = pattern == Pattern.ONE_BAD ? (k == 1 ? worst : 0) : worst * k / (stocks - 1.0);
    }
    return effects;
  }

  private static double mean(double[] others, double effect) {
    return Arrays.stream(others).map(other -> logistic(other + effect)).average().orElseThrow();
  }

  private static double logistic(double x) {
    return 1 / (1 + Math.exp(-x));
  }

  private Cells cells(int[][] codes, int[] takes) {
    List<String> names = List.of("cultivar", "rootstock", "grafter", "grafting_day", "bud_stage");
    int[] sizes = {CULTIVARS, stocks, GRAFTERS, days(), 2};
    List<Factor> factors = new ArrayList<>();
    for (int f = 0; f < names.size(); f++) {
      String name = names.get(f);
      List<String> levels =
          IntStream.range(0, sizes[f]).mapToObj(k -> name + " " + (k + 1)).toList();
      factors.add(new Factor(name, levels, codes[f]));
    }
    int[] ones = new int[grafts];
    Arrays.fill(ones, 1);
    return new Cells(factors, List.of(), ones, takes, 0, Provenance.of("simulated", grafts));
  }
}
