package org.taketally.plan.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.taketally.terms.Plural;

/**
 * Which pairing is grafted by whom, when and in what order.
 *
 * @param kind how plots were put into blocks
 * @param plots in the order of work
 * @param pairings how well pairings are compared inside blocks
 * @param rootstocks how well rootstocks are; empty with one rootstock
 * @param atBest most that pairings could be compared on average in blocks of this size, 0 to 1;
 *     empty where there is no formula
 * @param plan what was asked for; holds the seed
 */
public record TrialLayout(
    LayoutKind kind,
    List<Plot> plots,
    PairEfficiency pairings,
    Optional<PairEfficiency> rootstocks,
    OptionalDouble atBest,
    LayoutPlan plan) {

  /**
   * Efficiency of the worst pair given up, at most, for groups of sessions that hold every pairing
   * once, so that a trial can be broken off after any of them. Common practice, no source.
   */
  private static final double WHOLE_REPLICATES_ARE_WORTH = 0.05;

  public TrialLayout {
    plots = List.copyOf(plots);
  }

  /**
   * The best layout found for a plan.
   *
   * @param plan what to compare and with what
   * @return the layout
   * @throws IllegalArgumentException if the plan can't be laid out, saying what to change
   */
  public static TrialLayout of(LayoutPlan plan) {
    return switch (plan.arrangement()) {
      case LATIN_SQUARE -> complete(LayoutKind.LATIN_SQUARE, LatinSquare.plots(plan), plan);
      case SPLIT_PLOT -> complete(LayoutKind.SPLIT_PLOT, SplitPlot.plots(plan), plan);
      case BLOCKS -> blocks(plan);
    };
  }

  /** Every pairing with every other in each block, so that none is lost. */
  private static TrialLayout complete(LayoutKind kind, List<Plot> plots, LayoutPlan plan) {
    PairEfficiency full = new PairEfficiency(1, 1);
    return new TrialLayout(
        kind,
        plots,
        full,
        plan.rootstocks().size() < 2 ? Optional.empty() : Optional.of(full),
        OptionalDouble.of(1),
        plan);
  }

  private static TrialLayout blocks(LayoutPlan plan) {
    List<Session> sessions = plan.sessions();
    List<Pairing> pairings = plan.pairings();
    int[] replicates = Replicates.of(plan, sessions.size() * plan.room());
    int plots = Arrays.stream(replicates).sum();
    int[] sizes =
        IntStream.range(0, sessions.size())
            .map(b -> plots / sessions.size() + (b < plots % sessions.size() ? 1 : 0))
            .toArray();
    requireTwoPlots(sizes);
    boolean even = Arrays.stream(replicates).allMatch(r -> r == replicates[0]);
    int k = sizes[0];
    int t = pairings.size();
    int[][] blocks = new BlockSearch(replicates, sizes, 0, plan.seed()).best();
    PairEfficiency reached = PairEfficiency.of(blocks, t);
    boolean resolvable = even && k < t && t % k == 0 && sessions.size() % (t / k) == 0;
    if (resolvable) {
      int[][] whole = new BlockSearch(replicates, sizes, t / k, plan.seed()).best();
      PairEfficiency reachedWhole = PairEfficiency.of(whole, t);
      resolvable = !isBalanced(reached, t, k) || isBalanced(reachedWhole, t, k);
      resolvable &= reachedWhole.worst() > reached.worst() - WHOLE_REPLICATES_ARE_WORTH;
      blocks = resolvable ? whole : blocks;
      reached = resolvable ? reachedWhole : reached;
    }
    LayoutKind kind = kind(sizes, t, resolvable, reached);
    return new TrialLayout(
        kind,
        inOrder(plan, blocks, resolvable),
        reached,
        rootstocks(plan, blocks),
        atBest(kind, t, k, replicates[0]),
        plan);
  }

  private static void requireTwoPlots(int[] sizes) {
    if (sizes[sizes.length - 1] < 2) {
      throw new IllegalArgumentException(
          "there are grafts for %s but %s, so some sessions would hold fewer than two plots and compare nothing: use fewer days or grafters, fewer grafts a plot, or get more stocks and wood"
              .formatted(
                  Plural.of(Arrays.stream(sizes).sum(), "plot"),
                  Plural.of(sizes.length, "session")));
    }
  }

  private static LayoutKind kind(
      int[] sizes, int treatments, boolean resolvable, PairEfficiency reached) {
    if (sizes[sizes.length - 1] == treatments) {
      return LayoutKind.COMPLETE_BLOCKS;
    }
    if (sizes[0] == sizes[sizes.length - 1] && isBalanced(reached, treatments, sizes[0])) {
      return LayoutKind.BALANCED_INCOMPLETE_BLOCKS;
    }
    return resolvable ? LayoutKind.RESOLVABLE_INCOMPLETE_BLOCKS : LayoutKind.INCOMPLETE_BLOCKS;
  }

  private static boolean isBalanced(PairEfficiency reached, int t, int k) {
    return k < t && reached.worst() > BlockEfficiency.ifBalanced(t, k) - 1e-9;
  }

  private static OptionalDouble atBest(LayoutKind kind, int t, int k, int r) {
    return switch (kind) {
      case COMPLETE_BLOCKS, LATIN_SQUARE, SPLIT_PLOT -> OptionalDouble.of(1);
      case BALANCED_INCOMPLETE_BLOCKS -> OptionalDouble.of(BlockEfficiency.ifBalanced(t, k));
      case RESOLVABLE_INCOMPLETE_BLOCKS ->
          r < 2
              ? OptionalDouble.empty()
              : OptionalDouble.of(
                  Math.min(
                      BlockEfficiency.mostIfResolvable(t, r, k), BlockEfficiency.ifBalanced(t, k)));
      case INCOMPLETE_BLOCKS -> OptionalDouble.empty();
    };
  }

  private static Optional<PairEfficiency> rootstocks(LayoutPlan plan, int[][] blocks) {
    int stocks = plan.rootstocks().size();
    return stocks < 2
        ? Optional.empty()
        : Optional.of(
            PairEfficiency.of(
                Arrays.stream(blocks)
                    .map(block -> Arrays.stream(block).map(p -> p % stocks).toArray())
                    .toArray(int[][]::new),
                stocks));
  }

  /**
   * Blocks to sessions by lot, plots within each by lot. Of a resolvable layout whole replicates
   * stay together, so that it can be broken off after any of them.
   */
  private static List<Plot> inOrder(LayoutPlan plan, int[][] blocks, boolean resolvable) {
    Random random = new Random(plan.seed() ^ 0x5DEECE66DL);
    List<int[]> order = new ArrayList<>(List.of(blocks));
    if (!resolvable) {
      Collections.shuffle(order, random);
    }
    List<Plot> plots = new ArrayList<>();
    List<Session> sessions = plan.sessions();
    for (int b = 0; b < order.size(); b++) {
      for (int p : RandomOrder.of(order.get(b), random)) {
        plots.add(
            new Plot(
                plots.size() + 1,
                sessions.get(b),
                String.valueOf(b + 1),
                Optional.empty(),
                plan.pairings().get(p),
                plan.graftsPerPlot()));
      }
    }
    return plots;
  }

  /**
   * Plots of each block.
   *
   * @return by block name, in the order of work
   */
  public Map<String, List<Plot>> byBlock() {
    return grouped(Plot::block);
  }

  private Map<String, List<Plot>> grouped(Function<Plot, String> by) {
    return plots.stream()
        .collect(Collectors.groupingBy(by, LinkedHashMap::new, Collectors.toList()));
  }

  /**
   * Grafts in all.
   *
   * @return 2 or more
   */
  public long grafts() {
    return plots.stream().mapToLong(Plot::grafts).sum();
  }

  /**
   * Grafts of each rootstock or cultivar.
   *
   * @param of e.g. {@code Pairing::rootstock}
   * @return by name, in the order of the plan
   */
  public Map<String, Integer> grafts(Function<Pairing, String> of) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    plan.pairings().forEach(pairing -> counts.put(of.apply(pairing), 0));
    plots.forEach(plot -> counts.merge(of.apply(plot.pairing()), plot.grafts(), Integer::sum));
    return counts;
  }
}
