package org.taketally.plan.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.taketally.plan.order.GraftOrder.Ordered;
import org.taketally.plan.order.SeasonTakes.BatchLuck;

/** Fewest grafts against R's beta-binomial sums are in PublishedChecksTest. */
class GraftOrderTest {

  private static OrderLine line(String cultivar, int trees) {
    return new OrderLine(cultivar, Optional.empty(), trees, Optional.empty());
  }

  private static SeasonTakes seasons(double take, double correlation, BatchLuck batches) {
    return SeasonTakes.of(SeasonTakes.betaSeasons(take, correlation, 1000), batches);
  }

  /** The beta-binomial is the mixture over seasons; a thousand of them come within a graft. */
  @Test
  void seasons_drawn_from_a_beta_need_what_the_beta_binomial_needs() {
    for (double take : new double[] {0.4, 0.75, 0.95}) {
      for (double correlation : new double[] {0, 0.02, 0.1}) {
        for (int trees : new int[] {1, 20, 100}) {
          int exact =
              GraftsNeeded.fewest(new BetaBinomialTakes(take, correlation), trees, 0.9)
                  .orElseThrow();
          int mixed =
              GraftsNeeded.fewest(seasons(take, correlation, BatchLuck.NONE), trees, 0.9)
                  .orElseThrow();
          assertThat(mixed)
              .as("%s %s %s", take, correlation, trees)
              .isBetween(exact - 1, exact + 1);
        }
      }
    }
  }

  /** Rare seasons decide then; a thousand of them, and chances read off a grid beyond. */
  @Test
  void surer_orders_need_what_the_beta_binomial_needs() {
    for (double sure : new double[] {0.95, 0.99, 0.995, SeasonsEnough.SUREST_STATED}) {
      for (double correlation : new double[] {0.01, 0.05, 0.1}) {
        int exact =
            GraftsNeeded.fewest(new BetaBinomialTakes(0.7, correlation), 60, sure).orElseThrow();
        SeasonTakes spread =
            SeasonTakes.of(
                SeasonTakes.betaSeasons(0.7, correlation, SeasonsEnough.stated(sure)),
                BatchLuck.NONE);
        int mixed = GraftsNeeded.fewest(spread, 60, sure).orElseThrow();
        assertThat((double) mixed / exact)
            .as("%s %s: %s, %s", sure, correlation, mixed, exact)
            .isBetween(0.99, 1.01);
      }
    }
  }

  /** Batches of 20 at 120 grafts; the same seasons once in one piece, once in two halves. */
  @Test
  void chances_of_many_seasons_are_those_of_each_by_itself() {
    BatchLuck batches = new BatchLuck(20, 0.08);
    double[] many = SeasonTakes.betaSeasons(0.6, 0.05, 1600);
    SeasonTakes all = SeasonTakes.of(many, batches);
    double[] chances = all.probabilities(60, 120);
    for (int half = 0; half < 2; half++) {
      double[] part = java.util.Arrays.copyOfRange(many, half * 800, half * 800 + 800);
      double[] exact = SeasonTakes.of(part, batches).probabilities(60, 120);
      for (int d = 0; d < exact.length; d++) {
        assertThat(chances[half * 800 + d]).isCloseTo(exact[d], within(1e-4));
      }
    }
    assertThat(
            SeasonTakes.of(SeasonTakes.betaSeasons(0.6, 0, 1600), batches).probabilities(60, 120))
        .containsOnly(SeasonTakes.of(new double[] {0.6}, batches).probabilities(60, 120));
  }

  @Test
  void rarer_seasons_than_can_be_told_are_refused() {
    assertThat(SeasonsEnough.byRecords(0.99)).isEqualTo(4000);
    assertThat(SeasonsEnough.stated(0.999)).isEqualTo(10_000);
    assertThatThrownBy(() -> SeasonsEnough.byRecords(0.995))
        .hasMessage(
            "how sure to be must be above 0 and at most 0.99, got 0.995: rarer seasons can't be"
                + " told");
  }

  /** One batch of all grafts with no season luck is the beta-binomial itself. */
  @Test
  void one_batch_is_a_beta_binomial() {
    SeasonTakes one = SeasonTakes.of(new double[] {0.7}, new BatchLuck(60, 0.05));
    BetaBinomialTakes exact = new BetaBinomialTakes(0.7, 0.05);
    for (int trees = 0; trees <= 61; trees++) {
      assertThat(one.probabilityOfAtLeast(trees, 60))
          .isCloseTo(exact.probabilityOfAtLeast(trees, 60), within(1e-10));
    }
  }

