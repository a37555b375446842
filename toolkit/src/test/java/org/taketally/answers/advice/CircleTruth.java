package org.taketally.answers.advice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.terms.Provenance;

/**
 * A circle's grafts made from a known truth, seeded, and whether advice would do harm under it.
 * Hands, days and cultivars differ; what else matters, and who used what, is the kind.
 */
final class CircleTruth {

  /** What is true, and how records came about. */
  enum Kind {
    /** No choice matters at all; grafts are few. */
    NOTHING_MATTERS_FEW(160),
    /** No choice matters at all. */
    NOTHING_MATTERS(700),
    /** No choice matters; a novice did nearly all grafts on one stock, by one method. */
    NOVICE_ON_ONE_STOCK(500),
    /** No choice matters; each day had one stock, and days differ a lot. */
    ONE_STOCK_A_DAY(600),
    /** No choice matters; old wood was mostly grafted by the novice. */
    NOVICE_WITH_OLD_WOOD(500),
    /** One stock of three is better than the others. */
    ONE_STOCK_BETTER(600),
    /** One stock of three is worse; wood loses from the fourth day on, slowly: grafts are many. */
    ONE_STOCK_WORSE_AND_OLD_WOOD(1800),
    /** Take rises a little while wood is stored. */
    WOOD_IMPROVES(600),
    /** No choice matters; the novice cut mostly dormant wood, the others swelling. */
    NOVICE_WITH_DORMANT_WOOD(500),
    /** No choice matters; dormant wood came mostly on bad days. */
    DORMANT_WOOD_ON_BAD_DAYS(700),
    /** No choice matters; old wood was mostly grafted on bad days. */
    OLD_WOOD_ON_BAD_DAYS(700),
    /** No choice matters; a bad season was grafted mostly on one stock and by one method. */
    ONE_STOCK_IN_A_BAD_SEASON(700),
    /** Dormant wood is better, but the novice used it mostly: counts alone say the reverse. */
    NOVICE_WITH_THE_BETTER_WOOD(900),
    /** No choice matters; nine in ten take. */
    NOTHING_MATTERS_HIGH_TAKE(700);

    final int grafts;

    Kind(int grafts) {
      this.grafts = grafts;
    }
  }

  private static final int DAYS = 24;
  private static final int SEASONS = 3;
  private static final List<String> COLUMNS =
      List.of("cultivar", "rootstock", "grafter", "grafting_day", "method", "bud_stage", "season");
  private static final int[] SIZES = {8, 3, 5, DAYS, 2, 2, SEASONS};
  private static final int STOCK = 1;
  private static final int HAND = 2;
  private static final int DAY = 3;
  private static final int METHOD = 4;
  private static final int BUDS = 5;
  private static final int SEASON = 6;

  private final Kind kind;
  private final Random random;
  private final int[][] codes;
  private final double[] days;

  CircleTruth(Kind kind, long seed) {
    this.kind = kind;
    this.random = new Random(seed * 0x9E3779B97F4A7C15L); // neighbouring seeds are alike
    this.codes = new int[COLUMNS.size()][kind.grafts];
    this.days = new double[kind.grafts];
    for (int i = 0; i < kind.grafts; i++) {
      draw(i);
    }
  }

  private void draw(int i) {
    for (int c = 0; c < SIZES.length; c++) {
      codes[c][i] = random.nextInt(SIZES[c]);
    }
    days[i] = random.nextInt(12);
    codes[SEASON][i] = codes[DAY][i] / (DAYS / SEASONS);
    boolean novice = codes[HAND][i] == 0;
    boolean badDay = codes[DAY][i] % 2 == 0;
    boolean habit = random.nextInt(10) > 0;
    boolean mostly = random.nextInt(10) > 1;
    switch (kind) {
      case NOVICE_ON_ONE_STOCK -> {
        if (habit) {
          codes[STOCK][i] = novice ? 0 : 1 + random.nextInt(2);
          codes[METHOD][i] = novice ? 0 : 1;
        }
      }
      case ONE_STOCK_A_DAY -> codes[STOCK][i] = codes[DAY][i] % 3;
      case NOVICE_WITH_OLD_WOOD -> {
        if (habit) {
          days[i] = novice ? 6 + random.nextInt(6) : random.nextInt(6);
        }
      }
      case NOVICE_WITH_DORMANT_WOOD, NOVICE_WITH_THE_BETTER_WOOD -> {
        codes[BUDS][i] = habit == novice ? 0 : 1;
      }
      case DORMANT_WOOD_ON_BAD_DAYS -> codes[BUDS][i] = mostly == badDay ? 0 : 1;
      case OLD_WOOD_ON_BAD_DAYS -> {
        if (mostly) {
          days[i] = badDay ? 6 + random.nextInt(6) : random.nextInt(6);
        }
      }
      case ONE_STOCK_IN_A_BAD_SEASON -> {
        if (mostly) {
          boolean bad = codes[SEASON][i] == 0;
          codes[STOCK][i] = bad ? 0 : 1 + random.nextInt(2);
          codes[METHOD][i] = bad ? 0 : 1;
        }
      }
      default -> {}
    }
  }

