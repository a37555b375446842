package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.BitSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.publish.privacy.PublishedBefore.EarlierPage;
import org.taketally.publish.privacy.PublishedBefore.Kind;
import org.taketally.publish.privacy.PublishedBefore.Line;

/** What a season's page may hold beside the pages before it, on circles counted by hand. */
class SeasonTablesTest {

  /** m1 to m4: 7 of 10 Orrin on r1 and 5 of 10 Tamsel on r2 each; 80 grafts. Cells 0 to 7. */
  private static Circle circle(String season) {
    Circle circle = new Circle();
    for (int m = 1; m <= 4; m++) {
      circle.row("m" + m + " " + season + " Orrin r1", 7, 10);
      circle.row("m" + m + " " + season + " Tamsel r2", 5, 10);
    }
    return circle;
  }

  private static GraftsByMember evidence(Circle circle) {
    return new GraftsByMember(circle.cells(), "grafter");
  }

  private static GraftsByMember withoutSeasons(Circle circle) {
    return new GraftsByMember(circle.cells().without("season"), "grafter");
  }

  private static SeasonTables page(GraftsByMember evidence, String season, PublishedBefore before) {
    return SeasonTables.of(evidence, season, PrivacyRule.usual(), before);
  }

  private static PublishedBefore published(GraftsByMember evidence, String season) {
    PublishedBefore none = PublishedBefore.nothing();
    return none.and(page(evidence, season, none).asPublished(evidence, season));
  }

  private static Line line(String table, String column, Kind kind, String level, int... counts) {
    return new Line(table, column, List.of("2025"), kind, level, counts[0], counts[1]);
  }

  @Test
  void a_first_page_holds_seasons_cultivars_rootstocks_and_the_season_s_cultivars() {
    SeasonTables page = page(evidence(circle("2025")), "2025", PublishedBefore.nothing());

    assertThat(page.whole()).isEqualTo(Tables.range(0, 8));
    assertThat(page.late().isEmpty()).isTrue();
    assertThat(page.changedSeasons()).isEmpty();
    assertThat(page.tables())
        .extracting(PublishedTable::name)
        .containsExactly("season", "cultivar", "rootstock", "latest");
    assertThat(page.tables().get(3).of("Orrin").orElseThrow().cells())
        .isEqualTo(Tables.cells(0, 2, 4, 6));
  }

  @Test
  void what_a_page_published_are_the_counts_of_its_lines_the_whole_first() {
    GraftsByMember evidence = evidence(circle("2025"));
    SeasonTables page = page(evidence, "2025", PublishedBefore.nothing());

    assertThat(page.asPublished(evidence, "2025").lines())
        .containsExactly(
            line("all", "", Kind.ALL, "", 80, 48),
            line("season", "season", Kind.LEVEL, "2025", 80, 48),
            line("cultivar", "cultivar", Kind.LEVEL, "Orrin", 40, 28),
            line("cultivar", "cultivar", Kind.LEVEL, "Tamsel", 40, 20),
            line("rootstock", "rootstock", Kind.LEVEL, "r1", 40, 28),
            line("rootstock", "rootstock", Kind.LEVEL, "r2", 40, 20),
            line("latest", "cultivar", Kind.LEVEL, "Orrin", 40, 28),
            line("latest", "cultivar", Kind.LEVEL, "Tamsel", 40, 20));
  }

  /** Vardy and Pell are two members' each, so they are counted together. */
  @Test
  void levels_counted_together_are_published_without_their_names() {
    Circle circle = circle("2025");
    circle.row("m1 2025 Vardy r1", 5, 10).row("m2 2025 Vardy r1", 5, 10);
    circle.row("m3 2025 Pell r1", 4, 10).row("m4 2025 Pell r1", 6, 10);
    GraftsByMember evidence = evidence(circle);
    SeasonTables page = page(evidence, "2025", PublishedBefore.nothing());

    assertThat(page.asPublished(evidence, "2025").lines())
        .contains(line("cultivar", "cultivar", Kind.OTHERS, "", 40, 20))
        .noneMatch(line -> line.level().equals("Vardy") || line.level().equals("Pell"));
  }

  @Test
  void lines_of_all_seasons_name_those_shown_the_latest_table_its_own() {
    Circle circle = circle("2024");
    for (int m = 1; m <= 4; m++) {
      circle.row("m" + m + " 2025 Orrin r1", 6, 10);
    }
    GraftsByMember evidence = evidence(circle);
    List<Line> lines =
        page(evidence, "2025", PublishedBefore.nothing()).asPublished(evidence, "2025").lines();

    assertThat(lines.get(0))
        .isEqualTo(new Line("all", "", List.of("2024", "2025"), Kind.ALL, "", 120, 72));
    assertThat(lines.get(lines.size() - 1))
        .isEqualTo(new Line("latest", "cultivar", List.of("2025"), Kind.LEVEL, "Orrin", 40, 24));
  }

