package org.taketally.plan.forecast;

import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.answers.AnswerOptions;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.LogitPart;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Logit;

/**
 * What a fit says of lots not made yet, in seasons that may come.
 *
 * <pre>
 *   season d   one draw of the fit: fixed effects, standard deviations, deviations of known levels
 *   logit      intercept + adjusted columns at the lot's values + deviation of each varying column:
 *              the level's own if the fit knows it, else one drawn from that column's standard
 *              deviation, the same for every lot of that level in that season
 *   not said   a column the lot leaves open is filled from past grafts drawn at random, and takes are
 *              averaged over {@value #MIX} of them
 *   many       of more than {@value #FEW} seasons rare ones are asked about: deviations of new levels
 *              are then spread evenly over their distribution, and {@value #FINE_MIX} past grafts
 *              evenly over the records, so that a seed moves them little
 * </pre>
 *
 * <p>Lots asked of one forecast share their seasons, so that what is uncertain of a season, a hand
 * or a day moves all its lots together.
 */
public final class SeasonForecast {

  private static final int MIX = 25;
  private static final int FINE_MIX = 250;
  private static final int FEW = 400;
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  private final TakeFit fit;
  private final TakeDraws draws;
  private final TakeDraws.Column[] columns;
  private final long seed;
  private final int[] mix;
  private final Map<String, double[]> newLevels = new HashMap<>();

  private SeasonForecast(TakeFit fit, int seasons, long seed) {
    this.fit = fit;
    this.draws = draws(fit, seasons, seed);
    this.columns =
        fit.varying().stream()
            .map(factor -> draws.column(factor.factor()))
            .toArray(TakeDraws.Column[]::new);
    this.seed = seed;
    this.mix = mix(fit.cells(), seasons, new Random(seed));
  }

  /**
   * Seasons to come by a fit.
   *
   * @param fit of past records; rootstocks and cultivars that vary in it may be unknown in a lot
   * @param seasons how many that may be, 1 or more
   * @param seed the same seed gives the same seasons
   * @return the forecast
   */
  public static SeasonForecast of(TakeFit fit, int seasons, long seed) {
    return new SeasonForecast(fit, seasons, seed);
  }

  /** A few of the draws that most answers of a fit rest on, which it has at hand. */
  private static TakeDraws draws(TakeFit fit, int seasons, long seed) {
    int usual = AnswerOptions.defaults().draws();
    TakeDraws draws = fit.draws(Math.max(usual, seasons), seed);
    return seasons < usual ? draws.picked(IntStream.range(0, seasons).toArray()) : draws;
  }

  private static int[] mix(Cells cells, int seasons, Random random) {
    long total = cells.graftsTotal();
    boolean evenly = seasons > FEW;
    int size = evenly ? FINE_MIX : MIX;
    return IntStream.range(0, size)
        .map(
            k -> {
              double place = random.nextDouble();
              long at = (long) ((evenly ? (k + place) / size : place) * total);
              int cell = 0;
              while (at >= cells.grafts(cell)) {
                at -= cells.grafts(cell++);
              }
              return cell;
            })
        .toArray();
  }

  /**
   * Seasons that may be.
   *
   * @return 1 or more
   */
  public int seasons() {
    return draws.count();
  }

  /**
   * The take of a lot in each season.
   *
   * @param lot level, or number as text, by column; columns of the fit left open are averaged over
   * @return above 0 and below 1, one a season
   */
  public double[] takes(Map<String, String> lot) {
    List<Parts> lots = completed(lot).stream().map(this::parts).toList();
    double[] takes = new double[draws.count()];
    for (int d = 0; d < takes.length; d++) {
      double[] beta = draws.beta(d);
      double[] sds = draws.sds(d);
      for (Parts one : lots) {
        takes[d] += Logit.take(logit(one, beta, sds, d)) / lots.size();
      }
    }
    return Arrays.stream(takes).map(p -> Math.min(1 - 1e-6, Math.max(1e-6, p))).toArray();
  }

  /**
   * Correlation of two grafts that share the luck of some columns and nothing else beyond what the
   * lot says.
   *
   * @param take of the lot, above 0 and below 1
   * @param columns varying columns, e.g. {@code grafting_day}; those not in the fit count nothing
   * @return about p (1 - p) times the sum of the variances, 0 or more and below 1
   */
  public double correlation(double take, List<String> columns) {
    double variance =
        fit.varying().stream()
            .filter(factor -> columns.contains(factor.factor()))
            .mapToDouble(factor -> factor.standardDeviation() * factor.standardDeviation())
            .sum();
    double shared = take * (1 - take) * variance;
    return shared / (1 + shared);
  }

  /** The lot with open columns filled from past grafts; one lot if nothing is open. */
  private List<Map<String, String>> completed(Map<String, String> lot) {
    List<String> open =
        fit.model().columns().stream()
            .filter(column -> !lot.containsKey(column) && !isOwnLuck(column))
            .filter(column -> fit.design().adjustsFor(column) || varies(column))
            .filter(column -> !fit.model().together().containsKey(column))
            .toList();
    if (open.isEmpty()) {
      return List.of(lot);
    }
    return Arrays.stream(mix).mapToObj(cell -> filled(lot, open, cell)).toList();
  }

