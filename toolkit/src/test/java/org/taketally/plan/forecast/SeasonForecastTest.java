package org.taketally.plan.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.StringReader;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.plan.order.ForecastOrder;
import org.taketally.plan.order.GraftOrder;
import org.taketally.plan.order.OrderBook;
import org.taketally.plan.order.OrderTerms;
import org.taketally.plan.order.SeasonsEnough;
import org.taketally.terms.Provenance;

class SeasonForecastTest {

  private static final int CULTIVARS = 8;
  private static final int SEASONS = 8;

  /** Eight cultivars in eight seasons, forty grafts each; spreads of 0.8 and 0.5 logits. */
  private static final TakeFit FIT = fit();

  private static TakeFit fit() {
    Random random = new Random(21);
    double[] cultivars = random.doubles(CULTIVARS, -1.3, 1.3).toArray();
    double[] seasons = random.doubles(SEASONS, -0.9, 0.9).toArray();
    int[][] codes = new int[2][CULTIVARS * SEASONS];
    int[] grafts = new int[codes[0].length];
    int[] takes = new int[grafts.length];
    for (int i = 0; i < grafts.length; i++) {
      codes[0][i] = i % CULTIVARS;
      codes[1][i] = i / CULTIVARS;
      grafts[i] = 40;
      double take = 1 / (1 + Math.exp(-0.6 - cultivars[codes[0][i]] - seasons[codes[1][i]]));
      takes[i] = (int) IntStream.range(0, 40).filter(g -> random.nextDouble() < take).count();
    }
    Cells cells =
        new Cells(
            List.of(factor("cultivar", codes[0]), factor("season", codes[1])),
            List.of(),
            grafts,
            takes,
            0,
            Provenance.of("simulated", grafts.length));
    return TakeModel.ofTakes().varyBy("cultivar", "season").fit(cells);
  }

  private static Factor factor(String name, int[] codes) {
    return new Factor(name, IntStream.range(0, 8).mapToObj(k -> name + " " + k).toList(), codes);
  }

  private static double sd(double[] values) {
    double mean = Arrays.stream(values).average().orElseThrow();
    return Math.sqrt(
        Arrays.stream(values).map(v -> (v - mean) * (v - mean)).average().orElseThrow());
  }

  @Test
  void a_past_season_is_forecast_as_it_was_and_a_new_one_is_less_sure() {
    SeasonForecast forecast = SeasonForecast.of(FIT, 500, 3);
    double[] known = forecast.takes(Map.of("cultivar", "cultivar 2", "season", "season 5"));
    for (int cell = 0; cell < FIT.cells().size(); cell += 7) {
      double[] takes =
          forecast.takes(
              Map.of(
                  "cultivar",
                  "cultivar " + cell % CULTIVARS,
                  "season",
                  "season " + cell / CULTIVARS));
      assertThat(Arrays.stream(takes).average().orElseThrow())
          .isCloseTo(FIT.fittedTake()[cell], within(0.02));
    }
    double[] next = forecast.takes(Map.of("cultivar", "cultivar 2", "season", "to come"));
    assertThat(sd(next)).isGreaterThan(1.5 * sd(known));
  }

  @Test
  void a_cultivar_nobody_has_grafted_is_less_sure_still() {
    SeasonForecast forecast = SeasonForecast.of(FIT, 500, 3);
    double known = sd(forecast.takes(Map.of("cultivar", "cultivar 2", "season", "to come")));
    assertThat(sd(forecast.takes(Map.of("cultivar", "new", "season", "to come"))))
        .isGreaterThan(1.2 * known);
  }

  @Test
  void lots_of_one_season_to_come_share_its_luck() {
    SeasonForecast forecast = SeasonForecast.of(FIT, 500, 3);
    double[] one = forecast.takes(Map.of("cultivar", "cultivar 2", "season", "to come"));
    double[] other = forecast.takes(Map.of("cultivar", "cultivar 6", "season", "to come"));
    assertThat(new PearsonsCorrelation().correlation(one, other)).isGreaterThan(0.5);
    double[] apart = forecast.takes(Map.of("cultivar", "cultivar 6", "season", "the one after"));
    assertThat(new PearsonsCorrelation().correlation(one, apart)).isBetween(-0.25, 0.25);
  }

