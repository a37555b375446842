package org.taketally.plan.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.plan.layout.LayoutPlan.Arrangement;

class TrialLayoutTest {

  private static List<String> names(String stem, int count) {
    return IntStream.rangeClosed(1, count).mapToObj(i -> stem + " " + i).toList();
  }

  private static LayoutPlan plan(int cultivars, int stocks, int grafters, int days) {
    return LayoutPlan.of(
        names("cultivar", cultivars),
        names("stock", stocks),
        names("grafter", grafters),
        names("day", days));
  }

  private static List<List<String>> blocks(TrialLayout layout) {
    return layout.byBlock().values().stream()
        .map(plots -> plots.stream().map(plot -> plot.pairing().toString()).toList())
        .toList();
  }

  @Test
  void complete_blocks_hold_every_pairing_once_in_an_order_drawn_by_lot() {
    TrialLayout layout = TrialLayout.of(plan(3, 2, 2, 3));
    assertThat(layout.kind()).isEqualTo(LayoutKind.COMPLETE_BLOCKS);
    assertThat(layout.plots()).hasSize(36);
    assertThat(layout.pairings()).isEqualTo(new PairEfficiency(1, 1));
    Set<List<String>> orders = new HashSet<>();
    for (List<String> block : blocks(layout)) {
      assertThat(block).doesNotHaveDuplicates().hasSize(6);
      orders.add(block);
    }
    assertThat(orders).hasSizeGreaterThan(3);
  }

  @Test
  void a_seed_is_kept_and_another_gives_another_order() {
    LayoutPlan plan = plan(3, 2, 2, 3);
    assertThat(TrialLayout.of(plan)).isEqualTo(TrialLayout.of(plan));
    assertThat(TrialLayout.of(plan.withSeed(2)).plots()).isNotEqualTo(TrialLayout.of(plan).plots());
  }

  @ParameterizedTest
  @CsvSource({"2", "3", "5", "8"})
  void a_latin_square_has_each_once_a_row_and_a_column(int size) {
    TrialLayout layout =
        TrialLayout.of(plan(1, size, size, size).withArrangement(Arrangement.LATIN_SQUARE));
    assertThat(layout.plots()).hasSize(size * size);
    Map<String, Set<Pairing>> rows =
        layout.plots().stream()
            .collect(
                Collectors.groupingBy(
                    plot -> plot.session().grafter(),
                    Collectors.mapping(Plot::pairing, Collectors.toSet())));
    Map<String, Set<Pairing>> columns =
        layout.plots().stream()
            .collect(
                Collectors.groupingBy(
                    plot -> plot.session().day(),
                    Collectors.mapping(Plot::pairing, Collectors.toSet())));
    assertThat(rows.values()).hasSize(size).allMatch(row -> row.size() == size);
    assertThat(columns.values()).hasSize(size).allMatch(column -> column.size() == size);
  }

  /** Designs that exist are found: t treatments in b blocks of k, all pairs equally often. */
  @ParameterizedTest
  @CsvSource({"4, 6, 2", "5, 5, 4", "7, 7, 3", "6, 10, 3", "9, 12, 3", "13, 13, 4", "11, 11, 5"})
  void finds_balanced_blocks_where_they_exist(int treatments, int blocks, int size) {
    TrialLayout layout = TrialLayout.of(plan(1, treatments, 1, blocks).withPlotsPerSession(size));
    assertThat(layout.kind()).isEqualTo(LayoutKind.BALANCED_INCOMPLETE_BLOCKS);
    double formula = BlockEfficiency.ifBalanced(treatments, size);
    assertThat(layout.pairings().worst()).isCloseTo(formula, within(1e-9));
    assertThat(layout.pairings().average()).isCloseTo(formula, within(1e-9));
  }

  /** The layout printed for these sizes (checks/alpha_15x3x2.csv) reaches 0.5461 and 0.2303. */
  @Test
  void finds_a_layout_as_good_as_the_printed_one_and_not_better_than_its_bound() {
    TrialLayout layout = TrialLayout.of(plan(1, 15, 2, 5).withPlotsPerSession(3));
    assertThat(layout.kind()).isEqualTo(LayoutKind.RESOLVABLE_INCOMPLETE_BLOCKS);
    BlockEfficiency reached = BlockEfficiency.of(blocks(layout));
    assertThat(reached.efficiency()).isBetween(0.54609, 0.6363637);
    assertThat(layout.pairings().average()).isCloseTo(reached.efficiency(), within(1e-9));
    assertThat(layout.atBest().orElseThrow()).isCloseTo(14.0 / 22, within(1e-9));
    List<List<String>> all = blocks(layout);
    for (int replicate = 0; replicate < 2; replicate++) {
      assertThat(all.subList(5 * replicate, 5 * replicate + 5).stream().flatMap(List::stream))
          .doesNotHaveDuplicates()
          .hasSize(15);
    }
  }

