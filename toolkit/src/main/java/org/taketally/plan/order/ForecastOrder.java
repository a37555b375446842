package org.taketally.plan.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.taketally.cells.Cells;
import org.taketally.model.TakeFit;
import org.taketally.plan.forecast.PastSeasons;
import org.taketally.plan.forecast.SeasonForecast;
import org.taketally.plan.order.SeasonTakes.BatchLuck;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Logit;

/**
 * Takes of order lines in seasons to come, from a fit of past records: own hands in their past mix,
 * a new season, batches with the luck of a day, a bed and a row, and how little may be known of a
 * cultivar or stock.
 */
public final class ForecastOrder {

  /** Columns whose luck is shared by the grafts of a batch and by no other batch. */
  private static final List<String> BATCH =
      List.of(
          DerivedColumn.GRAFTING_DAY.columnName(),
          RecordColumn.BLOCK.columnName(),
          Cells.BATCH_ROW);

  private static final String SEASON = RecordColumn.SEASON.columnName();

  private final TakeFit fit;
  private final SeasonForecast forecast;
  private final Luck luck;

  /**
   * What is stated beside the records.
   *
   * @param batch grafts made in one go, 1 or more
   * @param seasonSpread how far take differs from season to season, standard deviation as a
   *     fraction of 1; used only where the records hold one season and can't say
   * @param lost share of takes lost before the tree is saleable, 0 or more and below 1
   */
  public record Luck(int batch, double seasonSpread, double lost) {}

  /**
   * Orders by a fit.
   *
   * @param fit of past records ({@link PastSeasons#fit})
   * @param seasons how many seasons that may be, 1 or more; {@link SeasonsEnough#byRecords} says
   *     how many are enough
   * @param seed the same seed gives the same seasons
   * @param luck what is stated beside the records
   */
  public ForecastOrder(TakeFit fit, int seasons, long seed, Luck luck) {
    this.fit = fit;
    this.forecast = SeasonForecast.of(fit, seasons, seed);
    this.luck = luck;
  }

  /**
   * Whether the records tell seasons apart.
   *
   * @return false if they hold one season only; the stated spread is then used
   */
  public boolean knowsSeasons() {
    return fit.varying().stream().anyMatch(factor -> factor.factor().equals(SEASON));
  }

  /**
   * What the records know nothing of.
   *
   * @param name cultivar or rootstock, as the line has it
   * @param like a name of the records it may be meant for
   */
  public record Unknown(String name, Optional<String> like) {}

  /**
   * What of a line the records know nothing of, so that it rests on how far others differ.
   *
   * @param line of the book; names that differ from the records' in case and blanks alone are
   *     theirs
   * @return cultivar or rootstock, or both; empty if grafts of both were recorded
   */
  public List<Unknown> unknown(OrderLine line) {
    List<Unknown> names = new ArrayList<>();
    unknown(RecordColumn.CULTIVAR, line.cultivar()).ifPresent(names::add);
    line.rootstock().flatMap(stock -> unknown(RecordColumn.ROOTSTOCK, stock)).ifPresent(names::add);
    return names;
  }

  private Optional<Unknown> unknown(RecordColumn column, String name) {
    List<String> known = known(column);
    return known.contains(recorded(column, name))
        ? Optional.empty()
        : Optional.of(new Unknown(name, NameLikeness.nearest(name, known)));
  }

  /** The name the records have for it; as it is if they have none. */
  private String recorded(RecordColumn column, String name) {
    List<String> known = known(column);
    return known.contains(name)
        ? name
        : known.stream()
            .filter(other -> SharedSticks.plain(other).equals(SharedSticks.plain(name)))
            .findFirst()
            .orElse(name);
  }

  private List<String> known(RecordColumn column) {
    Stream<String> varying =
        fit.varying().stream()
            .filter(factor -> factor.factor().equals(column.columnName()))
            .flatMap(factor -> factor.levels().stream());
    Stream<String> recorded =
        fit.cells().findFactor(column.columnName()).stream()
            .flatMap(factor -> factor.levels().stream());
    return Stream.concat(varying, recorded).distinct().toList();
  }

