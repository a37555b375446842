package org.taketally.answers.counts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.BlockTakes.BlockTake;
import org.taketally.answers.counts.BlockTakes.SiteBlocks;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Interval;

/** Works out {@link BlockTakes} from counts. */
public final class BlockTakesCalculator {

  private static final String SITE = RecordColumn.SITE.columnName();
  private static final String BLOCK = RecordColumn.BLOCK.columnName();

  private final double coverage;
  private final int pairs;

  private BlockTakesCalculator(double coverage, int pairs) {
    this.coverage = coverage;
    this.pairs = pairs;
  }

  /**
   * Takes by block within site. The largest of many differences is large by luck, so the ranges of
   * differences are wide enough to hold for all pairs at once (Bonferroni).
   *
   * @param cells any cells
   * @param options coverage of the ranges
   * @return empty unless the cells know sites and blocks, and some site has two blocks
   */
  public static Optional<BlockTakes> of(Cells cells, AnswerOptions options) {
    if (cells.findFactor(SITE).isEmpty() || cells.findFactor(BLOCK).isEmpty()) {
      return Optional.empty();
    }
    Map<String, Map<String, TakeCount>> counts = counts(cells);
    counts.values().removeIf(blocks -> blocks.size() < 2);
    if (counts.isEmpty()) {
      return Optional.empty();
    }
    int pairs =
        counts.values().stream().mapToInt(blocks -> blocks.size() * (blocks.size() - 1) / 2).sum();
    BlockTakesCalculator calculator = new BlockTakesCalculator(options.coverage(), pairs);
    List<SiteBlocks> sites = new ArrayList<>();
    counts.forEach((site, blocks) -> sites.add(calculator.site(site, blocks)));
    return Optional.of(new BlockTakes(sites, pairs, options.coverage()));
  }

  /** Counts by site and block; grafts without either are left out. */
  private static Map<String, Map<String, TakeCount>> counts(Cells cells) {
    Factor sites = cells.factor(SITE);
    Factor blocks = cells.factor(BLOCK);
    Map<String, Map<String, TakeCount>> counts = new TreeMap<>();
    for (int i = 0; i < cells.size(); i++) {
      int site = sites.code(i);
      int block = blocks.code(i);
      if (site != Factor.MISSING && block != Factor.MISSING && cells.grafts(i) > 0) {
        counts
            .computeIfAbsent(sites.levels().get(site), key -> new TreeMap<>())
            .merge(
                blocks.levels().get(block),
                new TakeCount(cells.takes(i), cells.grafts(i)),
                TakeCount::plus);
      }
    }
    return counts;
  }

  private SiteBlocks site(String site, Map<String, TakeCount> counts) {
    List<Map.Entry<String, TakeCount>> order = new ArrayList<>(counts.entrySet());
    order.sort(Comparator.comparingDouble(entry -> -entry.getValue().rate()));
    TakeCount best = order.get(0).getValue();
    List<BlockTake> blocks = new ArrayList<>();
    for (Map.Entry<String, TakeCount> entry : order) {
      Estimate fromBest =
          blocks.isEmpty()
              ? new Estimate(0, new Interval(0, 0, coverage))
              : difference(entry.getValue(), best);
      blocks.add(block(entry.getKey(), entry.getValue(), fromBest));
    }
    return new SiteBlocks(site, blocks);
  }

  private BlockTake block(String name, TakeCount tally, Estimate fromBest) {
    Interval counted = TakeRateInterval.wilson(tally.takes(), tally.grafts(), coverage);
    return new BlockTake(name, tally, counted, fromBest);
  }

  private Estimate difference(TakeCount tally, TakeCount best) {
    Interval range = TakeDifference.newcombe(tally, best, 1 - (1 - coverage) / pairs);
    return new Estimate(
        tally.rate() - best.rate(), new Interval(range.low(), range.high(), coverage));
  }
}