  @Test
  void pair_efficiencies_agree_with_the_canonical_ones() {
    List<List<String>> unequal =
        List.of(List.of("A", "B"), List.of("A", "B"), List.of("B", "C"), List.of("A", "C", "D"));
    assertThat(PairEfficiency.of(unequal).worst()).isBetween(0.0, 1.0);
    List<List<String>> pairs = List.of(List.of("A", "B"), List.of("B", "C"), List.of("C", "A"));
    assertThat(PairEfficiency.of(pairs).worst()).isCloseTo(0.75, within(1e-12));
    // chain A-B-C-D of blocks of two, by hand: v(A,D) = 6, complete 1/1 + 1/1 = 2
    List<List<String>> chain = List.of(List.of("A", "B"), List.of("B", "C"), List.of("C", "D"));
    assertThat(PairEfficiency.of(chain).worst()).isCloseTo(2.0 / 6, within(1e-9));
    assertThat(PairEfficiency.of(List.of(List.of("A", "B"), List.of("C", "D"))))
        .isEqualTo(new PairEfficiency(0, 0));
  }

  @Test
  void stocks_by_the_bed_come_once_a_session() {
    TrialLayout layout = TrialLayout.of(plan(4, 3, 2, 2).withArrangement(Arrangement.SPLIT_PLOT));
    assertThat(layout.plots()).hasSize(48);
    Map<String, Set<String>> stocksOfBed =
        layout.plots().stream()
            .collect(
                Collectors.groupingBy(
                    plot -> plot.bed().orElseThrow(),
                    Collectors.mapping(plot -> plot.pairing().rootstock(), Collectors.toSet())));
    assertThat(stocksOfBed).hasSize(12);
    assertThat(stocksOfBed.values()).allMatch(stocks -> stocks.size() == 1);
  }

  @Test
  void never_uses_more_than_is_on_hand() {
    TrialLayout layout =
        TrialLayout.of(
            plan(3, 3, 2, 4)
                .withGraftsPerPlot(2)
                .withSupplies(Map.of("stock 1", 11, "stock 2", 40), Map.of("cultivar 3", 25)));
    Map<String, Integer> stocks = layout.grafts(Pairing::rootstock);
    assertThat(stocks.get("stock 1")).isEqualTo(10);
    assertThat(stocks.get("stock 2")).isLessThanOrEqualTo(40);
    assertThat(layout.grafts(Pairing::cultivar).get("cultivar 3")).isLessThanOrEqualTo(25);
    assertThat(layout.pairings().worst()).isGreaterThan(0.5);
    assertThat(layout.byBlock()).hasSize(8);
    assertThat(blocks(layout)).allSatisfy(block -> assertThat(block).doesNotHaveDuplicates());
  }

  @Test
  void plots_are_numbered_in_the_order_of_work() {
    TrialLayout layout = TrialLayout.of(plan(2, 5, 2, 4).withPlotsPerSession(4));
    assertThat(layout.plots().stream().map(Plot::number))
        .containsExactlyElementsOf(IntStream.rangeClosed(1, 32).boxed().toList());
    assertThat(layout.rootstocks().orElseThrow().worst())
        .isGreaterThan(layout.pairings().worst() - 0.2);
  }

  @Test
  void refuses_what_cant_be_laid_out_with_the_remedy() {
    assertThatThrownBy(() -> plan(1, 1, 1, 3))
        .hasMessage(
            "a trial compares at least two cultivars or two rootstocks; cultivar 1 on stock 1 is"
                + " one pairing");
    assertThatThrownBy(() -> plan(2, 2, 1, 3).withPlotsPerSession(1))
        .hasMessageStartingWith("a session compares at least 2 plots, got 1");
    assertThatThrownBy(
            () -> TrialLayout.of(plan(1, 3, 2, 3).withArrangement(Arrangement.LATIN_SQUARE)))
        .hasMessage(
            "a Latin square of 3 pairings needs 3 grafters and 3 days, got 2 and 3; blocks do with"
                + " any number");
    assertThatThrownBy(
            () ->
                TrialLayout.of(
                    plan(1, 2, 4, 5).withSupplies(Map.of("stock 1", 3, "stock 2", 3), Map.of())))
        .hasMessageStartingWith("there are grafts for 6 plots but 20 sessions");
    assertThatThrownBy(
            () -> TrialLayout.of(plan(2, 2, 1, 2).withSupplies(Map.of("stock 1", 1), Map.of())))
        .hasMessage(
            "cultivar 2 on stock 1 gets no plot: room is for 8 plots of 1 graft; there is enough"
                + " of stock 1 for 1 graft: leave it out, or use fewer grafts a plot");
    assertThatThrownBy(() -> plan(2, 2, 1, 2).withSupplies(Map.of("stok 1", 1), Map.of()))
        .hasMessage(
            "there is a supply of rootstock \"stok 1\", which is not in the trial; in it are stock"
                + " 1, stock 2");
    assertThatThrownBy(
            () -> TrialLayout.of(plan(2, 2, 1, 1).withArrangement(Arrangement.SPLIT_PLOT)))
        .hasMessageContaining("one bed of each stock can't tell the stock from the bed");
    LayoutPlan beds = plan(3, 2, 2, 2).withArrangement(Arrangement.SPLIT_PLOT);
    assertThatThrownBy(() -> TrialLayout.of(beds.withPlotsPerSession(3)))
        .hasMessageContaining("take 6 plots a session")
        .hasMessageContaining("a session may hold 3; allow 6 plots a session");
    assertThat(TrialLayout.of(beds.withPlotsPerSession(6)).plots()).hasSize(24);
  }
}