  /**
   * Saleable shares of the lines, line by line, each season the same for all.
   *
   * @param entries of the book; a stated take keeps its own luck, put into the order of good and
   *     bad seasons of the others
   * @param stated turns a stated take into as many seasons as this has, from worst to best
   * @return one a line
   */
  public List<SeasonTakes> takes(List<OrderBook.Entry> entries, Stated stated) {
    List<Optional<SeasonTakes>> known = new ArrayList<>();
    double[] goodness = new double[forecast.seasons()];
    for (OrderBook.Entry entry : entries) {
      Optional<SeasonTakes> takes =
          entry.take().isPresent() ? Optional.empty() : Optional.of(forecast(entry.line()));
      takes.ifPresent(
          t -> Arrays.setAll(goodness, d -> goodness[d] + t.shares()[d] / t.expectedShare()));
      known.add(takes);
    }
    int[] rank = ranks(goodness);
    List<SeasonTakes> all = new ArrayList<>();
    for (int i = 0; i < entries.size(); i++) {
      OrderBook.Entry entry = entries.get(i);
      all.add(
          known
              .get(i)
              .orElseGet(
                  () -> stated.seasons(entry.take().orElseThrow(), rank.length).inOrder(rank)));
    }
    return all;
  }

  /**
   * What a book needs, each line's take forecast from the records.
   *
   * @param entries of the book, at least one; none of them states a take
   * @param terms assurance, wood, cost
   * @return the order
   * @throws IllegalArgumentException if a line states a take: how far that moves from season to
   *     season isn't known here, see {@link #takes}
   */
  public GraftOrder order(List<OrderBook.Entry> entries, OrderTerms terms) {
    List<SeasonTakes> takes =
        takes(
            entries,
            (take, seasons) -> {
              throw new IllegalArgumentException(
                  "take: found %s stated in the book, expected none, so that it is forecast from the records; leave the column empty"
                      .formatted(take));
            });
    List<GraftOrder.Ordered> ordered = new ArrayList<>();
    for (int i = 0; i < takes.size(); i++) {
      ordered.add(new GraftOrder.Ordered(entries.get(i).line(), takes.get(i)));
    }
    return GraftOrder.of(ordered, terms);
  }

  /** Turns a stated take into seasons from worst to best. */
  public interface Stated {

    /**
     * Seasons of a stated take.
     *
     * @param take above 0 and at most 1
     * @param seasons how many
     * @return the seasons, in rising order
     */
    SeasonTakes seasons(double take, int seasons);
  }

  private static int[] ranks(double[] goodness) {
    int[] rank = new int[goodness.length];
    int[] order =
        IntStream.range(0, rank.length)
            .boxed()
            .sorted(Comparator.comparingDouble(d -> goodness[d]))
            .mapToInt(Integer::intValue)
            .toArray();
    for (int place = 0; place < order.length; place++) {
      rank[order[place]] = place;
    }
    return rank;
  }

  private SeasonTakes forecast(OrderLine line) {
    Map<String, String> lot = new LinkedHashMap<>();
    String cultivar = recorded(RecordColumn.CULTIVAR, line.cultivar());
    lot.put(RecordColumn.CULTIVAR.columnName(), cultivar);
    line.rootstock()
        .map(name -> recorded(RecordColumn.ROOTSTOCK, name))
        .ifPresent(
            stock -> {
              lot.put(RecordColumn.ROOTSTOCK.columnName(), stock);
              lot.put(DerivedColumn.PAIRING.columnName(), cultivar + " × " + stock);
            });
    lot.put(SEASON, "a season to come");
    double[] shares = forecast.takes(lot);
    if (!knowsSeasons()) {
      shares = withSpread(shares);
    }
    double mean = Arrays.stream(shares).average().orElseThrow();
    return SeasonTakes.of(shares, new BatchLuck(luck.batch(), forecast.correlation(mean, BATCH)))
        .afterLosing(new double[] {luck.lost()});
  }

  /** Season luck as stated, on the logit, the same place being the same season for every line. */
  private double[] withSpread(double[] shares) {
    double mean = Arrays.stream(shares).average().orElseThrow();
    double spread = luck.seasonSpread() / (mean * (1 - mean));
    Random random = new Random(29);
    double[] moved = new double[shares.length];
    for (int d = 0; d < moved.length; d++) {
      double logit = Logit.of(shares[d]) + spread * random.nextGaussian();
      moved[d] = Logit.take(logit);
    }
    return moved;
  }
}
