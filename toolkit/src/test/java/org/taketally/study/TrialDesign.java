package org.taketally.study;

import java.util.Arrays;
import java.util.Random;
import java.util.SplittableRandom;

/**
 * A trial of known truth, in the making: who grafts what on which stock, when and where, and by how
 * much each circumstance moves take.
 *
 * <p>Unless told otherwise: 5 cultivars (standard deviation 0.6 logits), 3 hands (0.3), a day for
 * every 40 grafts (0.3), one graft a row, each graft's stock drawn by lot, about 69 % taking.
 */
final class TrialDesign {

  /** Draws or works out the stock of a row. */
  @FunctionalInterface
  interface StockChoice {
    /**
     * The stock.
     *
     * @param trial what is known of the row so far: season, day, hand, cultivar
     * @param row its place
     * @param random seeded
     * @return a stock, 0 to the number of stocks less 1
     */
    int stock(TrialRows trial, int row, Random random);
  }

  /** Draws or works out another column of a row, when the stock is known. */
  @FunctionalInterface
  interface Choice {
    /**
     * The level.
     *
     * @param trial what is known of the row so far
     * @param row its place
     * @param random seeded
     * @return a level, from 0
     */
    int level(TrialRows trial, int row, Random random);
  }

  /** Logits by which a stock does better with a cultivar than on average. */
  @FunctionalInterface
  interface PairingEffect {
    /**
     * The effect.
     *
     * @param cultivar from 0
     * @param stock from 0
     * @param random seeded; called once a pairing
     * @return logits
     */
    double logits(int cultivar, int stock, Random random);
  }

  final int stocks;
  int grafts = 800;
  int perRow = 1;
  double rowSd;
  double middle = 0.8;
  int cultivars = 5;
  double cultivarSd = 0.6;
  int hands = 3;
  double handSd = 0.3;
  int seasons = 1;
  double seasonSd;
  double stockBySeasonSd;
  int days;
  double daySd = 0.3;
  int beds;
  double bedSd;
  double budEffect;
  StockChoice stock;
  Choice bed = (trial, row, random) -> 0;
  Choice hand;
  PairingEffect pairing = (cultivar, stock, random) -> 0;
  double[] below;
  double[] lostWhenFailed;

  TrialDesign(int stocks) {
    this.stocks = stocks;
    this.stock = (trial, row, random) -> random.nextInt(stocks);
    this.hand = (trial, row, random) -> random.nextInt(hands);
    this.below = new double[stocks];
    this.lostWhenFailed = new double[stocks];
  }

  TrialDesign grafts(int count) {
    grafts = count;
    return this;
  }

  /** Rows of several grafts, each row with luck of its own. */
  TrialDesign rows(int graftsPerRow, double sd) {
    perRow = graftsPerRow;
    rowSd = sd;
    return this;
  }

  /** Logit of take of an ordinary graft on swelling buds. */
  TrialDesign middle(double logit) {
    middle = logit;
    return this;
  }

  TrialDesign cultivars(int count, double sd) {
    cultivars = count;
    cultivarSd = sd;
    return this;
  }

  TrialDesign hands(int count, double sd) {
    hands = count;
    handSd = sd;
    return this;
  }

  /** Half of the grafts on dormant buds, by lot, which take differently by so many logits. */
  TrialDesign buds(double effect) {
    budEffect = effect;
    return this;
  }

  TrialDesign hand(Choice choice) {
    hand = choice;
    return this;
  }

  TrialDesign seasons(int count, double sd, double stockBySeason) {
    seasons = count;
    seasonSd = sd;
    stockBySeasonSd = stockBySeason;
    return this;
  }

  TrialDesign days(int count, double sd) {
    days = count;
    daySd = sd;
    return this;
  }

  TrialDesign beds(int count, double sd, Choice choice) {
    beds = count;
    bedSd = sd;
    bed = choice;
    return this;
  }

  TrialDesign stock(StockChoice choice) {
    stock = choice;
    return this;
  }

  TrialDesign pairing(PairingEffect effect) {
    pairing = effect;
    return this;
  }

  /** One stock takes so much less than all others, on average over the rows, 0 to 1. */
  TrialDesign worse(int which, double gap) {
    below[which] = gap;
    return this;
  }

  /** Stocks spaced evenly from best to worst. */
  TrialDesign steps(double gap) {
    Arrays.setAll(below, k -> gap * k / (stocks - 1));
    return this;
  }

  /** Share of a stock's failed grafts whose label is lost, so that they count as unassessed. */
  TrialDesign lost(int which, double share) {
    lostWhenFailed[which] = share;
    return this;
  }

  int dayCount() {
    return days > 0 ? days : Math.max(3 * stocks, grafts / 40);
  }

  /** Largest true difference between two stocks, 0 to 1. */
  double gap() {
    return Arrays.stream(below).max().orElse(0) - Arrays.stream(below).min().orElse(0);
  }

  TrialRows make(long seed) {
    return new TrialRows(this, new Random(new SplittableRandom(seed).nextLong()));
  }
}