  @Test
  void what_is_left_open_is_averaged_over_the_past() {
    double[] open = SeasonForecast.of(FIT, 300, 3).takes(Map.of());
    double share = (double) FIT.cells().takesTotal() / FIT.cells().graftsTotal();
    assertThat(Arrays.stream(open).average().orElseThrow()).isCloseTo(share, within(0.1));
  }

  @Test
  void the_same_seed_gives_the_same_seasons_and_luck_of_a_column_correlates() {
    Map<String, String> lot = Map.of("cultivar", "new", "season", "to come");
    assertThat(SeasonForecast.of(FIT, 50, 3).takes(lot))
        .isEqualTo(SeasonForecast.of(FIT, 50, 3).takes(lot));
    SeasonForecast forecast = SeasonForecast.of(FIT, 50, 3);
    double sd = FIT.varying("season").standardDeviation();
    assertThat(forecast.correlation(0.5, List.of("season", "none")))
        .isCloseTo(0.25 * sd * sd / (1 + 0.25 * sd * sd), within(1e-12));
    assertThat(forecast.correlation(0.5, List.of())).isZero();
  }

  /** One season in a hundred is drawn often enough that the seed hardly moves what it needs. */
  @Test
  void a_sure_order_hardly_moves_with_the_seed() throws IOException {
    OrderBook book =
        OrderBook.read("b", new StringReader("cultivar,trees\ncultivar 2,100\nnew,100\n"));
    OrderTerms sure = OrderTerms.defaults().withAssurance(0.99);
    List<GraftOrder> orders =
        IntStream.rangeClosed(1, 4)
            .mapToObj(
                seed ->
                    new ForecastOrder(
                            FIT,
                            SeasonsEnough.byRecords(0.99),
                            seed,
                            new ForecastOrder.Luck(10, 0.06, 0))
                        .order(book.entries(), sure))
            .toList();
    for (int line = 0; line < 2; line++) {
      int place = line;
      int[] grafts =
          orders.stream().mapToInt(o -> o.lines().get(place).grafts().orElseThrow()).toArray();
      assertThat(Arrays.stream(grafts).max().orElseThrow())
          .as(Arrays.toString(grafts))
          .isLessThan((int) (1.12 * Arrays.stream(grafts).min().orElseThrow()));
    }
  }

  @Test
  void names_that_differ_in_case_and_blanks_alone_are_those_of_the_records() throws IOException {
    ForecastOrder orders = new ForecastOrder(FIT, 50, 1, new ForecastOrder.Luck(10, 0.06, 0));
    OrderBook book =
        OrderBook.read(
            "b", new StringReader("cultivar,trees\ncultivar 2,30\nCULTIVAR  2,30\ncultivr 2,30\n"));
    List<GraftOrder.Line> lines = orders.order(book.entries(), OrderTerms.defaults()).lines();
    assertThat(lines.get(1).grafts()).isEqualTo(lines.get(0).grafts());
    assertThat(orders.unknown(lines.get(1).line())).isEmpty();
    assertThat(orders.unknown(lines.get(2).line()))
        .containsExactly(new ForecastOrder.Unknown("cultivr 2", Optional.of("cultivar 2")));
  }

  @Test
  void an_order_by_records_takes_no_stated_take() throws IOException {
    ForecastOrder orders = new ForecastOrder(FIT, 50, 1, new ForecastOrder.Luck(10, 0.06, 0));
    OrderBook plain = OrderBook.read("book", new StringReader("cultivar,trees\nOrrin,30\n"));
    GraftOrder order = orders.order(plain.entries(), OrderTerms.defaults());
    assertThat(order.lines().get(0).grafts().orElseThrow()).isGreaterThan(30);

    OrderBook stated = OrderBook.read("b", new StringReader("cultivar,trees,take\nOrrin,30,60\n"));
    assertThatThrownBy(() -> orders.order(stated.entries(), OrderTerms.defaults()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("take: found 0.6 stated in the book, expected none");
  }
}
