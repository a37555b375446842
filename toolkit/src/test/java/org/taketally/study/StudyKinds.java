package org.taketally.study;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/** The kinds of trial the verdict is tried on. Margin of all: {@value #MARGIN}. */
final class StudyKinds {

  static final double MARGIN = 0.10;

  private static final long SEEDS_APART = 1_000_000;

  private final List<StudyKind> kinds = new ArrayList<>();

  private StudyKinds() {}

  static List<StudyKind> all() {
    StudyKinds study = new StudyKinds();
    study.confounded();
    study.fewGroups();
    study.scatter();
    study.seasons();
    study.manyStocks();
    study.cultivars();
    study.results();
    study.plain();
    return List.copyOf(study.kinds);
  }

  private void add(String name, String says, Supplier<TrialDesign> design) {
    kinds.add(new StudyKind(name, says, design, SEEDS_APART * (kinds.size() + 1)));
  }

  /** The same with stocks alike, and with the second stock the margin worse. */
  private void alikeAndAtMargin(String name, String says, Supplier<TrialDesign> design) {
    add(name + " alike", says, design);
    add(name + " at margin", says, () -> design.get().worse(1, MARGIN));
  }

  private void confounded() {
    Supplier<TrialDesign> days =
        () ->
            new TrialDesign(2)
                .grafts(1200)
                .days(60, 0.6)
                .stock((t, i, r) -> r.nextDouble() < (t.badDay(i) ? 0.8 : 0.2) ? 1 : 0);
    alikeAndAtMargin(
        "bad-days", "one of 2 stocks used on 80 % of the bad of 60 days (SD 0.6)", days);
    add(
        "bad-days hidden",
        "the same, the stock used on bad days truly 10 points better",
        () -> days.get().worse(0, MARGIN));
    Supplier<TrialDesign> hands =
        () ->
            new TrialDesign(2)
                .grafts(1200)
                .hands(8, 0.6)
                .stock((t, i, r) -> r.nextDouble() < (t.poorHand(i) ? 0.8 : 0.2) ? 1 : 0);
    add("poor-hands alike", "one of 2 stocks given to the poorer of 8 hands (SD 0.6)", hands);
    add(
        "poor-hands hidden",
        "the same, that stock truly 10 points better",
        () -> hands.get().worse(0, MARGIN));
    Supplier<TrialDesign> late =
        () ->
            new TrialDesign(2)
                .grafts(1200)
                .seasons(4, 0.5, 0)
                .stock((t, i, r) -> r.nextDouble() < 0.2 + 0.2 * t.season(i) ? 1 : 0);
    alikeAndAtMargin("late-stock", "a new stock used more each of 4 seasons (SD 0.5)", late);
  }

  private void fewGroups() {
    Supplier<TrialDesign> beds =
        () ->
            new TrialDesign(2).grafts(800).beds(6, 0.4, (t, i, r) -> 3 * t.stock(i) + r.nextInt(3));
    alikeAndAtMargin("beds-3", "2 stocks in 3 beds each (SD 0.4)", beds);
    add("beds-3 twice", "2 stocks in 3 beds each (SD 0.4)", () -> beds.get().worse(1, 2 * MARGIN));
    alikeAndAtMargin(
        "beds-20",
        "2 stocks in 20 beds each (SD 0.4)",
        () ->
            new TrialDesign(2)
                .grafts(1600)
                .beds(40, 0.4, (t, i, r) -> 20 * t.stock(i) + r.nextInt(20)));
    alikeAndAtMargin(
        "day-each",
        "4 stocks, one a day, 8 days (SD 0.4)",
        () -> new TrialDesign(4).days(8, 0.4).stock((t, i, r) -> t.day(i) % 4));
    alikeAndAtMargin(
        "crossover",
        "2 stocks swapped between 4 hands (SD 0.5) from one of 8 days (SD 0.5) to the next",
        () ->
            new TrialDesign(2)
                .days(8, 0.5)
                .hands(4, 0.5)
                .stock((t, i, r) -> (t.day(i) + t.hand(i)) % 2));
    alikeAndAtMargin(
        "days-3",
        "2 stocks on each of 3 days (SD 0.5) by 3 hands",
        () -> new TrialDesign(2).days(3, 0.5).hands(3, 0.4));
  }

  private void scatter() {
    alikeAndAtMargin(
        "rows-20",
        "2 stocks in rows of 20 grafts with scatter (SD 0.7)",
        () -> new TrialDesign(2).grafts(1600).days(20, 0.3).rows(20, 0.7));
    alikeAndAtMargin(
        "rows-5",
        "4 stocks in rows of 5 grafts with scatter (SD 0.7)",
        () -> new TrialDesign(4).grafts(1600).days(40, 0.3).rows(5, 0.7));
  }

  private void seasons() {
    alikeAndAtMargin(
        "by-season",
        "2 stocks that differ from season to season (SD 0.4), 4 seasons",
        () -> new TrialDesign(2).grafts(1600).seasons(4, 0.3, 0.4));
    alikeAndAtMargin(
        "by-season-8",
        "3 stocks that differ from season to season (SD 0.4), 8 seasons",
        () -> new TrialDesign(3).grafts(2400).seasons(8, 0.3, 0.4));
  }

