package org.taketally.figure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Condition;
import org.taketally.answers.Estimate;
import org.taketally.answers.checks.FitChecks;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounts;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Importance;
import org.taketally.answers.effects.FactorImportance.Kind;
import org.taketally.answers.effects.Grafters;
import org.taketally.answers.effects.Grafters.GrafterTake;
import org.taketally.answers.effects.Pairings;
import org.taketally.answers.effects.Pairings.Pairing;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.survival.CountedRow;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.survival.LateLossCalculator;
import org.taketally.answers.verdict.Contrast;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdict.LevelTake;
import org.taketally.answers.verdict.FactorVerdict.Pair;
import org.taketally.answers.verdict.PlannedContrasts;
import org.taketally.answers.verdict.RootstockVerdict;
import org.taketally.answers.verdict.Verdict;
import org.taketally.terms.Interval;

/** Answers made up by hand, so that figures and pages can be tested without a fit. */
public final class SampleAnswers {

  static final AnswerOptions OPTIONS = AnswerOptions.defaults();
  private static final List<String> NAMES =
      List.of("Orrin", "Tamsel", "Vardy", "Wick & Lowe", "Pell <dwarf>", "Skerry", "Brannock");

  private SampleAnswers() {}

  /** A value with a range of {@code half} on both sides, inside 0 to 1. */
  static Estimate take(double value, double half) {
    return new Estimate(
        value, new Interval(Math.max(0, value - half), Math.min(1, value + half), 0.95));
  }

  private static TakeCount counted(long grafts, long takes) {
    return new TakeCount(takes, grafts);
  }

  private static TakeCount sum(TakeCount some, TakeCount more) {
    return counted(some.grafts() + more.grafts(), some.takes() + more.takes());
  }

  static Estimate difference(double value, double half) {
    return new Estimate(value, new Interval(value - half, value + half, 0.95));
  }

  /** So many cultivars, evenly from hard to easy. */
  public static Difficulty difficulty(int cultivars) {
    List<CultivarTake> takes =
        IntStream.range(0, cultivars).mapToObj(i -> cultivar(i, cultivars)).toList();
    long grafts = takes.stream().mapToLong(c -> c.tally().grafts()).sum();
    long taken = takes.stream().mapToLong(c -> c.tally().takes()).sum();
    return new Difficulty(
        takes,
        List.of(Condition.level("method", "cleft")),
        counted(grafts, taken),
        Optional.empty(),
        OPTIONS);
  }

  /** Cultivars whose names have forty letters each, wide ones. */
  public static Difficulty longNames(int cultivars) {
    Difficulty usual = difficulty(cultivars);
    List<CultivarTake> takes =
        IntStream.range(0, cultivars)
            .mapToObj(
                i -> {
                  CultivarTake c = usual.cultivars().get(i);
                  String name = "Wommaway Mammoth of the Lower Harbour %03d".formatted(i);
                  return new CultivarTake(
                      name.substring(name.length() - 40),
                      c.tally(),
                      c.counted(),
                      c.standardTake(),
                      c.take(),
                      c.drawnIn(),
                      c.rank(),
                      c.probabilityHardestQuarter(),
                      c.band());
                })
            .toList();
    return new Difficulty(takes, usual.standard(), usual.tally(), Optional.empty(), OPTIONS);
  }

  private static CultivarTake cultivar(int i, int of) {
    String name = NAMES.get(i % NAMES.size()) + (i < NAMES.size() ? "" : " " + i / NAMES.size());
    double value = 0.28 + 0.64 * i / Math.max(1, of - 1);
    long grafts = 20 + 37L * (i % 5);
    long takes = Math.round(grafts * Math.min(1, value + (i % 2 == 0 ? 0.06 : -0.05)));
    Band band = value < 0.45 ? Band.HARD : value < 0.7 ? Band.MIDDLING : Band.EASY;
    Estimate take = take(value, 0.16 - 0.02 * (i % 5));
    return new CultivarTake(
        name,
        counted(grafts, takes),
        take(value, 0.15).interval(),
        take,
        take,
        0.2,
        new Estimate(i + 1.0, new Interval(i + 1.0, i + 2.0, 0.95)),
        i < of / 4 ? 0.9 : 0.1,
        i % 6 == 3 ? Band.CANT_TELL : band);
  }

