package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import org.taketally.answers.RootstockVerdict.TwoStocks;
import org.taketally.answers.counts.PooledEstimate;
import org.taketally.answers.counts.StratifiedTable;
import org.taketally.answers.counts.Stratum;
import org.taketally.answers.counts.TakeCount;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;

/**
 * Two rootstocks compared cultivar by cultivar, as can be followed by hand: the two there are; the
 * one that stands out against all others; else the two that lie furthest apart.
 */
final class ByHand {

  private static final String CULTIVAR = "cultivar";
  private static final String OTHERS = "all others together";

  private final Cells cells;
  private final Factor compared;
  private final AnswerOptions options;

  private ByHand(Cells cells, Factor compared, AnswerOptions options) {
    this.cells = cells;
    this.compared = compared;
    this.options = options;
  }

  static Optional<TwoStocks> of(Cells cells, FactorVerdict type, AnswerOptions options) {
    List<String> levels = type.levels().stream().map(FactorVerdict.LevelTake::level).toList();
    if (cells.findFactor(CULTIVAR).isEmpty() || levels.size() < 2) {
      return Optional.empty();
    }
    ByHand view = new ByHand(cells, cells.factor(type.factor()), options);
    if (levels.size() > 2 && type.standingOut().size() == 1) {
      return Optional.of(view.against(type.standingOut().get(0), OTHERS, ""));
    }
    String furthest = levels.size() == 2 ? "" : ", picked because they lie furthest apart";
    return Optional.of(view.against(levels.get(0), levels.get(levels.size() - 1), furthest));
  }

  private TwoStocks against(String first, String second, String picked) {
    StratifiedTable table = StratifiedTable.of(strata(first, second));
    Optional<PooledEstimate> odds = table.oddsRatio(options.level());
    Optional<PooledEstimate> difference = table.difference(options.level());
    String sentence =
        difference
            .map(d -> sentence(first, second + picked, d, odds) + table.agreement().sentence())
            .orElse("By hand: no cultivar was grafted on both sides of this comparison.");
    return new TwoStocks(
        first,
        second,
        table.strata().stream().filter(Stratum::hasBoth).toList(),
        odds.map(ByHand::estimate),
        difference.map(ByHand::estimate),
        table.agreement().pValue(),
        sentence);
  }

  private static Estimate estimate(PooledEstimate pooled) {
    return new Estimate(pooled.value(), pooled.interval());
  }

  private static String sentence(
      String first, String second, PooledEstimate difference, Optional<PooledEstimate> odds) {
    String ratio =
        odds.map(
                o ->
                    String.format(
                        Locale.ROOT,
                        "; odds ratio %.2f, likely %.2f to %.2f",
                        o.value(),
                        o.interval().low(),
                        o.interval().high()))
            .orElse("");
    return "To follow by hand (Mantel-Haenszel, cultivar by cultivar, nothing else adjusted): %s against %s, %s %s (likely %s%s). "
        .formatted(
            first,
            second,
            Words.points(difference.value()),
            difference.value() < 0 ? "lower" : "higher",
            Words.points(difference.interval()),
            ratio);
  }

  private List<Stratum> strata(String first, String second) {
    Factor cultivar = cells.factor(CULTIVAR);
    int one = compared.indexOf(first);
    IntPredicate other = second.equals(OTHERS) ? c -> c != one : c -> c == compared.indexOf(second);
    TreeMap<String, long[]> counts = new TreeMap<>();
    for (int i = 0; i < cells.size(); i++) {
      int code = compared.codes()[i];
      boolean in = code != Factor.MISSING && (code == one || other.test(code));
      if (in && cultivar.codes()[i] != Factor.MISSING) {
        long[] count =
            counts.computeIfAbsent(cultivar.levels().get(cultivar.codes()[i]), c -> new long[4]);
        int side = code == one ? 0 : 2;
        count[side] += cells.takes()[i];
        count[side + 1] += cells.grafts()[i];
      }
    }
    List<Stratum> strata = new ArrayList<>();
    counts.forEach(
        (name, c) ->
            strata.add(new Stratum(name, new TakeCount(c[0], c[1]), new TakeCount(c[2], c[3]))));
    return strata;
  }
}
