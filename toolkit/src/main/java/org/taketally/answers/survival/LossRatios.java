package org.taketally.answers.survival;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.taketally.answers.Estimate;
import org.taketally.answers.survival.HazardRegression.Coefficient;
import org.taketally.answers.survival.HazardRegression.Exposure;

/**
 * How many times as fast levels are lost as a base level, other factors allowed for: grouped-time
 * hazards over the rounds of counting. Levels of any factor without a loss say nothing about the
 * others and are left out; so are levels that lost all in their first round.
 *
 * @param rows rows with every level recorded
 * @param followUps what became of their grafts
 * @param coverage coverage of the ranges
 * @param dispersion how many times as much rows differ as single grafts would make them, 1 or more
 */
record LossRatios(List<CountedRow> rows, FollowUps followUps, double coverage, double dispersion) {

  /** Grafts at risk and lost, by level of each factor and round. */
  private record Cell(List<String> levels, int round) {}

  Map<String, Estimate> against(String factor, String base, List<String> within) {
    List<String> factors = Stream.concat(Stream.of(factor), within.stream()).toList();
    Map<Cell, long[]> cells = cells(factors);
    dropSilent(cells, factors.size());
    List<List<String>> shown = new ArrayList<>();
    for (int f = 0; f < factors.size(); f++) {
      shown.add(shown(cells, f));
    }
    if (!shown.get(0).contains(base) || shown.get(0).size() < 2) {
      return Map.of();
    }
    return fit(cells, shown, base);
  }

  private Map<Cell, long[]> cells(List<String> factors) {
    Map<Cell, long[]> cells = new LinkedHashMap<>();
    for (CountedRow row : rows) {
      List<String> levels = factors.stream().map(row.levels()::get).toList();
      for (FollowUp graft : followUps.of(row)) {
        for (int round = (int) graft.from() + 1; round <= graft.days(); round++) {
          long[] count = cells.computeIfAbsent(new Cell(levels, round), cell -> new long[2]);
          count[0] += graft.grafts();
          count[1] += graft.lost() && round == graft.days() ? graft.grafts() : 0;
        }
      }
    }
    return cells;
  }

  /** Drops levels with no loss or nothing but losses, until none is left. */
  private static void dropSilent(Map<Cell, long[]> cells, int factors) {
    boolean dropped = true;
    while (dropped) {
      dropped = false;
      for (int f = 0; f < factors; f++) {
        int place = f;
        Map<String, long[]> totals = new HashMap<>();
        cells.forEach(
            (cell, count) -> {
              long[] total = totals.computeIfAbsent(cell.levels().get(place), l -> new long[2]);
              total[0] += count[0];
              total[1] += count[1];
            });
        dropped |=
            cells
                .keySet()
                .removeIf(
                    cell -> {
                      long[] total = totals.get(cell.levels().get(place));
                      return total[1] == 0 || total[1] == total[0];
                    });
      }
    }
  }

  private static List<String> shown(Map<Cell, long[]> cells, int f) {
    return cells.keySet().stream().map(cell -> cell.levels().get(f)).distinct().sorted().toList();
  }

  private Map<String, Estimate> fit(
      Map<Cell, long[]> cells, List<List<String>> shown, String base) {
    List<String> names = new ArrayList<>();
    List<int[]> columns = new ArrayList<>();
    for (int f = 0; f < shown.size(); f++) {
      String first = f == 0 ? base : shown.get(f).get(0);
      for (int l = 0; l < shown.get(f).size(); l++) {
        if (!shown.get(f).get(l).equals(first)) {
          names.add(shown.get(f).get(l));
          columns.add(new int[] {f, l});
        }
      }
    }
    List<Exposure> exposures = new ArrayList<>();
    for (Map.Entry<Cell, long[]> cell : cells.entrySet()) {
      double[] values =
          columns.stream()
              .mapToDouble(
                  at ->
                      shown.get(at[0]).get(at[1]).equals(cell.getKey().levels().get(at[0])) ? 1 : 0)
              .toArray();
      long[] count = cell.getValue();
      exposures.add(new Exposure(cell.getKey().round(), values, count[0], count[1]));
    }
    return ratios(exposures, names, shown.get(0).size() - 1);
  }

  private Map<String, Estimate> ratios(List<Exposure> exposures, List<String> names, int wanted) {
    Map<String, Estimate> ratios = new HashMap<>();
    try {
      for (Coefficient c :
          HazardRegressionCalculator.of(exposures, names).coefficients().subList(0, wanted)) {
        ratios.put(c.name(), new Estimate(c.ratio(), c.dispersed(dispersion).interval(coverage)));
      }
    } catch (ArithmeticException e) {
      // factors that go together, or losses all on one side: the ratios can't be told
      return Map.of();
    }
    return ratios;
  }
}