  /** Logits of one choice's levels, apart from those of cultivar, hand and day. */
  private double[] effects(int column) {
    if (column == STOCK && kind == Kind.ONE_STOCK_BETTER) {
      return new double[] {0.9, 0, 0};
    }
    if (column == STOCK && kind == Kind.ONE_STOCK_WORSE_AND_OLD_WOOD) {
      return new double[] {-1, 0, 0};
    }
    if (column == BUDS && kind == Kind.NOVICE_WITH_THE_BETTER_WOOD) {
      return new double[] {0.7, 0};
    }
    return new double[SIZES[column]];
  }

  /** Logits of each day: every other one, and a whole season, is bad where the kind says so. */
  private double[] ofDays() {
    double[] days = spread(DAYS, kind == Kind.ONE_STOCK_A_DAY ? 0.8 : 0.3);
    for (int day = 0; day < DAYS; day++) {
      boolean bad =
          switch (kind) {
            case DORMANT_WOOD_ON_BAD_DAYS, OLD_WOOD_ON_BAD_DAYS -> day % 2 == 0;
            case ONE_STOCK_IN_A_BAD_SEASON -> day < DAYS / SEASONS;
            default -> false;
          };
      days[day] -= bad ? 1 : 0;
    }
    return days;
  }

  private double ofDays(double value) {
    return switch (kind) {
      case ONE_STOCK_WORSE_AND_OLD_WOOD -> -0.2 * Math.max(0, value - 4);
      case WOOD_IMPROVES -> 0.08 * value;
      default -> 0;
    };
  }

  Cells cells() {
    double[] logits = new double[kind.grafts];
    Arrays.fill(logits, kind == Kind.NOTHING_MATTERS_HIGH_TAKE ? 2.3 : 0.4);
    double[] cultivars = spread(SIZES[0], 0.6);
    double[] hands = spread(SIZES[HAND], 0.3);
    hands[0] -= 1.2;
    List<double[]> effects =
        List.of(
            cultivars,
            effects(STOCK),
            hands,
            ofDays(),
            effects(METHOD),
            effects(BUDS),
            effects(SEASON));
    int[] takes = new int[kind.grafts];
    for (int i = 0; i < kind.grafts; i++) {
      for (int c = 0; c < SIZES.length; c++) {
        logits[i] += effects.get(c)[codes[c][i]];
      }
      double take = 1 / (1 + Math.exp(-logits[i] - ofDays(days[i])));
      takes[i] = random.nextDouble() < take ? 1 : 0;
    }
    int[] grafts = new int[kind.grafts];
    Arrays.fill(grafts, 1);
    List<Factor> factors = new ArrayList<>();
    for (int c = 0; c < SIZES.length; c++) {
      factors.add(new Factor(COLUMNS.get(c), names(COLUMNS.get(c), SIZES[c]), codes[c]));
    }
    Provenance made = Provenance.of("simulated", kind.grafts);
    return new Cells(factors, List.of(new Measure("storage_days", days)), grafts, takes, 0, made);
  }

  private double[] spread(int size, double sd) {
    double[] effects = new double[size];
    Arrays.setAll(effects, k -> sd * random.nextGaussian());
    return effects;
  }

  private static List<String> names(String column, int size) {
    List<String> names = new ArrayList<>();
    for (int k = 0; k < size; k++) {
      names.add("%s-%02d".formatted(column, k));
    }
    return names;
  }

  /** Whether following the advice would gain nothing, or lose. */
  boolean isWrong(Advice advice) {
    if (advice instanceof Advice.UseWithin use) {
      return ofDays(use.within()) <= ofDays(use.beyond());
    }
    if (advice instanceof Advice.PreferLevels prefer) {
      Map<String, Double> truth = truth(prefer.factor());
      return prefer.rather().stream()
          .anyMatch(r -> prefer.than().stream().anyMatch(t -> truth.get(r) <= truth.get(t)));
    }
    return false; // hands do differ in every kind
  }

  private Map<String, Double> truth(String factor) {
    int column = COLUMNS.indexOf(factor);
    Map<String, Double> truth = new HashMap<>();
    List<String> names = names(factor, SIZES[column]);
    for (int k = 0; k < names.size(); k++) {
      truth.put(names.get(k), effects(column)[k]);
    }
    return truth;
  }
}
