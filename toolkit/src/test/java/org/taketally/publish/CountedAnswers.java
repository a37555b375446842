package org.taketally.publish;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Condition;
import org.taketally.answers.Estimate;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Importance;
import org.taketally.answers.effects.FactorImportance.Kind;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdict.LevelTake;
import org.taketally.answers.verdict.FactorVerdict.Pair;
import org.taketally.answers.verdict.RootstockVerdict;
import org.taketally.answers.verdict.Verdict;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.cells.Factor;
import org.taketally.figure.SampleAnswers;
import org.taketally.records.GraftRecords;
import org.taketally.terms.Interval;

/**
 * Answers made from plain counts, in the shapes the answers package gives: enough to test pages on
 * any records without fitting a model. They name every level, also those that may not be published.
 */
final class CountedAnswers {

  private final Cells cells;
  private final GraftRecords records;
  private final AnswerOptions options = AnswerOptions.defaults();

  private CountedAnswers(GraftRecords records) {
    this.records = records;
    this.cells =
        CellsOf.records(
            records,
            List.of("cultivar", "rootstock", "grafter", "season", "site").stream()
                .filter(records.frame().columnNames()::contains)
                .toList());
  }

  static List<Answer> of(GraftRecords records) {
    CountedAnswers answers = new CountedAnswers(records);
    List<Answer> all = new ArrayList<>();
    all.add(answers.difficulty());
    all.add(answers.rootstock());
    all.add(answers.factors());
    if (records.frame().columnNames().contains("storage_temp_c")) {
      all.add(answers.curve());
    }
    all.add(SampleAnswers.lateLoss());
    return all;
  }

  private TakeCount total() {
    return new TakeCount(cells.takesTotal(), cells.graftsTotal());
  }

  private TakeCount count(Factor factor, int code) {
    long grafts = 0;
    long takes = 0;
    for (int i = 0; i < cells.size(); i++) {
      grafts += factor.code(i) == code ? cells.grafts(i) : 0;
      takes += factor.code(i) == code ? cells.takes(i) : 0;
    }
    return new TakeCount(takes, grafts);
  }

  private static Estimate take(TakeCount count) {
    return new Estimate(count.rate(), wilson(count));
  }

  private static Interval wilson(TakeCount count) {
    return TakeRateInterval.wilson(count.takes(), count.grafts(), 0.95);
  }

  private Difficulty difficulty() {
    Factor factor = cells.factor("cultivar");
    List<CultivarTake> all = new ArrayList<>();
    for (int code = 0; code < factor.size(); code++) {
      TakeCount count = count(factor, code);
      Estimate take = take(count);
      Band band = take.high() < 0.5 ? Band.HARD : take.low() > 0.75 ? Band.EASY : Band.CANT_TELL;
      Estimate rank = new Estimate(code + 1.0, new Interval(1, factor.size(), 0.95));
      all.add(
          new CultivarTake(
              factor.levels().get(code), count, wilson(count), take, take, 0, rank, 0.2, band));
    }
    all.sort(Comparator.comparingDouble(c -> c.take().value()));
    return new Difficulty(
        all, List.of(Condition.level("method", "cleft")), total(), Optional.empty(), options);
  }

  private RootstockVerdict rootstock() {
    Factor factor = cells.factor("rootstock");
    List<LevelTake> levels = new ArrayList<>();
    List<Pair> pairs = new ArrayList<>();
    for (int code = 0; code < factor.size(); code++) {
      TakeCount count = count(factor, code);
      levels.add(
          new LevelTake(
              factor.levels().get(code),
              count,
              wilson(count),
              Optional.of(take(count)),
              code == 0));
      for (int other = 0; other < code; other++) {
        pairs.add(pair(levels.get(code), levels.get(other)));
      }
    }
    FactorVerdict type =
        new FactorVerdict(
            "rootstock",
            Verdict.CANT_TELL_YET,
            levels,
            Optional.of(new FactorVerdict.Size(take(total()), take(total()), 0.5, pairs)),
            List.of(),
            Optional.of(new FactorVerdict.Detectable(0.1, 0.1, OptionalLong.of(300))),
            new Confounding("rootstock", List.of(), 0.9, List.of(), cells.graftsTotal()),
            List.of(),
            total(),
            options);
    return new RootstockVerdict(
        type, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  private static Pair pair(LevelTake one, LevelTake other) {
    double value = one.tally().rate() - other.tally().rate();
    double half = 1.0 / Math.sqrt((double) Math.min(one.tally().grafts(), other.tally().grafts()));
    Interval range = new Interval(value - half, value + half, 0.95);
    Interval alone = new Interval(value - 0.7 * half, value + 0.7 * half, 0.90);
    boolean equivalent = new Interval(-0.1, 0.1, 0.9).contains(alone);
    return new Pair(
        one.level(), other.level(), new Estimate(value, range), range, alone, equivalent, 0.3);
  }

  private FactorImportance factors() {
    List<Importance> factors = new ArrayList<>();
    for (Factor factor : cells.factors().stream().filter(f -> f.size() > 1).toList()) {
      List<String> levels =
          factor.levels().stream()
              .sorted(Comparator.comparingDouble(l -> count(factor, factor.indexOf(l)).rate()))
              .toList();
      String worst = levels.get(0);
      String best = levels.get(levels.size() - 1);
      double span =
          count(factor, factor.indexOf(best)).rate() - count(factor, factor.indexOf(worst)).rate();
      Estimate size = new Estimate(span / 2, new Interval(span / 3, span * 0.8, 0.95));
      factors.add(
          new Importance(
              factor.name(),
              Kind.VARYING,
              factor.size(),
              size,
              best,
              worst,
              new Estimate(span, new Interval(span / 2, span * 1.2, 0.95)),
              factor.name().equals("rootstock")));
    }
    factors.sort(Comparator.comparingDouble(m -> -m.typical().value()));
    return new FactorImportance(factors, total(), options);
  }

  private TakeCurve curve() {
    List<TakeCurve.Point> points = new ArrayList<>();
    double low = records.frame().doubleColumn("storage_temp_c").min();
    double high = records.frame().doubleColumn("storage_temp_c").max();
    for (int i = 0; i <= 20; i++) {
      double value = low + (high - low) * i / 20;
      double take = 0.8 - 0.02 * i;
      points.add(
          new TakeCurve.Point(
              value, new Estimate(take, new Interval(take - 0.05, take + 0.05, 0.95)), false));
    }
    TakeCount count = total();
    TakeCurve.Range range = new TakeCurve.Range(low, high, count, wilson(count));
    return new TakeCurve(
        "storage_temp_c",
        "°C",
        points,
        List.of(range),
        Double.NaN,
        Optional.empty(),
        count,
        options);
  }
}
