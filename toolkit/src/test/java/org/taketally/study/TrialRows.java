package org.taketally.study;

import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * One simulated trial: its rows, and the true take of each stock averaged over them. True takes are
 * those of an average season: what single seasons add to a stock averages out.
 */
final class TrialRows {

  private static final String HEADER =
      "record,season,site,block,grafter,cultivar,rootstock,bud_stage,graft_date,grafts,takes,outcome\n";

  private final TrialDesign design;
  private final int rows;
  private final int[] season;
  private final int[] day;
  private final int[] hand;
  private final int[] cultivar;
  private final int[] bud;
  private final int[] stock;
  private final int[] bed;
  private final double[] seasonEffect;
  private final double[] dayEffect;
  private final double[] handEffect;
  private final double[] others;
  private final double[][] pairing;
  private final double[][] bySeason;
  private final double[] takes;
  private final double[][] takesByCultivar;
  private final int[] taken;
  private final int[] lost;

  TrialRows(TrialDesign design, Random random) {
    this.design = design;
    this.rows = design.grafts / design.perRow;
    this.seasonEffect = normal(random, design.seasons, design.seasonSd);
    this.dayEffect = normal(random, design.dayCount(), design.daySd);
    this.handEffect = normal(random, design.hands, design.handSd);
    double[] cultivarEffect = normal(random, design.cultivars, design.cultivarSd);
    double[] bedEffect = normal(random, Math.max(1, design.beds), design.bedSd);
    this.day = new int[rows];
    this.season = new int[rows];
    this.hand = new int[rows];
    this.cultivar = new int[rows];
    this.bud = new int[rows];
    this.stock = new int[rows];
    this.bed = new int[rows];
    this.others = new double[rows];
    for (int i = 0; i < rows; i++) {
      day[i] = (int) ((long) i * dayEffect.length / rows);
      season[i] = day[i] * design.seasons / dayEffect.length;
      cultivar[i] = random.nextInt(design.cultivars);
      hand[i] = design.hand.level(this, i, random);
      bud[i] = random.nextInt(2);
      stock[i] = design.stock.stock(this, i, random);
      bed[i] = design.bed.level(this, i, random);
      others[i] =
          design.middle
              + cultivarEffect[cultivar[i]]
              + handEffect[hand[i]]
              + seasonEffect[season[i]]
              + dayEffect[day[i]]
              + bedEffect[bed[i]]
              + bud[i] * design.budEffect
              + design.rowSd * random.nextGaussian();
    }
    this.pairing = new double[design.cultivars][design.stocks];
    this.bySeason = new double[design.seasons][design.stocks];
    for (int k = 0; k < design.stocks; k++) {
      for (int c = 0; c < design.cultivars; c++) {
        pairing[c][k] = design.pairing.logits(c, k, random);
      }
      for (int s = 0; s < design.seasons; s++) {
        bySeason[s][k] = design.stockBySeasonSd * random.nextGaussian();
      }
    }
    double[] stockEffect = stockEffects();
    this.takes = new double[design.stocks];
    Arrays.setAll(takes, k -> mean(k, stockEffect[k]));
    this.takesByCultivar = new double[design.cultivars][design.stocks];
    for (int c = 0; c < design.cultivars; c++) {
      for (int k = 0; k < design.stocks; k++) {
        takesByCultivar[c][k] = mean(c, k, stockEffect[k]);
      }
    }
    this.taken = new int[rows];
    this.lost = new int[rows];
    for (int i = 0; i < rows; i++) {
      int k = stock[i];
      double logit = others[i] + pairing[cultivar[i]][k] + bySeason[season[i]][k] + stockEffect[k];
      graft(i, logistic(logit), random);
    }
  }

  private void graft(int row, double take, Random random) {
    for (int g = 0; g < design.perRow; g++) {
      if (random.nextDouble() < take) {
        taken[row]++;
      } else if (random.nextDouble() < design.lostWhenFailed[stock[row]]) {
        lost[row]++;
      }
    }
  }