  @Test
  void records_without_seasons_have_a_page_without_a_latest_table() {
    GraftsByMember evidence = withoutSeasons(circle("2025"));
    SeasonTables page = page(evidence, "", PublishedBefore.nothing());

    assertThat(page.tables())
        .extracting(PublishedTable::name)
        .containsExactly("cultivar", "rootstock");
    assertThat(page.asPublished(evidence, "").lines())
        .allMatch(line -> line.seasons().equals(List.of("")));
  }

  @Test
  void two_members_have_no_page() {
    Circle two = new Circle().row("m1 2025 Orrin r1", 7, 10).row("m2 2025 Orrin r1", 5, 10);
    SeasonTables page = page(evidence(two), "2025", PublishedBefore.nothing());

    assertThat(page.whole().isEmpty()).isTrue();
    assertThat(page.tables()).isEmpty();
  }

  @Test
  void the_same_records_have_the_same_page_again() {
    GraftsByMember evidence = evidence(circle("2025"));
    PublishedBefore before = published(evidence, "2025");

    assertThat(page(evidence, "2025", before).asPublished(evidence, "2025"))
        .isEqualTo(before.pages().get(0));
  }

  /** All less the page before would be m5's 9 of 10. */
  @Test
  void a_late_sheet_of_one_member_is_held_back() {
    PublishedBefore before = published(evidence(circle("2025")), "2025");
    GraftsByMember today = evidence(circle("2025").row("m5 2025 Orrin r1", 9, 10));

    SeasonTables page = page(today, "2025", before);

    assertThat(page.whole()).isEqualTo(Tables.range(0, 8));
    assertThat(page.late()).isEqualTo(Tables.cells(8));
    assertThat(page.changedSeasons()).isEmpty();
    assertThat(page.tables().get(3).of("Orrin").orElseThrow().cells())
        .isEqualTo(Tables.cells(0, 2, 4, 6));
  }

  /** Less the page before they leave 30 grafts of three members: no one's own. */
  @Test
  void late_sheets_of_three_members_are_shown_together() {
    PublishedBefore before = published(evidence(circle("2025")), "2025");
    Circle today = circle("2025").row("m5 2025 Orrin r1", 9, 10);

    SeasonTables two = page(evidence(today.row("m6 2025 Orrin r1", 6, 11)), "2025", before);
    SeasonTables three = page(evidence(today.row("m7 2025 Orrin r1", 4, 12)), "2025", before);

    assertThat(two.whole()).isEqualTo(Tables.range(0, 8));
    assertThat(two.late()).isEqualTo(Tables.cells(8, 9));
    assertThat(three.whole()).isEqualTo(Tables.range(0, 11));
    assertThat(three.late().isEmpty()).isTrue();
  }

  /**
   * Four rows of m1's came late: 15 of 41. The sheets of m5, m6 and m7, which were on the page, are
   * the only three batches without which its counts come out, and aren't what is new.
   */
  @Test
  void what_may_be_one_member_s_is_held_back_whoever_else_it_looks_like() {
    Circle then = circle("2025");
    then.row("m5 2025 Orrin r1", 4, 11)
        .row("m6 2025 Orrin r1", 5, 13)
        .row("m7 2025 Orrin r1", 6, 17);
    PublishedBefore before = published(evidence(then), "2025");
    then.row("m1 2025 Orrin r1", 5, 7).row("m1 2025 Orrin r1", 6, 14);
    GraftsByMember today =
        evidence(then.row("m1 2025 Orrin r1", 3, 12).row("m1 2025 Orrin r1", 1, 8));

    SeasonTables page = page(today, "2025", before);

    assertThat(page.asPublished(today, "2025").lines().get(0))
        .isEqualTo(line("all", "", Kind.ALL, "", 121, 63));
  }

  /** A new season of one member's: the page stays about what it was about. */
  @Test
  void a_new_season_of_one_member_is_left_out() {
    PublishedBefore before = published(evidence(circle("2025")), "2025");
    GraftsByMember today = evidence(circle("2025").row("m1 2026 Orrin r1", 9, 10));

    SeasonTables page = page(today, "2026", before);

    assertThat(page.whole()).isEqualTo(Tables.range(0, 8));
    assertThat(page.late().isEmpty()).isTrue();
    assertThat(page.asPublished(today, "2025").lines().get(0))
        .isEqualTo(line("all", "", Kind.ALL, "", 80, 48));
  }

