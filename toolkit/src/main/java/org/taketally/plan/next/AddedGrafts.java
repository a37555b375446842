package org.taketally.plan.next;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.plan.forecast.SeasonForecast;
import org.taketally.plan.layout.Plot;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;

/**
 * Records in hand with the grafts of a layout added, their takes made up as a fit lets expect. What
 * a layout doesn't say (method, buds, storage) is as most often in the records; hands, days and
 * plots have their luck.
 */
final class AddedGrafts {

  private final Cells records;
  private final List<Map<String, String>> lots = new ArrayList<>();
  private final int[] grafts;
  private final double[][] takes;
  private final double[] correlation;
  private final Cells joined;

  AddedGrafts(Cells records, TrialLayout layout, SeasonForecast forecast) {
    this.records = records;
    List<Plot> plots = layout.plots();
    this.grafts = plots.stream().mapToInt(Plot::grafts).toArray();
    this.takes = new double[plots.size()][];
    this.correlation = new double[plots.size()];
    for (int i = 0; i < plots.size(); i++) {
      Map<String, String> lot = lot(plots.get(i), i);
      lots.add(lot);
      takes[i] = forecast.takes(lot);
      double mean = Arrays.stream(takes[i]).average().orElseThrow();
      correlation[i] = grafts[i] == 1 ? 0 : forecast.correlation(mean, List.of(Cells.BATCH_ROW));
    }
    this.joined = joined();
  }

  private Map<String, String> lot(Plot plot, int number) {
    Map<String, String> lot = new LinkedHashMap<>();
    for (Factor factor : records.factors()) {
      commonest(factor).ifPresent(level -> lot.put(factor.name(), level));
    }
    for (Measure measure : records.measures()) {
      lot.put(measure.name(), Double.toString(median(measure)));
    }
    lot.put(RecordColumn.CULTIVAR.columnName(), plot.pairing().cultivar());
    lot.put(RecordColumn.ROOTSTOCK.columnName(), plot.pairing().rootstock());
    lot.put(
        DerivedColumn.PAIRING.columnName(),
        plot.pairing().cultivar() + " × " + plot.pairing().rootstock());
    lot.put(RecordColumn.GRAFTER.columnName(), plot.session().grafter());
    lot.put(DerivedColumn.GRAFTING_DAY.columnName(), "to come: " + plot.session().day());
    lot.put(RecordColumn.SEASON.columnName(), "to come");
    lot.put(RecordColumn.BLOCK.columnName(), "to come: " + plot.bed().orElse(plot.block()));
    if (plot.grafts() > 1) {
      lot.put(Cells.BATCH_ROW, "to come: " + number);
    } else {
      lot.remove(Cells.BATCH_ROW);
    }
    return lot;
  }

  private java.util.Optional<String> commonest(Factor factor) {
    long[] counts = new long[factor.size()];
    for (int i = 0; i < records.size(); i++) {
      if (factor.code(i) >= 0) {
        counts[factor.code(i)] += records.grafts(i);
      }
    }
    int best = -1;
    for (int k = 0; k < counts.length; k++) {
      best = best < 0 || counts[k] > counts[best] ? k : best;
    }
    return best < 0 ? java.util.Optional.empty() : java.util.Optional.of(factor.levels().get(best));
  }

  private static double median(Measure measure) {
    double[] known =
        Arrays.stream(measure.values()).filter(v -> !Double.isNaN(v)).sorted().toArray();
    return known.length == 0 ? Double.NaN : known[known.length / 2];
  }

  private Cells joined() {
    int old = records.size();
    int all = old + lots.size();
    List<Factor> factors = new ArrayList<>();
    for (Factor factor : records.factors()) {
      Set<String> levels = new LinkedHashSet<>(factor.levels());
      lots.forEach(
          lot -> java.util.Optional.ofNullable(lot.get(factor.name())).ifPresent(levels::add));
      List<String> names = List.copyOf(levels);
      int[] codes = Arrays.copyOf(factor.codes(), all);
      for (int i = 0; i < lots.size(); i++) {
        String level = lots.get(i).get(factor.name());
        codes[old + i] = level == null ? Factor.MISSING : names.indexOf(level);
      }
      factors.add(new Factor(factor.name(), names, codes));
    }
    List<Measure> measures = new ArrayList<>();
    for (Measure measure : records.measures()) {
      double[] values = Arrays.copyOf(measure.values(), all);
      Arrays.fill(values, old, all, median(measure));
      measures.add(new Measure(measure.name(), values));
    }
    int[] counts = Arrays.copyOf(records.grafts(), all);
    System.arraycopy(grafts, 0, counts, old, grafts.length);
    return new Cells(
        factors,
        measures,
        counts,
        Arrays.copyOf(records.takes(), all),
        records.logCoefficients(),
        records.provenance());
  }

  /**
   * Records and added grafts in one of the seasons that may come.
   *
   * @param season 0 to the forecast's seasons - 1
   * @param seed of the takes
   */
  Cells drawn(int season, long seed) {
    Random random = new Random(seed * 7919 + season);
    Well19937c luck = new Well19937c(seed * 104_729 + season);
    int[] all = joined.takes().clone();
    for (int i = 0; i < grafts.length; i++) {
      double p = takes[i][season];
      double rho = correlation[i];
      if (rho > 0) {
        p = new BetaDistribution(luck, p * (1 - rho) / rho, (1 - p) * (1 - rho) / rho).sample();
      }
      for (int graft = 0; graft < grafts[i]; graft++) {
        all[records.size() + i] += random.nextDouble() < p ? 1 : 0;
      }
    }
    return joined.withTakes(all);
  }
}
