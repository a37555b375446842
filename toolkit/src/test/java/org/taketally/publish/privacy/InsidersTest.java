package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What a member learns of one other from published lines; one cell a member. */
class InsidersTest {

  /** Cells by these members in turn; "-" has no name. */
  private static GraftsByMember by(String... members) {
    Circle circle = new Circle();
    for (String member : members) {
      circle.row((member.equals("-") ? "" : member) + " s1 Orrin r1", 7, 10);
    }
    return new GraftsByMember(circle.cells(), "grafter");
  }

  private static boolean told(GraftsByMember evidence, PublishedTable... tables) {
    return new Insiders(evidence, List.of(tables)).learnOfOneMember();
  }

  @Test
  void one_line_of_three_tells_nothing_of_two_each_of_the_other() {
    assertThat(told(by("a", "b", "c"), Tables.of("all", 0, 1, 2))).isFalse();
    assertThat(told(by("a", "b"), Tables.of("all", 0, 1))).isTrue();
    assertThat(told(by("a"), Tables.of("all", 0))).isTrue();
  }

  @Test
  void several_batches_of_one_member_are_still_one() {
    assertThat(told(by("a", "a", "b", "b"), Tables.of("all", 0, 1, 2, 3))).isTrue();
  }

  @Test
  void grafts_without_a_name_hide_nobody() {
    assertThat(told(by("a", "b", "-"), Tables.of("all", 0, 1, 2))).isTrue();
    assertThat(told(by("a", "b", "c", "-"), Tables.of("all", 0, 1, 2, 3))).isFalse();
    assertThat(told(by("-", "-"), Tables.of("all", 0, 1))).isFalse();
  }

  /** All less r1: what is left is one member's, two members' (who see each other's) or three's. */
  @Test
  void a_line_less_another_must_leave_three() {
    PublishedTable r1 = Tables.of("r1", 0, 1, 2);
    GraftsByMember circle = by("a", "b", "c", "d", "e", "f");

    assertThat(told(circle, Tables.of("all", 0, 1, 2, 3), r1)).isTrue();
    assertThat(told(circle, Tables.of("all", 0, 1, 2, 3, 4), r1)).isTrue();
    assertThat(told(circle, Tables.of("all", 0, 1, 2, 3, 4, 5), r1)).isFalse();
  }

  /** r2 has three members behind it, r1 two: b is seen by a, who grafted on both. */
  @Test
  void one_line_of_two_members_tells_though_the_others_do_not() {
    PublishedTable stocks = Tables.of("stocks", Tables.cells(0, 1), Tables.cells(2, 3, 4));

    assertThat(told(by("a", "b", "a", "c", "d"), stocks)).isTrue();
    assertThat(told(by("a", "b", "a", "c", "d"), Tables.of("all", 0, 1, 2, 3, 4))).isFalse();
  }

  /** Two cultivars on two stocks, two members in each of the four: no margin tells of one. */
  @Test
  void two_members_a_cell_are_safe_where_only_margins_are_published() {
    GraftsByMember circle = by("a", "b", "c", "d", "e", "f", "g", "h");
    PublishedTable cultivars =
        Tables.of("cultivar", Tables.cells(0, 1, 2, 3), Tables.cells(4, 5, 6, 7));
    PublishedTable stocks =
        Tables.of("rootstock", Tables.cells(0, 1, 4, 5), Tables.cells(2, 3, 6, 7));
    PublishedTable latest = Tables.of("latest", 0, 1);

    assertThat(told(circle, cultivars, stocks)).isFalse();
    assertThat(told(circle, cultivars, stocks, latest)).isTrue();
  }

  /** The same with one cell empty: the second cultivar stands on the second stock only. */
  @Test
  void an_empty_cell_lets_the_margins_tell_of_two() {
    GraftsByMember circle = by("a", "b", "c", "d", "e", "f");
    PublishedTable cultivars = Tables.of("cultivar", Tables.cells(0, 1, 2, 3), Tables.cells(4, 5));
    PublishedTable stocks = Tables.of("rootstock", Tables.cells(0, 1), Tables.cells(2, 3, 4, 5));

    assertThat(told(circle, cultivars, stocks)).isTrue();
  }

  /** Half of one and two less three is c and d: one of them takes off their own. */
  @Test
  void three_pairs_summed_in_twos_tell_each_pair() {
    GraftsByMember circle = by("a", "b", "c", "d", "e", "f");
    PublishedTable one = Tables.of("one", 0, 1, 2, 3);
    PublishedTable two = Tables.of("two", 2, 3, 4, 5);
    PublishedTable three = Tables.of("three", 0, 1, 4, 5);

    assertThat(told(circle, one)).isFalse();
    assertThat(told(circle, one, two)).isFalse();
    assertThat(told(circle, one, two, three)).isTrue();
  }
}