  private void manyStocks() {
    alikeAndAtMargin(
        "stocks-12", "12 stocks", () -> new TrialDesign(12).grafts(2400).days(40, 0.3));
    add(
        "stocks-12 twice",
        "12 stocks",
        () -> new TrialDesign(12).grafts(2400).days(40, 0.3).worse(1, 2 * MARGIN));
    add(
        "stocks-6 steps",
        "6 stocks spaced evenly to the margin",
        () -> new TrialDesign(6).grafts(2400).steps(MARGIN));
  }

  private void cultivars() {
    double[] apart = {0.9, 1.2, 1.5, 1.8, 0.9, 1.6};
    add(
        "opposite",
        "12 cultivars 18 to 36 points apart between 2 stocks, in opposite directions",
        () ->
            new TrialDesign(2)
                .grafts(1440)
                .cultivars(12, 0.4)
                .pairing((c, k, r) -> (c % 2 == 0 ? 1 : -1) * (k - 0.5) * apart[c / 2]));
    alikeAndAtMargin(
        "pairings",
        "3 stocks, pairings differ (SD 0.3)",
        () ->
            new TrialDesign(3)
                .grafts(1600)
                .cultivars(8, 0.6)
                .pairing((c, k, r) -> 0.3 * r.nextGaussian()));
    alikeAndAtMargin(
        "missing",
        "4 stocks, half of the pairings never made, pairings differ (SD 0.3)",
        () ->
            new TrialDesign(4)
                .grafts(1600)
                .cultivars(12, 0.6)
                .pairing((c, k, r) -> 0.3 * r.nextGaussian())
                .stock((t, i, r) -> (t.cultivar(i) + (r.nextBoolean() ? 1 : 0)) % 4));
  }

  private void results() {
    add(
        "unassessed alike",
        "2 stocks, a third of the failures of one unassessed, 3 % of the other's",
        () -> new TrialDesign(2).grafts(1600).lost(0, 0.03).lost(1, 0.33));
    add(
        "unassessed hidden",
        "the same, that stock truly 10 points worse",
        () -> new TrialDesign(2).grafts(1600).lost(0, 0.03).lost(1, 0.33).worse(1, MARGIN));
    alikeAndAtMargin(
        "take-90", "2 stocks, take near 90 %", () -> new TrialDesign(2).middle(2.9).grafts(1000));
    alikeAndAtMargin(
        "take-10", "2 stocks, take near 15 %", () -> new TrialDesign(2).middle(-1.8).grafts(1000));
  }

  /** Those of the first study: bud stage adjusted for, cultivar, hand and day varying. */
  private void plain() {
    int[][] even = {{2, 300}, {2, 800}, {4, 300}, {4, 800}, {4, 2500}};
    for (int[] size : even) {
      gaps("plain-%d-%d".formatted(size[0], size[1]), "drawn by lot", size, Layouts.LOT);
    }
    int[][] uneven = {{4, 300}, {4, 800}, {6, 2500}};
    for (int[] size : uneven) {
      gaps(
          "uneven-%d-%d".formatted(size[0], size[1]),
          "commonest stock ten times the rarest, cultivars with hands",
          size,
          Layouts.UNEVEN);
    }
    gaps("daily-4-800", "one stock a day", new int[] {4, 800}, Layouts.DAILY);
  }

  private enum Layouts {
    LOT,
    UNEVEN,
    DAILY
  }

  private void gaps(String name, String says, int[] size, Layouts layout) {
    String text = "%d stocks, %d grafts, %s".formatted(size[0], size[1], says);
    String[] words = {"alike", "half", "at margin", "twice"};
    double[] gap = {0, MARGIN / 2, MARGIN, 2 * MARGIN};
    for (int g = 0; g < gap.length; g++) {
      double below = gap[g];
      add(name + " " + words[g], text, () -> laid(plainDesign(size).worse(1, below), layout));
    }
  }

  private static TrialDesign plainDesign(int[] size) {
    return new TrialDesign(size[0]).grafts(size[1]).cultivars(8, 0.6).hands(4, 0.3).buds(-0.5);
  }

  private static TrialDesign laid(TrialDesign design, Layouts layout) {
    int stocks = design.stocks;
    return switch (layout) {
      case LOT -> design;
      case DAILY -> design.stock((t, i, r) -> t.day(i) % stocks);
      case UNEVEN ->
          design
              .hand((t, i, r) -> r.nextDouble() < 0.6 ? t.cultivar(i) % 4 : r.nextInt(4))
              .stock((t, i, r) -> rare(stocks, r.nextDouble()));
    };
  }

  /** Weights falling geometrically from 1 for the first stock to 1/10 for the last. */
  private static int rare(int stocks, double share) {
    double[] weight =
        IntStream.range(0, stocks).mapToDouble(k -> Math.pow(0.1, k / (stocks - 1.0))).toArray();
    double at = share * IntStream.range(0, stocks).mapToDouble(k -> weight[k]).sum();
    int stock = 0;
    while (stock < stocks - 1 && at >= weight[stock]) {
      at -= weight[stock];
      stock++;
    }
    return stock;
  }
}
