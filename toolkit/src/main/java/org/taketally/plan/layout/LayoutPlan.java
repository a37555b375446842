package org.taketally.plan.layout;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a trial is to compare and what there is to do it with. Immutable: {@code
 * LayoutPlan.of(cultivars, rootstocks, grafters, days).withGraftsPerPlot(5)}.
 *
 * @param cultivars one or more
 * @param rootstocks one or more; with the cultivars at least two pairings
 * @param grafters one or more
 * @param days dates, or names for days yet to be fixed; one or more
 * @param graftsPerPlot grafts of a pairing made one after the other, 1 or more
 * @param plotsPerSession most plots a hand can do in a day; 0 for as many as there are pairings
 * @param arrangement how plots are to be put into blocks
 * @param stocksOnHand most grafts each stock is enough for; stocks not named aren't short
 * @param woodOnHand most grafts each cultivar's wood is enough for; cultivars not named aren't
 *     short
 * @param seed of everything random; the same seed gives the same layout
 */
public record LayoutPlan(
    List<String> cultivars,
    List<String> rootstocks,
    List<String> grafters,
    List<String> days,
    int graftsPerPlot,
    int plotsPerSession,
    Arrangement arrangement,
    Map<String, Integer> stocksOnHand,
    Map<String, Integer> woodOnHand,
    long seed) {

  /** What is asked for. */
  public enum Arrangement {
    /** Complete blocks where sessions and supplies allow, the best incomplete blocks otherwise. */
    BLOCKS,
    /** Each pairing once with each grafter and once on each day. */
    LATIN_SQUARE,
    /** One bed or tray of each stock in every session, all cultivars within each bed. */
    SPLIT_PLOT
  }

  public LayoutPlan {
    cultivars = names("cultivar", cultivars);
    rootstocks = names("rootstock", rootstocks);
    grafters = names("grafter", grafters);
    days = names("day", days);
    stocksOnHand = supplies("rootstock", stocksOnHand, rootstocks);
    woodOnHand = supplies("cultivar", woodOnHand, cultivars);
    if (cultivars.size() * rootstocks.size() < 2) {
      throw new IllegalArgumentException(
          "a trial compares at least two cultivars or two rootstocks; %s on %s is one pairing"
              .formatted(cultivars.get(0), rootstocks.get(0)));
    }
    if (graftsPerPlot < 1) {
      throw new IllegalArgumentException("a plot holds 1 graft or more, got " + graftsPerPlot);
    }
    if (plotsPerSession < 0 || plotsPerSession == 1) {
      throw new IllegalArgumentException(
          "a session compares at least 2 plots, got %d: pairings made in different sessions only can't be told from who made them, and when"
              .formatted(plotsPerSession));
    }
  }

  /**
   * A plan with the usual choices: one graft a plot, all pairings in every session.
   *
   * @param cultivars one or more
   * @param rootstocks one or more; with the cultivars at least two pairings
   * @param grafters one or more
   * @param days dates or names, one or more
   * @return the plan
   */
  public static LayoutPlan of(
      List<String> cultivars, List<String> rootstocks, List<String> grafters, List<String> days) {
    return new LayoutPlan(
        cultivars, rootstocks, grafters, days, 1, 0, Arrangement.BLOCKS, Map.of(), Map.of(), 1);
  }

  private static List<String> names(String what, List<String> names) {
    if (names.isEmpty() || names.stream().anyMatch(String::isBlank)) {
      throw new IllegalArgumentException("a trial needs the name of at least one " + what);
    }
    if (new HashSet<>(names).size() < names.size()) {
      throw new IllegalArgumentException("a %s is named twice among %s".formatted(what, names));
    }
    return List.copyOf(names);
  }

  private static Map<String, Integer> supplies(
      String what, Map<String, Integer> supplies, List<String> names) {
    supplies.forEach(
        (name, count) -> {
          if (!names.contains(name)) {
            throw new IllegalArgumentException(
                "there is a supply of %s \"%s\", which is not in the trial; in it are %s"
                    .formatted(what, name, String.join(", ", names)));
          }
          if (count < 0) {
            throw new IllegalArgumentException(
                "a supply is 0 grafts or more, got %d for %s".formatted(count, name));
          }
        });
    return java.util.Collections.unmodifiableMap(new LinkedHashMap<>(supplies));
  }

  /**
   * With other plots.
   *
   * @param grafts 1 or more a plot
   * @return a new plan
   */
  public LayoutPlan withGraftsPerPlot(int grafts) {
    return new LayoutPlan(
        cultivars,
        rootstocks,
        grafters,
        days,
        grafts,
        plotsPerSession,
        arrangement,
        stocksOnHand,
        woodOnHand,
        seed);
  }

  /**
   * With shorter sessions.
   *
   * @param plots most plots a session, 2 or more; 0 for as many as there are pairings
   * @return a new plan
   */
  public LayoutPlan withPlotsPerSession(int plots) {
    return new LayoutPlan(
        cultivars,
        rootstocks,
        grafters,
        days,
        graftsPerPlot,
        plots,
        arrangement,
        stocksOnHand,
        woodOnHand,
        seed);
  }

  /**
   * With another arrangement.
   *
   * @param other how plots are to be put into blocks
   * @return a new plan
   */
  public LayoutPlan withArrangement(Arrangement other) {
    return new LayoutPlan(
        cultivars,
        rootstocks,
        grafters,
        days,
        graftsPerPlot,
        plotsPerSession,
        other,
        stocksOnHand,
        woodOnHand,
        seed);
  }

  /**
   * With what is on hand.
   *
   * @param stocks most grafts each stock is enough for
   * @param wood most grafts each cultivar's wood is enough for
   * @return a new plan
   */
  public LayoutPlan withSupplies(Map<String, Integer> stocks, Map<String, Integer> wood) {
    return new LayoutPlan(
        cultivars,
        rootstocks,
        grafters,
        days,
        graftsPerPlot,
        plotsPerSession,
        arrangement,
        stocks,
        wood,
        seed);
  }

  /**
   * With another seed.
   *
   * @param other any number
   * @return a new plan
   */
  public LayoutPlan withSeed(long other) {
    return new LayoutPlan(
        cultivars,
        rootstocks,
        grafters,
        days,
        graftsPerPlot,
        plotsPerSession,
        arrangement,
        stocksOnHand,
        woodOnHand,
        other);
  }

  /**
   * What is compared.
   *
   * @return every cultivar on every rootstock
   */
  public List<Pairing> pairings() {
    return cultivars.stream()
        .flatMap(c -> rootstocks.stream().map(r -> new Pairing(c, r)))
        .toList();
  }

  /**
   * Every hand on every day, day by day.
   *
   * @return sessions
   */
  public List<Session> sessions() {
    return days.stream()
        .flatMap(day -> grafters.stream().map(grafter -> new Session(grafter, day)))
        .toList();
  }

  /** Plots a session may hold. */
  int room() {
    int pairings = cultivars.size() * rootstocks.size();
    return plotsPerSession == 0 ? pairings : Math.min(pairings, plotsPerSession);
  }
}