  /** Above 400 grafts the sum over batches is worked out by its mean and variance. */
  @Test
  void many_batches_run_on_smoothly_where_the_sum_is_no_longer_exact() {
    SeasonTakes takes = SeasonTakes.of(new double[] {0.75}, new BatchLuck(20, 0.05));
    SeasonTakes nearly = SeasonTakes.of(new double[] {0.75}, new BatchLuck(20, 0.05));
    for (int trees = 270; trees <= 330; trees += 5) {
      double exact = takes.probabilityOfAtLeast(trees, 400);
      double next = nearly.probabilityOfAtLeast(trees, 401);
      assertThat(next - exact).isBetween(-0.005, 0.04);
    }
  }

  @Test
  void splitting_an_order_over_batches_needs_fewer_grafts_than_one_batch() {
    int together = GraftsNeeded.fewest(new BetaBinomialTakes(0.75, 0.05), 100, 0.9).orElseThrow();
    int apart =
        GraftsNeeded.fewest(SeasonTakes.of(new double[] {0.75}, new BatchLuck(20, 0.05)), 100, 0.9)
            .orElseThrow();
    int alone = GraftsNeeded.fewest(new BetaBinomialTakes(0.75, 0), 100, 0.9).orElseThrow();
    assertThat(together).isEqualTo(163);
    assertThat(alone).isEqualTo(142);
    assertThat(apart).isBetween(alone + 1, together - 1);
  }

  /** 300 seasons here; OrderAssuranceTest runs 2,000 of many kinds. */
  @Test
  void keeps_what_it_promises_in_seasons_that_come() {
    double made = OrderSeasons.shareDelivered(60, 0.6, 0.05, new BatchLuck(15, 0.08), 0.9, 600);
    assertThat(made).isBetween(0.9 - 3 * Math.sqrt(0.09 / 600), 1.0);
  }

  @Test
  void more_grafts_never_lower_the_chance() {
    SeasonTakes takes = seasons(0.6, 0.05, new BatchLuck(12, 0.1));
    double before = 0;
    for (int grafts = 10; grafts < 60; grafts++) {
      double chance = takes.probabilityOfAtLeast(10, grafts);
      assertThat(chance).isGreaterThanOrEqualTo(before - 1e-12);
      before = chance;
    }
  }

  @Test
  void a_book_is_answered_line_by_line_and_as_a_whole() {
    SeasonTakes easy = seasons(0.9, 0.02, BatchLuck.NONE);
    SeasonTakes hard = seasons(0.5, 0.02, BatchLuck.NONE);
    GraftOrder order =
        GraftOrder.of(
            List.of(new Ordered(line("Orrin", 100), easy), new Ordered(line("Tamsel", 20), hard)),
            OrderTerms.defaults().withWood(new WoodUse(2, 7, 0.1)).withCostPerGraft(3));
    GraftOrder.Line first = order.lines().get(0);
    assertThat(first.byRate().orElseThrow().grafts()).isEqualTo(112);
    assertThat(first.grafts().orElseThrow()).isBetween(119, 121); // R: 120
    assertThat(order.lines().get(1).grafts().orElseThrow()).isBetween(52, 54); // R: 53
    // three grafts a stick (a seventh bud is too few), one stick in ten spoiled
    assertThat(first.sticks().orElseThrow()).isEqualTo((int) Math.ceil(40 / 0.9));
    assertThat(first.cost().orElseThrow()).isEqualTo(3.0 * first.grafts().getAsInt());
    assertThat(first.trees().orElseThrow().low()).isGreaterThanOrEqualTo(100);
    assertThat(order.riskiest().orElseThrow().line().cultivar()).isEqualTo("Tamsel");
    // both lines at least 0.9 in seasons they share: more than independent lines, less than one
    assertThat(order.probabilityOfAll().orElseThrow()).isBetween(0.82, 0.90);
    assertThat(order.treesWanted()).isEqualTo(120);
  }

  @Test
  void lines_that_share_no_luck_multiply() {
    double[] one = {0.75};
    SeasonTakes takes = SeasonTakes.of(one, BatchLuck.NONE);
    GraftOrder order =
        GraftOrder.of(
            List.of(new Ordered(line("Orrin", 20), takes), new Ordered(line("Tamsel", 20), takes)),
            OrderTerms.defaults());
    double each = takes.probabilityOfAtLeast(20, order.lines().get(0).grafts().orElseThrow());
    assertThat(order.probabilityOfAll().orElseThrow()).isCloseTo(each * each, within(1e-12));
  }