  /** Rootstocks of which none matters, or of which the last is bad. */
  public static RootstockVerdict rootstock(boolean oneBad) {
    List<String> names = List.of("Halden seedling", "Fenwick clonal", "Marl 3", "Ossery seedling");
    double[] takes = {0.70, 0.69, 0.71, oneBad ? 0.41 : 0.70};
    List<LevelTake> levels = new ArrayList<>();
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      long grafts = 300 - 60L * i;
      TakeCount tally = counted(grafts, Math.round(grafts * takes[i]));
      Estimate take = take(takes[i], 0.05);
      levels.add(
          new LevelTake(names.get(i), tally, take.interval(), Optional.of(take), oneBad && i == 3));
      for (int j = 0; j < i; j++) {
        pairs.add(pair(names, takes, j, i));
      }
    }
    return verdict(oneBad, levels, pairs);
  }

  private static Pair pair(List<String> names, double[] takes, int i, int j) {
    double value = takes[i] - takes[j];
    Interval alone = new Interval(value - 0.035 - 0.015 * j, value + 0.035 + 0.015 * j, 0.90);
    boolean equivalent = new Interval(-0.1, 0.1, 0.9).contains(alone);
    double chance = Math.abs(value) > 0.1 ? 0.99 : 0.02;
    Estimate likely = difference(value, 0.06 + 0.02 * j);
    return new Pair(
        names.get(i), names.get(j), likely, likely.interval(), alone, equivalent, chance);
  }

  private static RootstockVerdict verdict(
      boolean oneBad, List<LevelTake> levels, List<Pair> pairs) {
    TakeCount tally =
        levels.stream().map(LevelTake::tally).reduce(SampleAnswers::sum).orElseThrow();
    FactorVerdict.Size size =
        new FactorVerdict.Size(
            take(0.1, 0.08), take(oneBad ? 0.30 : 0.02, 0.06), oneBad ? 0.01 : 0.97, pairs);
    FactorVerdict type =
        new FactorVerdict(
            "rootstock",
            oneBad ? Verdict.MATTERS : Verdict.NO_PRACTICAL_DIFFERENCE,
            levels,
            Optional.of(size),
            List.of(
                new FactorVerdict.Test(
                    FactorVerdict.TestQuestion.ANY_DIFFERENCE,
                    FactorVerdict.TestMethod.ALL_PAIRS_AT_ONCE,
                    0,
                    3.1,
                    3,
                    0.38)),
            Optional.of(new FactorVerdict.Detectable(0.06, 0.08, OptionalLong.empty())),
            new Confounding("rootstock", List.of(), 0.93, List.of(), tally.grafts()),
            List.of(),
            tally,
            OPTIONS);
    return new RootstockVerdict(
        type, Optional.empty(), Optional.of(pairings()), Optional.empty(), Optional.empty());
  }

  /** Two contrasts, one of which these records can't judge. */
  public static PlannedContrasts contrasts() {
    Contrast clonal =
        Contrast.between(
            "clonal & own against seedling",
            List.of("Pellin", "Ostrey"),
            List.of("Halden seedling"));
    Contrast other = Contrast.between("old against new", List.of("Quay <old>"), List.of("Pellin"));
    return new PlannedContrasts(
        "rootstock",
        List.of(
            new PlannedContrasts.Result(
                clonal,
                Verdict.NO_PRACTICAL_DIFFERENCE,
                Optional.of(new Estimate(-0.01, new Interval(-0.06, 0.04, 0.90))),
                0.001,
                counted(800, 500),
                counted(420, 260)),
            new PlannedContrasts.Result(
                other, Verdict.ENTANGLED, Optional.empty(), 0, counted(40, 20), counted(300, 200))),
        counted(1500, 950),
        OPTIONS);
  }

  /** An answer without a figure. */
  static TakeCounts counts() {
    return new TakeCounts(
        "rootstock", List.of(new TakeCounts.LevelCount("Pellin", counted(9, 5))), 0, 0.95);
  }

  /** Factors of which rootstock is the least. */
  public static FactorImportance whatMovesTake() {
    List<Importance> factors =
        List.of(
            mover("cultivar", Kind.VARYING, 24, 0.19),
            mover("grafter", Kind.VARYING, 9, 0.12),
            mover("stock_condition", Kind.LEVELS, 2, 0.14),
            mover("storage_days", Kind.NUMBER, 31, 0.09),
            mover("bud_stage", Kind.LEVELS, 3, 0.08),
            mover("season", Kind.VARYING, 4, 0.06),
            mover("method", Kind.LEVELS, 3, 0.03),
            mover("rootstock", Kind.VARYING, 6, 0.01));
    return new FactorImportance(factors, counted(4812, 3190), OPTIONS);
  }

  private static Importance mover(String factor, Kind kind, int levels, double size) {
    Interval range = new Interval(size * 0.55, size * 1.5, 0.95);
    return new Importance(
        factor,
        kind,
        levels,
        new Estimate(size, range),
        "best",
        "worst",
        new Estimate(2 * size, new Interval(size, 3 * size, 0.95)),
        factor.equals("rootstock"));
  }

  /** A curve falling from day 0 to day 28 that thins out from day 20. */
  public static TakeCurve storageCurve() {
    List<TakeCurve.Point> points = new ArrayList<>();
    for (int day = 0; day <= 28; day++) {
      double value = 1 / (1 + Math.exp(-(1.3 - 0.02 * day - 0.002 * day * day)));
      points.add(new TakeCurve.Point(day, take(value, 0.03 + 0.004 * day), day >= 20));
    }
    List<TakeCurve.Range> counted = new ArrayList<>();
    int[] grafts = {820, 640, 400, 180, 60, 21, 9};
    for (int i = 0; i < grafts.length; i++) {
      double share = 0.76 - 0.07 * i;
      TakeCount tally = counted(grafts[i], Math.round(grafts[i] * share));
      counted.add(
          new TakeCurve.Range(
              4 * i, 4 * i + 4, tally, take(tally.rate(), 0.02 + 0.03 * i).interval()));
    }
    return new TakeCurve(
        "storage_days",
        "days",
        points,
        counted,
        20,
        Optional.empty(),
        counted(2130, 1450),
        OPTIONS);
  }

  /** Six pairings, the first of which fails alone. */
  public static Pairings pairings() {
    List<Pairing> pairings = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      double expected = 0.6 + 0.05 * i;
      double value = i == 0 ? 0.32 : expected + 0.01 * i - 0.02;
      pairings.add(
          new Pairing(
              NAMES.get(i),
              i % 2 == 0 ? "Halden seedling" : "Fenwick clonal",
              counted(40 + i, Math.round((40 + i) * value)),
              take(value, 0.15).interval(),
              expected,
              take(value, 0.12),
              difference(value - expected, 0.1),
              i == 0 ? 0.97 : 0.05,
              i == 0));
    }
    pairings.sort(Comparator.comparingDouble(p -> p.difference().value()));
    return new Pairings(pairings, take(0.2, 0.1), 0.03, counted(255, 160), OPTIONS);
  }

  /** Four grafters behind letters. */
  public static Grafters grafters() {
    List<GrafterTake> all = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      double value = 0.82 - 0.09 * i;
      TakeCount tally = counted(500 - 100L * i, Math.round((500 - 100L * i) * (value - 0.03)));
      all.add(
          new GrafterTake(
              "Grafter " + (char) ('A' + i),
              tally,
              take(value, 0.06).interval(),
              take(value, 0.05 + 0.01 * i),
              difference(0.13 - 0.09 * i, 0.05)));
    }
    return new Grafters(all, false, take(0.12, 0.05), counted(1400, 980), OPTIONS);
  }

  /** Ten groups near the line. */
  public static FitChecks checks() {
    List<FitChecks.Tenth> tenths = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      double predicted = 0.12 + 0.085 * i;
      double counted = predicted + (i % 2 == 0 ? 0.02 : -0.02);
      tenths.add(new FitChecks.Tenth(predicted, counted(480, Math.round(480 * counted))));
    }
    List<FitChecks.Check> checks =
        List.of(
            new FitChecks.Check(
                FitChecks.CheckKind.SCATTER_BETWEEN_CELLS,
                FitChecks.State.FINE,
                1.04,
                new FitChecks.CellScatter(1.04, 480)));
    return new FitChecks(checks, tenths, List.of(), List.of(), List.of(), counted(4800, 3100));
  }

  /** Rows counted four times on three stocks; one stock loses more. */
  public static LateLoss lateLoss() {
    List<CountedRow> rows = new ArrayList<>();
    List<String> stocks = List.of("Halden seedling", "Fenwick clonal", "Marl 3");
    for (int i = 0; i < 60; i++) {
      String stock = stocks.get(i % 3);
      int alive = 14 + i % 5;
      int lost = stock.equals("Marl 3") ? 3 : 1 + i % 2;
      List<CountedRow.Count> counts =
          List.of(
              new CountedRow.Count(30, alive),
              new CountedRow.Count(60, alive - lost),
              new CountedRow.Count(95, alive - lost - i % 3),
              new CountedRow.Count(150, alive - lost - 1 - i % 3));
      rows.add(
          new CountedRow(
              "row " + i, Map.of("rootstock", stock, "cultivar", NAMES.get(i % 7)), 20, counts));
    }
    return LateLossCalculator.of(rows, List.of("rootstock", "cultivar"), OPTIONS).orElseThrow();
  }
}