  private Map<String, String> filled(Map<String, String> lot, List<String> open, int cell) {
    Map<String, String> all = new LinkedHashMap<>(lot);
    for (String column : open) {
      value(column, cell).ifPresent(value -> all.put(column, value));
    }
    String cultivar = all.get(RecordColumn.CULTIVAR.columnName());
    String rootstock = all.get(RecordColumn.ROOTSTOCK.columnName());
    if (open.contains(DerivedColumn.PAIRING.columnName())
        && cultivar != null
        && rootstock != null) {
      all.put(DerivedColumn.PAIRING.columnName(), cultivar + " × " + rootstock);
    }
    return all;
  }

  private Optional<String> value(String column, int cell) {
    Optional<Factor> factor = fit.cells().findFactor(column);
    if (factor.isPresent()) {
      int code = factor.get().code(cell);
      return code < 0 ? Optional.empty() : Optional.of(factor.get().levels().get(code));
    }
    return fit.cells().findMeasure(column).map(m -> Double.toString(m.value(cell)));
  }

  private boolean varies(String column) {
    return fit.varying().stream().anyMatch(factor -> factor.factor().equals(column));
  }

  /**
   * What a lot's logit is made of in every season.
   *
   * @param fixed what the fixed effects make
   * @param levels place of its level in each varying column; -1 where the fit doesn't know it
   * @param others deviations of a level not known, in standard deviations, one a season; empty for
   *     known levels and for the luck of single rows
   */
  private record Parts(LogitPart fixed, int[] levels, double[][] others) {
    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }

  private Parts parts(Map<String, String> lot) {
    List<VaryingFactor> varying = fit.varying();
    int[] levels = new int[varying.size()];
    double[][] others = new double[varying.size()][0];
    for (int k = 0; k < levels.length; k++) {
      VaryingFactor factor = varying.get(k);
      String level = level(factor.factor(), lot);
      levels[k] = isOwnLuck(factor.factor()) ? -1 : factor.levels().indexOf(level);
      if (levels[k] < 0 && !isOwnLuck(factor.factor())) {
        others[k] = newLevel(factor.factor(), level);
      }
    }
    return new Parts(fixed(lot), levels, others);
  }

  private LogitPart fixed(Map<String, String> lot) {
    LogitPart fixed = fit.design().intercept();
    for (String column : fit.model().columns()) {
      if (fit.design().adjustsFor(column)) {
        fixed = fixed.plus(1, fixed(column, lot));
      }
    }
    return fixed;
  }

  private double logit(Parts lot, double[] beta, double[] sds, int d) {
    double sum = lot.fixed().at(beta);
    for (int k = 0; k < sds.length; k++) {
      if (lot.levels()[k] >= 0) {
        sum += columns[k].effect(lot.levels()[k], d);
      } else if (lot.others()[k].length > 0) {
        sum += sds[k] * lot.others()[k][d];
      }
    }
    return sum;
  }

  /** Luck of a single row, which {@link #correlation} stands for. */
  private static boolean isOwnLuck(String column) {
    return column.equals(Cells.BATCH_ROW);
  }

  private String level(String column, Map<String, String> lot) {
    List<String> parts = fit.model().together().get(column);
    return parts == null
        ? lot.getOrDefault(column, "")
        : String.join(" × ", parts.stream().map(part -> lot.getOrDefault(part, "")).toList());
  }

  /** A value the fit doesn't know, or that isn't recorded, counts as an average one. */
  private LogitPart fixed(String column, Map<String, String> lot) {
    List<String> levels = fit.design().levels(column);
    String value = lot.get(column);
    return value != null && (levels.isEmpty() || levels.contains(value))
        ? fit.design().part(column, value)
        : fit.design().meanPart(column);
  }

  /** Deviations of a level the fit doesn't know, in standard deviations, one a season. */
  private synchronized double[] newLevel(String column, String level) {
    return newLevels.computeIfAbsent(
        column + "\n" + level,
        key -> {
          Random random = new Random(seed * 31 + key.hashCode());
          random.nextGaussian();
          double[] deviations = new double[draws.count()];
          if (deviations.length > FEW) {
            return spreadEvenly(deviations, random);
          }
          Arrays.setAll(deviations, d -> random.nextGaussian());
          return deviations;
        });
  }

  /** One from each of as many equal parts of the normal distribution, in random order. */
  private static double[] spreadEvenly(double[] deviations, Random random) {
    for (int d = 0; d < deviations.length; d++) {
      int place = random.nextInt(d + 1);
      deviations[d] = deviations[place];
      deviations[place] = NORMAL.inverseCumulativeProbability((d + 0.5) / deviations.length);
    }
    return deviations;
  }
}
