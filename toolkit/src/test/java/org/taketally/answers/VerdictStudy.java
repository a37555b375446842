package org.taketally.answers;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.taketally.cells.Factor;

/** Runs one kind of {@link Trial} many times and counts what the verdicts and ranges did. */
final class VerdictStudy {

  /** What was counted. */
  static final class Counts {
    final Map<Verdict, Integer> verdicts = new EnumMap<>(Verdict.class);
    int trials;
    int allPairsCovered;
    int pairsInside;
    int pairs;
    int cultivarsInside;
    int cultivars;
    int named;

    int of(Verdict verdict) {
      return verdicts.getOrDefault(verdict, 0);
    }

    double rate(Verdict verdict) {
      return (double) of(verdict) / trials;
    }
  }

  private VerdictStudy() {}

  static Counts run(Trial trial, int times, long seed, AnswerOptions options) {
    List<Counts> singles =
        IntStream.range(0, times).parallel().mapToObj(t -> once(trial, seed + t, options)).toList();
    Counts all = new Counts();
    for (Counts one : singles) {
      all.trials += one.trials;
      one.verdicts.forEach((verdict, count) -> all.verdicts.merge(verdict, count, Integer::sum));
      all.allPairsCovered += one.allPairsCovered;
      all.pairsInside += one.pairsInside;
      all.pairs += one.pairs;
      all.cultivarsInside += one.cultivarsInside;
      all.cultivars += one.cultivars;
      all.named += one.named;
    }
    return all;
  }

  private static Counts once(Trial trial, long seed, AnswerOptions options) {
    Trial.Made made = trial.make(seed);
    Averaging averaging =
        new Averaging(SturdyFit.of(made.cells(), Trial.MODEL).fit(), options.seed(seed));
    FactorVerdict verdict = FactorVerdicts.of(averaging, "rootstock", options.seed(seed));
    Counts counts = new Counts();
    counts.trials = 1;
    counts.verdicts.put(verdict.verdict(), 1);
    if (verdict.verdict() == Verdict.MATTERS
        && verdict.standingOut().equals(List.of("rootstock 2"))) {
      counts.named = 1;
    }
    countPairs(verdict, made, counts);
    countCultivars(averaging, made, options, counts);
    return counts;
  }

  private static void countPairs(FactorVerdict verdict, Trial.Made made, Counts counts) {
    Factor rootstock = made.cells().factor("rootstock");
    boolean all = true;
    for (FactorVerdict.Pair pair :
        verdict.size().map(FactorVerdict.Size::pairs).orElse(List.of())) {
      double truth =
          made.takes()[rootstock.indexOf(pair.level())]
              - made.takes()[rootstock.indexOf(pair.other())];
      all &= pair.difference().interval().contains(truth);
      counts.pairsInside += pair.equivalence().contains(truth) ? 1 : 0;
      counts.pairs++;
    }
    counts.allPairsCovered = all ? 1 : 0;
  }

  private static void countCultivars(
      Averaging averaging, Trial.Made made, AnswerOptions options, Counts counts) {
    Factor cultivar = made.cells().factor("cultivar");
    for (Difficulty.CultivarTake c : Difficulties.of(averaging, options).cultivars()) {
      double truth = made.cultivarTakes()[cultivar.indexOf(c.cultivar())];
      counts.cultivarsInside += c.take().interval().contains(truth) ? 1 : 0;
      counts.cultivars++;
    }
  }
}
