package org.taketally.records.invented;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.taketally.records.invented.Scenario.SeasonPlan;

/** The published records tell the story their README tells: what misleads is really in them. */
class TrapsTest {

  private static final List<GraftRow> AVOCADO =
      rows(Scenarios.avocado(InventedRecords.AVOCADO_SEED));
  private static final List<GraftRow> WALNUT = rows(Scenarios.walnut(InventedRecords.WALNUT_SEED));

  private static List<GraftRow> rows(Scenario scenario) {
    Grafting grafting = new Grafting(scenario, Truth.bundled(scenario.folder()));
    List<GraftRow> rows = new ArrayList<>();
    for (SeasonPlan plan : scenario.seasons()) {
      rows.addAll(grafting.rows(plan));
    }
    return rows;
  }

  @Test
  void the_novice_grafted_mostly_one_cultivar_and_makes_it_look_hard() {
    Predicate<GraftRow> corvane = row -> row.wood().cultivar().equals("Corvane");
    Predicate<GraftRow> kit = row -> row.wood().session().grafter().equals("Kit");
    assertThat(grafts(corvane.and(kit)) / grafts(kit)).isGreaterThan(0.7);
    assertThat(take(3, corvane.and(kit.negate())) - take(3, corvane)).isGreaterThan(0.10);
  }

  @Test
  void the_hot_week_held_two_cultivars_and_took_badly() {
    Predicate<GraftRow> hot = row -> row.wood().session().airTempC() > 36;
    Predicate<GraftRow> pair =
        row -> List.of("Larkmoor", "Selwick").contains(row.wood().cultivar());
    assertThat(grafts(hot)).isEqualTo(grafts(hot.and(pair))).isGreaterThan(100);
    assertThat(take(3, pair.and(hot.negate())) - take(3, pair.and(hot))).isGreaterThan(0.20);
  }

  @Test
  void the_slow_stock_starts_behind_and_ends_like_the_others() {
    Predicate<GraftRow> slow = row -> row.rootstock().equals("Ostrey");
    assertThat(take(1, slow.negate()) - take(1, slow)).isGreaterThan(0.20);
    assertThat(take(3, slow)).isCloseTo(take(3, slow.negate()), within(0.02));
  }

  @Test
  void one_seedling_bed_has_more_weak_stocks() {
    Predicate<GraftRow> quarry = row -> row.rootstock().equals("Quarry seedling");
    Predicate<GraftRow> weak = row -> row.condition().equals("weak");
    double inQuarry = grafts(quarry.and(weak)) / grafts(quarry);
    double elsewhere = grafts(quarry.negate().and(weak)) / grafts(quarry.negate());
    assertThat(inQuarry).isGreaterThan(1.8 * elsewhere);
  }

  @Test
  void between_15_and_30_percent_of_early_takes_are_lost() {
    Predicate<GraftRow> quick = row -> !row.rootstock().equals("Ostrey");
    assertThat(1 - take(3, quick) / take(1, quick)).isBetween(0.15, 0.30);
  }

  @Test
  void every_rootstock_was_grafted_alike_in_every_season() {
    for (String rootstock : Truth.bundled(Scenarios.AVOCADO).levels("rootstock")) {
      Predicate<GraftRow> on = row -> row.rootstock().equals(rootstock);
      assertThat(grafts(on)).isBetween(750.0, 900.0);
      for (String season : List.of("2022", "2023", "2024", "2025")) {
        Predicate<GraftRow> in = row -> row.wood().session().season().equals(season);
        assertThat(grafts(on.and(in)) / grafts(in)).isCloseTo(1 / 6.0, within(0.03));
      }
    }
  }

  @Test
  void one_walnut_stock_is_bad() {
    Predicate<GraftRow> bad = row -> row.rootstock().equals("Greyshell seedling");
    List<GraftRow> good = WALNUT.stream().filter(bad.negate()).toList();
    List<GraftRow> poor = WALNUT.stream().filter(bad).toList();
    assertThat(take(3, good) - take(3, poor)).isBetween(0.20, 0.40);
  }

  private static double grafts(Predicate<GraftRow> which) {
    return AVOCADO.stream().filter(which).mapToInt(row -> row.grafts().size()).sum();
  }

  private static double take(int look, Predicate<GraftRow> which) {
    return take(look, AVOCADO.stream().filter(which).toList());
  }

  private static double take(int look, List<GraftRow> rows) {
    double alive = rows.stream().mapToInt(row -> row.alive(look)).sum();
    return alive / rows.stream().mapToInt(row -> row.grafts().size()).sum();
  }
}
