package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.answers.counts.TakeCount;
import org.taketally.publish.privacy.Disclosure.Request;

/** The privacy rules one by one, on circles small enough to count by hand. */
class SmallCircleTest {

  private static List<PublishedTable> tables(Circle circle, PrivacyRule rule, String... columns) {
    GraftsByMember evidence = new GraftsByMember(circle.cells(), "grafter");
    List<Request> requests = new ArrayList<>();
    for (String column : columns) {
      requests.add(new Request(column, column, evidence.all()));
    }
    return new Disclosure(evidence, rule).tables(requests);
  }

  private static PublishedTable only(Circle circle, String column) {
    return tables(circle, PrivacyRule.usual(), column).get(0);
  }

  /** 8 of 10 grafts each by so many members. */
  private static void plenty(Circle circle, String what, int members) {
    for (int m = 1; m <= members; m++) {
      circle.row("m" + m + " " + what, 8, 10);
    }
  }

  @Test
  void a_level_of_two_members_is_counted_with_the_next_smallest() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 5);
    plenty(circle, "s1 Tamsel r1", 4);
    plenty(circle, "s1 Vardy r1", 2);

    PublishedTable table = only(circle, "cultivar");

    assertThat(table.shown()).containsExactly("Orrin");
    assertThat(table.merged()).containsExactlyInAnyOrder("Vardy", "Tamsel");
  }

  @Test
  void two_small_levels_are_counted_together_and_nothing_else_is_lost() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 5);
    plenty(circle, "s1 Tamsel r1", 4);
    circle.row("m1 s1 Vardy r1", 3, 6).row("m2 s1 Vardy r1", 3, 6).row("m3 s1 Skerry r1", 3, 6);

    PublishedTable table = only(circle, "cultivar");

    assertThat(table.shown()).containsExactly("Orrin", "Tamsel");
    assertThat(table.merged()).containsExactlyInAnyOrder("Skerry", "Vardy");
  }

  @Test
  void fewer_than_ten_grafts_are_too_few_even_of_many_members() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 4);
    plenty(circle, "s1 Tamsel r1", 4);
    for (int m = 1; m <= 4; m++) {
      circle.row("m" + m + " s1 Vardy r1", 1, 2);
    }

    assertThat(only(circle, "cultivar").shown()).doesNotContain("Vardy").hasSize(1);
  }

  @Test
  void a_level_mostly_of_one_member_is_not_shown() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 4);
    plenty(circle, "s1 Tamsel r1", 4);
    circle.row("m1 s1 Vardy r1", 60, 81).row("m2 s1 Vardy r1", 5, 10).row("m3 s1 Vardy r1", 5, 10);

    assertThat(only(circle, "cultivar").of("Vardy")).isEmpty();
  }

  @Test
  void exactly_four_fifths_by_one_member_is_just_allowed() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 4);
    circle.row("m1 s1 Vardy r1", 60, 80).row("m2 s1 Vardy r1", 5, 10).row("m3 s1 Vardy r1", 5, 10);

    assertThat(only(circle, "cultivar").of("Vardy")).isPresent();
  }

  @Test
  void none_or_all_taken_needs_five_members() {
    for (int takes : new int[] {0, 10}) {
      for (int members : new int[] {4, 5}) {
        Circle circle = new Circle();
        plenty(circle, "s1 Orrin r1", 6);
        plenty(circle, "s1 Tamsel r1", 6);
        for (int m = 1; m <= members; m++) {
          circle.row("m" + m + " s1 Vardy r1", takes, 10);
        }
        assertThat(only(circle, "cultivar").of("Vardy").isPresent())
            .as("%d takes, %d members", takes, members)
            .isEqualTo(members == 5);
      }
    }
  }

  @Test
  void strict_asks_for_five_members() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 5);
    plenty(circle, "s1 Tamsel r1", 5);
    plenty(circle, "s1 Vardy r1", 4);

    assertThat(tables(circle, PrivacyRule.usual(), "cultivar").get(0).shown()).hasSize(3);
    assertThat(tables(circle, PrivacyRule.strict(), "cultivar").get(0).shown())
        .containsExactly("Tamsel");
  }

  @Test
  void two_members_alone_get_no_table_at_all() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 2);
    plenty(circle, "s1 Tamsel r1", 2);

    assertThat(tables(circle, PrivacyRule.usual(), "season", "cultivar", "rootstock")).isEmpty();
  }

  /** Orrin stands on r1 only; r1 less Orrin would be one member's six grafts of Tamsel. */
  @Test
  void a_cultivar_is_merged_if_a_rootstock_less_it_would_tell_on_a_member() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 4);
    circle.row("m1 s1 Tamsel r1", 1, 6);
    plenty(circle, "s1 Tamsel r2", 4);
    plenty(circle, "s1 Vardy r2", 4);

    List<PublishedTable> tables = tables(circle, PrivacyRule.usual(), "rootstock", "cultivar");

    assertThat(tables.get(0).shown()).containsExactly("r1", "r2");
    assertThat(tables.get(1).of("Orrin")).isEmpty();
    assertThat(tables.get(1).merged()).hasSizeGreaterThan(1).contains("Orrin");
  }

  /** The cultivars are published already, so r1 must go, and with it the smallest other. */
  @Test
  void a_rootstock_is_merged_if_it_less_a_cultivar_would_tell_on_a_member() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 9);
    circle.row("m1 s1 Tamsel r1", 1, 6);
    plenty(circle, "s1 Tamsel r2", 4);
    plenty(circle, "s1 Tamsel r3", 3);
    plenty(circle, "s1 Vardy r2", 4);
    plenty(circle, "s1 Vardy r4", 4);
    plenty(circle, "s1 Pell r4", 4);

    List<PublishedTable> tables = tables(circle, PrivacyRule.usual(), "cultivar", "rootstock");

    assertThat(tables.get(0).shown()).containsExactly("Orrin", "Pell", "Tamsel", "Vardy");
    assertThat(tables.get(1).shown()).containsExactly("r2", "r4");
    assertThat(tables.get(1).merged()).containsExactlyInAnyOrder("r1", "r3");
  }

  /** r1 less Orrin is 9 grafts of three members, of Tamsel and Vardy: no level, yet too few. */
  @Test
  void what_is_left_of_a_rootstock_may_not_be_too_little_even_if_it_has_no_name() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 9);
    for (int m = 1; m <= 3; m++) {
      circle.row("m" + m + " s1 Tamsel r1", m % 2, 1).row("m" + m + " s1 Vardy r1", 1, 2);
    }
    plenty(circle, "s1 Tamsel r2", 4);
    plenty(circle, "s1 Tamsel r3", 3);
    plenty(circle, "s1 Vardy r2", 4);
    plenty(circle, "s1 Vardy r4", 4);
    plenty(circle, "s1 Pell r4", 4);

    PublishedTable stocks = tables(circle, PrivacyRule.usual(), "cultivar", "rootstock").get(1);

    assertThat(stocks.shown()).containsExactly("r2", "r4");
    assertThat(stocks.merged()).containsExactlyInAnyOrder("r1", "r3");
  }

  /**
   * Season 1, Orrin and r1 hold two of three small groups each: half of season 1 and r1 less Orrin
   * is Tamsel on r1, three members' 9 grafts. Any two tables are safe, three are not; from 10
   * grafts a group all are.
   */
  @Test
  void no_small_group_follows_from_three_tables_together() {
    for (int grafts : new int[] {3, 4}) {
      Circle circle = new Circle();
      for (int m = 1; m <= 3; m++) {
        circle.row("m" + m + " s1 Tamsel r1", 2, grafts);
        circle.row("m" + m + " s1 Orrin r2", 2, grafts);
        circle.row("m" + m + " s2 Orrin r1", 2, grafts);
        circle.row("m" + m + " s2 Tamsel r2", 6, 10);
      }
      assertThat(tables(circle, PrivacyRule.usual(), "season", "cultivar", "rootstock"))
          .as("%d grafts each", grafts)
          .hasSize(grafts == 3 ? 2 : 3);
    }
  }

  /** By a rule of two members Vardy might be shown; yet each of the two would see the other's. */
  @Test
  void whatever_the_rule_neither_of_two_members_is_told_of_the_other() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 4);
    plenty(circle, "s1 Tamsel r1", 4);
    plenty(circle, "s1 Vardy r1", 2);
    GraftsByMember evidence = new GraftsByMember(circle.cells(), "grafter");
    PrivacyRule two = new PrivacyRule(10, 2, 0.8, 5);

    assertThat(evidence.allows(evidence.level("cultivar", "Vardy"), two)).isTrue();
    assertThat(tables(circle, two, "cultivar").get(0).of("Vardy")).isEmpty();
  }

  /** A table of one season beside one of all: neither covers the other's lines. */
  @Test
  void a_table_of_one_season_counts_that_season_only_and_takes_nothing_from_others() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 4);
    plenty(circle, "s2 Orrin r1", 4);
    plenty(circle, "s1 Tamsel r1", 4);
    plenty(circle, "s2 Tamsel r1", 4);
    GraftsByMember evidence = new GraftsByMember(circle.cells(), "grafter");
    Disclosure disclosure = new Disclosure(evidence, PrivacyRule.usual());

    List<PublishedTable> tables =
        disclosure.tables(
            List.of(
                new Request("s1", "cultivar", evidence.level("season", "s1")),
                new Request("all", "cultivar", evidence.all())));

    assertThat(tables.get(0).of("Orrin").orElseThrow().cells()).isEqualTo(Tables.range(0, 4));
    assertThat(tables.get(0).of("Tamsel").orElseThrow().cells()).isEqualTo(Tables.range(8, 12));
    assertThat(tables.get(1).shown()).containsExactly("Orrin", "Tamsel");
  }

  /** After a page of four members: the same again, one or two more, three more. */
  @Test
  void a_whole_is_allowed_if_what_was_added_to_the_last_one_is() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 7);
    GraftsByMember evidence = new GraftsByMember(circle.cells(), "grafter");
    Disclosure disclosure = new Disclosure(evidence, PrivacyRule.usual());
    List<PublishedTable> four = List.of(PublishedTable.ofAll(Tables.range(0, 4)));

    assertThat(disclosure.allowsWhole(Tables.range(0, 4), four)).isTrue();
    assertThat(disclosure.allowsWhole(Tables.range(0, 5), four)).isFalse();
    assertThat(disclosure.allowsWhole(Tables.range(0, 6), four)).isFalse();
    assertThat(disclosure.allowsWhole(Tables.range(0, 7), four)).isTrue();
    assertThat(disclosure.allowsWhole(Tables.range(0, 2), List.of())).isFalse();
  }

  @Test
  void grafts_without_a_name_count_as_no_member() {
    Circle circle = new Circle();
    plenty(circle, "s1 Orrin r1", 5);
    plenty(circle, "s1 Tamsel r1", 5);
    plenty(circle, "s1 Vardy r1", 2);
    circle.row(" s1 Vardy r1", 8, 10);

    assertThat(only(circle, "cultivar").of("Vardy")).isEmpty();
    assertThat(new GraftsByMember(circle.cells(), "grafter").unnamedGrafts()).isEqualTo(10);
  }

  /** The same grafts are shown by their members' names; leaving names out mustn't show more. */
  @Test
  void without_any_name_no_line_is_shown() {
    Circle circle = new Circle();
    circle.row(" s1 Orrin r1", 20, 40).row(" s1 Tamsel r1", 15, 30).row(" s1 Pell r1", 300, 600);

    assertThat(new GraftsByMember(circle.cells(), "grafter").namesMembers()).isFalse();
    assertThat(tables(circle, PrivacyRule.usual(), "cultivar")).isEmpty();
  }

  /** Four of five take nothing at all: the fifth, who took 9 of 10, would see it. */
  @Test
  void a_level_where_only_the_insider_s_grafts_took_needs_five_members() {
    for (int members : new int[] {4, 5}) {
      Circle circle = new Circle();
      plenty(circle, "s1 Orrin r1", 6);
      plenty(circle, "s1 Tamsel r1", 6);
      for (int m = 1; m <= members; m++) {
        circle.row("m" + m + " s1 Vardy r1", m == 1 ? 9 : 0, 10);
      }
      assertThat(only(circle, "cultivar").of("Vardy").isPresent()).isEqualTo(members == 5);
    }
  }

  /** m1 40, m2 30, m3 20, m4 10 grafts: 71 grafts can't be those of m1 and m2 alone. */
  @Test
  void a_part_is_safe_only_if_it_cannot_be_the_work_of_two() {
    Circle circle = new Circle();
    for (int m = 1; m <= 4; m++) {
      circle.row("m" + m + " s1 Orrin r1", 10, 50 - 10 * m);
    }
    GraftsByMember evidence = new GraftsByMember(circle.cells(), "grafter");

    assertThat(evidence.allowsAnyPartOf(new TakeCount(5, 71), PrivacyRule.usual())).isTrue();
    assertThat(evidence.allowsAnyPartOf(new TakeCount(5, 70), PrivacyRule.usual())).isFalse();
    assertThat(evidence.allowsAnyPartOf(new TakeCount(5, 71), new PrivacyRule(10, 3, 0.5, 5)))
        .isFalse();
    assertThat(evidence.allowsAnyPartOf(new TakeCount(5, 100), PrivacyRule.strict())).isFalse();
  }

  @Test
  void refuses_thresholds_that_make_no_sense() {
    assertThatThrownBy(() -> new PrivacyRule(0, 3, 0.8, 5))
        .hasMessage("grafts and members must be 1 or more, got 0, 3 and 5");
    assertThatThrownBy(() -> new PrivacyRule(10, 3, Double.NaN, 5))
        .hasMessage("the largest share must lie above 0 and at most at 1, got NaN");
  }
}
