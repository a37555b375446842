package org.taketally.answers;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.FallbackFit;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.DifficultyCalculator;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdictCalculator;
import org.taketally.answers.verdict.Verdict;
import org.taketally.cells.Factor;
import org.taketally.model.FixedEffect;
import org.taketally.terms.Interval;

/** Runs one kind of {@link Trial} many times and counts what the verdicts and ranges did. */
final class VerdictStudy {

  /** Ranges whose coverage is counted. */
  enum Range {
    /** Differences of all pairs of rootstocks at once. */
    ALL_PAIRS("all differences between rootstocks at once"),
    /** The 90 % range equivalence is judged by. */
    ONE_PAIR("one difference between rootstocks (90 % range, for \"no difference\")"),
    /** Take of each cultivar over the mix. */
    CULTIVAR("take of a cultivar"),
    /** Swelling against dormant buds, logits. */
    FIXED("effect of the bud stage, logits"),
    /** Swelling against dormant buds, take. */
    GAP("difference in take between bud stages"),
    /** Spread of cultivars. */
    CULTIVAR_SD("standard deviation of cultivars"),
    /** Spread of hands. */
    GRAFTER_SD("standard deviation of grafters"),
    /** Spread of days. */
    DAY_SD("standard deviation of grafting days");

    final String words;

    Range(String words) {
      this.words = words;
    }
  }

  /** What was counted. */
  static final class Counts {
    final Map<Verdict, Integer> verdicts = new EnumMap<>(Verdict.class);
    private final Map<Range, int[]> ranges = new TreeMap<>();
    int trials;
    int named;

    int of(Verdict verdict) {
      return verdicts.getOrDefault(verdict, 0);
    }

    int inside(Range range) {
      return ranges.getOrDefault(range, new int[2])[0];
    }

    int all(Range range) {
      return ranges.getOrDefault(range, new int[2])[1];
    }

    private void count(Range range, boolean inside) {
      add(range, inside ? 1 : 0, 1);
    }

    void add(Range range, int inside, int all) {
      int[] counted = ranges.computeIfAbsent(range, r -> new int[2]);
      counted[0] += inside;
      counted[1] += all;
    }

    void add(Counts other) {
      trials += other.trials;
      named += other.named;
      other.verdicts.forEach((verdict, count) -> verdicts.merge(verdict, count, Integer::sum));
      other.ranges.forEach((range, counted) -> add(range, counted[0], counted[1]));
    }
  }

  private VerdictStudy() {}

  static Counts run(Trial trial, int times, long seed, AnswerOptions options) {
    List<Counts> singles =
        IntStream.range(0, times).parallel().mapToObj(t -> once(trial, seed + t, options)).toList();
    Counts all = new Counts();
    singles.forEach(all::add);
    return all;
  }

  private static Counts once(Trial trial, long seed, AnswerOptions options) {
    Trial.Made made = trial.make(seed);
    MarginalTakes averaging =
        MarginalTakes.of(FallbackFit.of(made.cells(), Trial.MODEL).fit(), options.withSeed(seed));
    FactorVerdict verdict =
        FactorVerdictCalculator.of(averaging, "rootstock", options.withSeed(seed));
    Counts counts = new Counts();
    counts.trials = 1;
    counts.verdicts.put(verdict.verdict(), 1);
    if (verdict.verdict() == Verdict.MATTERS
        && verdict.standingOut().equals(List.of("rootstock 2"))) {
      counts.named = 1;
    }
    countPairs(verdict, made, counts);
    countCultivars(averaging, made, options, counts);
    countBuds(averaging, made, options, counts);
    countSpreads(averaging, options, counts);
    return counts;
  }

  private static void countPairs(FactorVerdict verdict, Trial.Made made, Counts counts) {
    Factor rootstock = made.cells().factor("rootstock");
    boolean all = true;
    List<FactorVerdict.Pair> pairs =
        verdict.size().map(FactorVerdict.Size::pairs).orElse(List.of());
    for (FactorVerdict.Pair pair : pairs) {
      double truth =
          made.takes()[rootstock.indexOf(pair.level())]
              - made.takes()[rootstock.indexOf(pair.other())];
      all &= pair.difference().interval().contains(truth);
      counts.count(Range.ONE_PAIR, pair.equivalence().contains(truth));
    }
    if (!pairs.isEmpty()) {
      counts.count(Range.ALL_PAIRS, all);
    }
  }

  private static void countCultivars(
      MarginalTakes averaging, Trial.Made made, AnswerOptions options, Counts counts) {
    Factor cultivar = made.cells().factor("cultivar");
    for (Difficulty.CultivarTake c : DifficultyCalculator.of(averaging, options).cultivars()) {
      double truth = made.cultivarTakes()[cultivar.indexOf(c.cultivar())];
      counts.count(Range.CULTIVAR, c.take().interval().contains(truth));
    }
  }

  private static void countBuds(
      MarginalTakes averaging, Trial.Made made, AnswerOptions options, Counts counts) {
    for (FixedEffect effect : averaging.fit().fixed(options.coverage())) {
      if (effect.term().equals("bud_stage")) {
        counts.count(Range.FIXED, effect.interval().contains(Trial.DORMANT));
      }
    }
    double[] gaps = new double[averaging.count()];
    double[][] takes = averaging.takes("bud_stage");
    for (int d = 0; d < gaps.length; d++) {
      gaps[d] = takes[d][0] - takes[d][1];
    }
    counts.count(Range.GAP, DrawSummary.range(gaps, options.coverage()).contains(made.budGap()));
  }

  private static void countSpreads(MarginalTakes averaging, AnswerOptions options, Counts counts) {
    List<String> varying = List.copyOf(averaging.fit().model().varying());
    countSpread(
        averaging,
        varying.indexOf("cultivar"),
        Range.CULTIVAR_SD,
        Trial.CULTIVAR_SD,
        options,
        counts);
    countSpread(
        averaging, varying.indexOf("grafter"), Range.GRAFTER_SD, Trial.GRAFTER_SD, options, counts);
    countSpread(
        averaging, varying.indexOf("grafting_day"), Range.DAY_SD, Trial.DAY_SD, options, counts);
  }

  private static void countSpread(
      MarginalTakes averaging,
      int k,
      Range range,
      double truth,
      AnswerOptions options,
      Counts counts) {
    if (k >= 0) {
      double[] sds =
          IntStream.range(0, averaging.count())
              .mapToDouble(d -> averaging.draws().sds(d)[k])
              .toArray();
      Interval likely = DrawSummary.range(sds, options.coverage());
      counts.count(range, likely.contains(truth));
    }
  }
}