  @Test
  void says_where_no_number_of_grafts_is_enough() {
    double[] shares = new double[10];
    shares[0] = 0.9;
    SeasonTakes nearlyAlwaysNone = SeasonTakes.of(shares, BatchLuck.NONE);
    GraftOrder order =
        GraftOrder.of(
            List.of(new Ordered(line("Orrin", 20), nearlyAlwaysNone)), OrderTerms.defaults());
    assertThat(order.lines().get(0).grafts()).isEmpty();
    assertThat(order.lines().get(0).sticks()).isEmpty();
    assertThat(order.probabilityOfAll()).isEmpty();
  }

  @Test
  void a_fixed_number_of_grafts_or_sticks_gives_trees() {
    SeasonTakes takes = seasons(0.75, 0.02, BatchLuck.NONE);
    GraftOrder.TreeRange trees = GraftOrder.trees(takes, 152);
    assertThat(trees.low()).isBetween(99, 101); // R: 152 grafts give 100 with chance 0.9
    assertThat(trees.expected()).isCloseTo(114, within(0.1));
    assertThat(trees.high()).isBetween(122, 130);
    assertThat(new WoodUse(2, 8, 0.1).graftsFrom(10)).isEqualTo(36);
    assertThat(new WoodUse(2, 8, 0).sticks(0)).isZero();
  }

  @Test
  void sticks_are_always_enough_for_the_grafts() {
    Random random = new Random(11);
    IntStream.range(0, 500)
        .forEach(
            i -> {
              int buds = 1 + random.nextInt(4);
              WoodUse use =
                  new WoodUse(buds, buds + random.nextInt(10), random.nextInt(60) / 100.0);
              int grafts = random.nextInt(400);
              assertThat(use.graftsFrom(use.sticks(grafts))).isGreaterThanOrEqualTo(grafts);
            });
  }

  @Test
  void losing_takes_late_lowers_the_share() {
    SeasonTakes after =
        SeasonTakes.of(new double[] {0.8, 0.6}, BatchLuck.NONE)
            .afterLosing(new double[] {0.25, 0.5});
    assertThat(after.shares()).containsExactly(new double[] {0.6, 0.3}, within(1e-15));
  }

  @Test
  void refuses_nonsense_with_the_remedy() {
    assertThatThrownBy(() -> new BetaBinomialTakes(0, 0))
        .hasMessage(
            "a take must be above 0 and at most 1, e.g. 0.75, got 0.0: nothing can be grown from"
                + " grafts that never take");
    assertThatThrownBy(() -> line("", 5))
        .hasMessage("a line of an order needs a cultivar; found none beside 5 trees");
    assertThatThrownBy(() -> line("Orrin", 0)).hasMessage("an order is for 1 tree or more, got 0");
    assertThatThrownBy(() -> OrderTerms.defaults().withAssurance(1.2))
        .hasMessage(
            "how sure to be must lie between 0 and 1, e.g. 0.9 for 9 seasons in 10, got 1.2");
    assertThatThrownBy(() -> new WoodUse(3, 2, 0))
        .hasMessage("a stick must hold the buds of one graft (3) at least, got 2");
    assertThatThrownBy(() -> GraftOrder.of(List.of(), OrderTerms.defaults()))
        .hasMessageStartingWith("an order needs at least one line");
    assertThatThrownBy(() -> SeasonTakes.of(new double[] {0, 0}, BatchLuck.NONE))
        .hasMessage(
            "no graft takes in any season that may be, so no number of grafts gives a tree");
  }

  /** Seasons with luck of their own, batches with luck within, grafts counted one by one. */
  static final class OrderSeasons {

    private OrderSeasons() {}

    static double shareDelivered(
        int trees, double take, double seasonLuck, BatchLuck batches, double assurance, int years) {
      int grafts =
          GraftsNeeded.fewest(seasons(take, seasonLuck, batches), trees, assurance).orElseThrow();
      Well19937c random = new Well19937c(7);
      int delivered = 0;
      for (int year = 0; year < years; year++) {
        double season = beta(random, take, seasonLuck);
        int taken = 0;
        double batch = 0;
        for (int i = 0; i < grafts; i++) {
          if (i % batches.size() == 0) {
            batch = beta(random, season, batches.correlation());
          }
          taken += random.nextDouble() < batch ? 1 : 0;
        }
        delivered += taken >= trees ? 1 : 0;
      }
      return (double) delivered / years;
    }

    private static double beta(Well19937c random, double mean, double correlation) {
      if (correlation == 0) {
        return mean;
      }
      double size = (1 - correlation) / correlation;
      return new BetaDistribution(random, mean * size, (1 - mean) * size).sample();
    }
  }
}