  /** m5's late 170 grafts would be over 80 % of the 210 added, 160 just 80 %: 40 are of 2026. */
  @Test
  void a_new_season_is_shown_with_a_late_sheet_it_hides_and_without_one_it_does_not() {
    PublishedBefore before = published(evidence(circle("2025")), "2025");
    for (int late : new int[] {160, 170}) {
      Circle today = circle("2025").row("m5 2025 Orrin r1", 90, late);
      for (int m = 1; m <= 4; m++) {
        today.row("m" + m + " 2026 Orrin r1", 6, 10);
      }
      SeasonTables page = page(evidence(today), "2026", before);

      BitSet without = Tables.range(0, 13);
      without.clear(8);
      assertThat(page.whole()).isEqualTo(late == 160 ? Tables.range(0, 13) : without);
      assertThat(page.late()).isEqualTo(late == 160 ? new BitSet() : Tables.cells(8));
      List<String> seasons = page.tables().isEmpty() ? List.of() : page.tables().get(0).shown();
      assertThat(seasons.contains("2026")).as("2026 by itself").isEqualTo(late == 170);
    }
  }

  /** m1's Orrin were counted again: 9 took, not 7. What changed isn't a late sheet. */
  @Test
  void a_season_whose_counts_have_changed_is_left_out_and_named() {
    PublishedBefore before = published(evidence(circle("2024")), "2024");
    Circle today = new Circle().row("m1 2024 Orrin r1", 9, 10).row("m1 2024 Tamsel r2", 5, 10);
    for (int m = 2; m <= 4; m++) {
      today.row("m" + m + " 2024 Orrin r1", 7, 10).row("m" + m + " 2024 Tamsel r2", 5, 10);
    }
    for (int m = 1; m <= 4; m++) {
      today.row("m" + m + " 2025 Orrin r1", 6, 10);
    }
    PublishedBefore twice =
        new PublishedBefore(List.of(before.pages().get(0), before.pages().get(0)));
    SeasonTables page = page(evidence(today), "2025", twice);

    assertThat(page.whole()).isEqualTo(Tables.range(8, 12));
    assertThat(page.changedSeasons()).containsExactly("2024");
    assertThat(page.tables().get(0).shown()).containsExactly("2025");
  }

  /** One page of 2025 is found, another isn't: what the season holds is no longer sure. */
  @Test
  void one_page_that_is_not_found_is_enough_to_leave_its_season_out() {
    GraftsByMember today = evidence(circle("2025").row("m1 2026 Orrin r1", 9, 10));
    PublishedBefore found = published(evidence(circle("2025")), "2025");
    PublishedBefore before =
        found.and(new EarlierPage(List.of(line("all", "", Kind.ALL, "", 79, 49))));

    assertThat(page(today, "2026", found).whole()).isEqualTo(Tables.range(0, 8));
    assertThat(page(today, "2026", before).whole().isEmpty()).isTrue();
  }

  @Test
  void changed_records_without_seasons_have_no_page_any_more() {
    PublishedBefore before = published(withoutSeasons(circle("2025")), "");
    Circle today = circle("2025").row("m1 2025 Orrin r1", 7, 10);

    SeasonTables page = page(withoutSeasons(today), "", before);

    assertThat(page.whole().isEmpty()).as("which of m1's two rows is new").isTrue();
    assertThat(page.changedSeasons()).containsExactly("");
  }

  @Test
  void a_page_about_seasons_leaves_nothing_once_seasons_are_left_out() {
    PublishedBefore before = published(evidence(circle("2025")), "2025");

    assertThat(page(withoutSeasons(circle("2025")), "", before).whole().isEmpty()).isTrue();
  }

  @Test
  void a_page_without_seasons_is_known_again_once_seasons_are_filled_in() {
    PublishedBefore before = published(withoutSeasons(circle("2025")), "");
    GraftsByMember today = evidence(circle("2025").row("m1 2025 Orrin r1", 9, 10));

    SeasonTables page = page(today, "2025", before);

    assertThat(page.whole()).isEqualTo(Tables.range(0, 8));
    assertThat(page.late()).isEqualTo(Tables.cells(8));
  }

  /** Nobody knows which of today's seasons that page was about. */
  @Test
  void where_a_page_without_seasons_is_not_found_again_nothing_is_shown() {
    PublishedBefore before = published(withoutSeasons(circle("2025")), "");
    Circle corrected = circle("2024").row("m1 2025 Orrin r1", 9, 10);
    for (int m = 1; m <= 4; m++) {
      corrected.row("m" + m + " 2025 Vardy r1", 3, 9);
    }

    SeasonTables page = page(evidence(corrected), "2025", before);

    assertThat(page.whole().isEmpty()).isTrue();
  }
}
