package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.PooledEstimate;
import org.taketally.answers.counts.StratifiedTable;
import org.taketally.answers.counts.Stratum;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.verdict.RootstockVerdict.Picked;
import org.taketally.answers.verdict.RootstockVerdict.TwoStocks;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.records.columns.RecordColumn;

/**
 * Two rootstocks compared cultivar by cultivar, as can be followed by hand: the two there are; the
 * one that stands out against all others; else the two that lie furthest apart.
 */
final class StratifiedComparison {

  private static final String CULTIVAR = RecordColumn.CULTIVAR.columnName();

  private final Cells cells;
  private final Factor compared;
  private final AnswerOptions options;

  private StratifiedComparison(Cells cells, Factor compared, AnswerOptions options) {
    this.cells = cells;
    this.compared = compared;
    this.options = options;
  }

  static Optional<TwoStocks> of(Cells cells, FactorVerdict type, AnswerOptions options) {
    List<String> levels = type.levels().stream().map(FactorVerdict.LevelTake::level).toList();
    if (cells.findFactor(CULTIVAR).isEmpty() || levels.size() < 2) {
      return Optional.empty();
    }
    StratifiedComparison view =
        new StratifiedComparison(cells, cells.factor(type.factor()), options);
    if (levels.size() > 2 && type.standingOut().size() == 1) {
      return Optional.of(
          view.against(type.standingOut().get(0), Optional.empty(), Picked.STANDS_OUT));
    }
    Picked picked = levels.size() == 2 ? Picked.ONLY_TWO : Picked.FURTHEST_APART;
    String last = levels.get(levels.size() - 1);
    return Optional.of(view.against(levels.get(0), Optional.of(last), picked));
  }

  private TwoStocks against(String first, Optional<String> second, Picked picked) {
    StratifiedTable table = StratifiedTable.of(strata(first, second));
    Optional<PooledEstimate> odds = table.oddsRatio(options.coverage());
    Optional<PooledEstimate> difference = table.difference(options.coverage());
    return new TwoStocks(
        first,
        second,
        picked,
        table.strata().stream().filter(Stratum::hasBoth).toList(),
        odds.map(StratifiedComparison::estimate),
        difference.map(StratifiedComparison::estimate),
        table.agreement());
  }

  private static Estimate estimate(PooledEstimate pooled) {
    return new Estimate(pooled.value(), pooled.interval());
  }

  private List<Stratum> strata(String first, Optional<String> second) {
    Factor cultivar = cells.factor(CULTIVAR);
    int one = compared.indexOf(first);
    int two = second.map(compared::indexOf).orElse(Factor.MISSING);
    IntPredicate other = second.isEmpty() ? c -> c != one : c -> c == two;
    TreeMap<String, long[]> counts = new TreeMap<>();
    for (int i = 0; i < cells.size(); i++) {
      int code = compared.code(i);
      boolean in = code != Factor.MISSING && (code == one || other.test(code));
      if (in && cultivar.code(i) != Factor.MISSING) {
        long[] count =
            counts.computeIfAbsent(cultivar.levels().get(cultivar.code(i)), c -> new long[4]);
        int side = code == one ? 0 : 2;
        count[side] += cells.takes(i);
        count[side + 1] += cells.grafts(i);
      }
    }
    List<Stratum> strata = new ArrayList<>();
    counts.forEach(
        (name, c) ->
            strata.add(new Stratum(name, new TakeCount(c[0], c[1]), new TakeCount(c[2], c[3]))));
    return strata;
  }
}