  /** Logits such that takes over all rows are those of the best stock less what is asked for. */
  private double[] stockEffects() {
    double[] effects = new double[design.stocks];
    double best = mean(i -> others[i]);
    for (int k = 0; k < effects.length; k++) {
      double low = -8;
      double high = 8;
      for (int step = 0; step < 60; step++) {
        double half = (low + high) / 2;
        if (mean(k, half) < best - design.below[k]) {
          low = half;
        } else {
          high = half;
        }
      }
      effects[k] = (low + high) / 2;
    }
    return effects;
  }

  private double mean(int k, double effect) {
    return mean(i -> others[i] + pairing[cultivar[i]][k] + effect);
  }

  /** Over the rows of one cultivar. */
  private double mean(int c, int k, double effect) {
    return IntStream.range(0, rows)
        .filter(i -> cultivar[i] == c)
        .mapToDouble(i -> logistic(others[i] + pairing[c][k] + effect))
        .average()
        .orElse(0);
  }

  private double mean(IntToDoubleFunction logit) {
    double sum = 0;
    for (int i = 0; i < rows; i++) {
      sum += logistic(logit.applyAsDouble(i));
    }
    return sum / rows;
  }

  private static double[] normal(Random random, int count, double sd) {
    double[] effects = new double[count];
    Arrays.setAll(effects, k -> sd * random.nextGaussian());
    return effects;
  }

  private static double logistic(double x) {
    return 1 / (1 + Math.exp(-x));
  }

  /** True take of each stock over the trial's own mix in an average season, 0 to 1. */
  double[] takes() {
    return takes.clone();
  }

  /** Whether some two stocks truly lie the margin apart on single cultivars, in both directions. */
  boolean dependsOnCultivar(double margin) {
    for (int a = 0; a < takes.length; a++) {
      for (int b = 0; b < a; b++) {
        boolean more = false;
        boolean less = false;
        for (double[] cultivarTakes : takesByCultivar) {
          more |= cultivarTakes[a] - cultivarTakes[b] >= margin;
          less |= cultivarTakes[b] - cultivarTakes[a] >= margin;
        }
        if (more && less) {
          return true;
        }
      }
    }
    return false;
  }

  int cultivar(int row) {
    return cultivar[row];
  }

  int day(int row) {
    return day[row];
  }

  int season(int row) {
    return season[row];
  }

  int hand(int row) {
    return hand[row];
  }

  int stock(int row) {
    return stock[row];
  }

  boolean badDay(int row) {
    return dayEffect[day[row]] < 0;
  }

  boolean poorHand(int row) {
    return handEffect[hand[row]] < 0;
  }

  static String stockName(int k) {
    return "Stock " + (char) ('A' + k);
  }

  /** The stock a name stands for. */
  static int stockOf(String name) {
    return name.charAt(name.length() - 1) - 'A';
  }

  /** The sheet as a grower would keep it. */
  String csv() {
    StringBuilder text = new StringBuilder(HEADER);
    for (int i = 0; i < rows; i++) {
      int year = 2020 + season[i];
      int inSeason = day[i] - firstDay(season[i]);
      text.append("R%05d,%d,Home,".formatted(i + 1, year))
          .append(design.beds > 0 ? "Bed " + (bed[i] + 1) : "")
          .append(
              ",Hand %s,Cultivar %c,%s,"
                  .formatted(hand[i] + 1, 'A' + cultivar[i], stockName(stock[i])))
          .append(design.budEffect == 0 ? "" : bud[i] == 0 ? "swelling" : "dormant")
          .append(
              String.format(
                  Locale.ROOT, ",%d-%02d-%02d,", year, 1 + inSeason / 28, 1 + inSeason % 28));
      result(text, i);
    }
    return text.toString();
  }

  private int firstDay(int aSeason) {
    return (aSeason * dayEffect.length + design.seasons - 1) / design.seasons;
  }

  private void result(StringBuilder text, int row) {
    if (design.perRow > 1) {
      text.append("%d,%d,\n".formatted(design.perRow - lost[row], taken[row]));
    } else if (lost[row] > 0) {
      text.append("1,,unassessed\n");
    } else {
      text.append("1,%d,\n".formatted(taken[row]));
    }
  }
}
