package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.BitSet;
import org.junit.jupiter.api.Test;
import org.taketally.answers.counts.TakeCount;
import org.taketally.cells.Factor;

/** When a group of grafts may be shown, at each limit of the rule; and which groups have a name. */
class GraftsByMemberTest {

  private static final PrivacyRule USUAL = PrivacyRule.usual();

  private static GraftsByMember by(Circle circle) {
    return new GraftsByMember(circle.cells(), "grafter");
  }

  /** So many takes of so many grafts by m1, m2 and so on. */
  private static GraftsByMember members(int[]... takesOfGrafts) {
    Circle circle = new Circle();
    for (int m = 0; m < takesOfGrafts.length; m++) {
      circle.row("m" + (m + 1) + " s1 Orrin r1", takesOfGrafts[m][0], takesOfGrafts[m][1]);
    }
    return by(circle);
  }

  private static int[] of(int takes, int grafts) {
    return new int[] {takes, grafts};
  }

  private static boolean mayBeShown(GraftsByMember evidence) {
    return evidence.allows(evidence.all(), USUAL);
  }

  @Test
  void nine_grafts_are_too_few_ten_are_enough() {
    assertThat(mayBeShown(members(of(2, 3), of(1, 3), of(1, 3)))).isFalse();
    assertThat(mayBeShown(members(of(2, 3), of(1, 3), of(1, 4)))).isTrue();
    assertThat(mayBeShown(members(of(2, 3), of(1, 4), of(1, 4)))).isTrue();
  }

  @Test
  void two_members_are_too_few_three_are_enough() {
    assertThat(mayBeShown(members(of(6, 10), of(6, 10)))).isFalse();
    assertThat(mayBeShown(members(of(6, 10), of(6, 10), of(6, 10)))).isTrue();
  }

  /** 80 of 100 are four fifths; 81 of 101 a little more, 79 of 99 a little less. */
  @Test
  void four_fifths_by_one_member_are_just_allowed() {
    assertThat(mayBeShown(members(of(40, 79), of(5, 10), of(5, 10)))).isTrue();
    assertThat(mayBeShown(members(of(40, 80), of(5, 10), of(5, 10)))).isTrue();
    assertThat(mayBeShown(members(of(40, 81), of(5, 10), of(5, 10)))).isFalse();
  }

  @Test
  void grafts_without_a_name_are_one_hand_when_shares_are_looked_at() {
    Circle circle = new Circle();
    for (int m = 1; m <= 3; m++) {
      circle.row("m" + m + " s1 Orrin r1", 5, 10);
    }
    assertThat(mayBeShown(by(circle.row(" s1 Orrin r1", 60, 120)))).isTrue();
    assertThat(mayBeShown(by(circle.row(" s1 Orrin r1", 0, 1)))).isFalse();
  }

  @Test
  void no_graft_and_no_name_may_never_be_shown() {
    GraftsByMember nameless = by(new Circle().row(" s1 Orrin r1", 20, 40));

    assertThat(nameless.namesMembers()).isFalse();
    assertThat(mayBeShown(nameless)).isFalse();
    GraftsByMember three = members(of(6, 10), of(6, 10), of(6, 10));
    assertThat(three.namesMembers()).isTrue();
    assertThat(three.allows(new BitSet(), USUAL)).isFalse();
  }

  @Test
  void none_or_all_taken_of_four_members_tells_each_result_of_five_it_is_allowed() {
    for (int takes : new int[] {0, 10}) {
      assertThat(mayBeShown(members(of(takes, 10), of(takes, 10), of(takes, 10), of(takes, 10))))
          .isFalse();
      assertThat(
              mayBeShown(
                  members(
                      of(takes, 10), of(takes, 10), of(takes, 10), of(takes, 10), of(takes, 10))))
          .isTrue();
    }
  }

  /** Only m1 has both takes and failures: taking off their own, m1 sees the others' all or none. */
  @Test
  void one_exception_hides_nothing_from_who_made_it_two_do() {
    assertThat(mayBeShown(members(of(9, 10), of(10, 10), of(10, 10)))).isFalse();
    assertThat(mayBeShown(members(of(1, 10), of(0, 10), of(0, 10)))).isFalse();
    assertThat(mayBeShown(members(of(9, 10), of(9, 10), of(10, 10)))).isTrue();
    assertThat(mayBeShown(members(of(1, 10), of(1, 10), of(0, 10)))).isTrue();
  }

  /** m1 to m3 took all or none of 10 each; whoever made the five without a name learns it. */
  @Test
  void grafts_without_a_name_hide_nobody_where_all_others_took_or_none() {
    for (int takes : new int[] {0, 10}) {
      Circle circle = new Circle().row(" s1 Orrin r1", takes == 0 ? 5 : 0, 5);
      for (int m = 1; m <= 3; m++) {
        circle.row("m" + m + " s1 Orrin r1", takes, 10);
      }
      assertThat(mayBeShown(by(circle))).isFalse();
      circle.row("m4 s1 Orrin r1", 10 - takes, 10);
      assertThat(mayBeShown(by(circle))).as("m4 sees it, too").isFalse();
      circle.row("m5 s1 Orrin r1", takes, 10);
      assertThat(mayBeShown(by(circle))).as("five members").isTrue();
    }
  }

  /** Where one member is enough, as in records of one's own, no one else is hidden. */
  @Test
  void a_rule_of_one_member_shows_that_member_s_grafts() {
    PrivacyRule own = new PrivacyRule(10, 1, 1, 2);
    GraftsByMember some = members(of(6, 10));
    GraftsByMember all = members(of(10, 10));

    assertThat(some.allows(some.all(), own)).isTrue();
    assertThat(all.allows(all.all(), own)).isFalse();
  }

  /** m1 6, m2 4, m3 3 grafts; of 11 at least one is m3's. */
  @Test
  void any_part_is_safe_from_one_graft_more_than_two_members_hold() {
    GraftsByMember evidence = members(of(3, 6), of(2, 4), of(2, 3));

    assertThat(evidence.allowsAnyPartOf(new TakeCount(5, 10), USUAL)).isFalse();
    assertThat(evidence.allowsAnyPartOf(new TakeCount(5, 11), USUAL)).isTrue();
  }

  @Test
  void any_part_needs_as_many_grafts_as_a_line() {
    GraftsByMember evidence = members(of(2, 3), of(2, 3), of(2, 3), of(2, 3));

    assertThat(evidence.allowsAnyPartOf(new TakeCount(5, 9), USUAL)).isFalse();
    assertThat(evidence.allowsAnyPartOf(new TakeCount(5, 10), USUAL)).isTrue();
  }

  /** m1 holds 8: four fifths of 10, more than that of 9. */
  @Test
  void any_part_may_be_four_fifths_of_one_member_s() {
    PrivacyRule nine = new PrivacyRule(9, 2, 0.8, 5);
    GraftsByMember evidence = members(of(4, 8), of(2, 4));

    assertThat(evidence.allowsAnyPartOf(new TakeCount(5, 9), nine)).isFalse();
    assertThat(evidence.allowsAnyPartOf(new TakeCount(5, 10), nine)).isTrue();
  }

  /** 10 grafts each: of 40 at least four members', of 41 five's. */
  @Test
  void any_part_of_which_none_or_all_took_must_be_of_five() {
    GraftsByMember evidence =
        members(of(5, 10), of(5, 10), of(5, 10), of(5, 10), of(5, 10), of(5, 10));

    assertThat(evidence.allowsAnyPartOf(new TakeCount(0, 40), USUAL)).isFalse();
    assertThat(evidence.allowsAnyPartOf(new TakeCount(40, 40), USUAL)).isFalse();
    assertThat(evidence.allowsAnyPartOf(new TakeCount(0, 41), USUAL)).isTrue();
    assertThat(evidence.allowsAnyPartOf(new TakeCount(41, 41), USUAL)).isTrue();
    assertThat(evidence.allowsAnyPartOf(new TakeCount(1, 40), USUAL)).isTrue();
    assertThat(evidence.allowsAnyPartOf(new TakeCount(39, 40), USUAL)).isTrue();
  }

  @Test
  void grafts_without_a_name_may_be_all_of_a_part() {
    Circle circle = new Circle().row(" s1 Orrin r1", 5, 10);
    for (int m = 1; m <= 3; m++) {
      circle.row("m" + m + " s1 Orrin r1", 2, 4);
    }
    assertThat(by(circle).allowsAnyPartOf(new TakeCount(5, 18), USUAL)).isFalse();
    assertThat(by(circle).allowsAnyPartOf(new TakeCount(5, 19), USUAL)).isTrue();
    assertThat(
            by(new Circle().row(" s1 Orrin r1", 9, 40))
                .allowsAnyPartOf(new TakeCount(5, 40), USUAL))
        .isFalse();
  }

  @Test
  void levels_keep_their_order_and_a_missing_one_comes_last() {
    GraftsByMember evidence =
        by(new Circle().row("m1 s1 Orrin ", 1, 2).row("m2 s1 Tamsel r1", 1, 2));

    assertThat(evidence.levels("cultivar")).containsExactly("Orrin", "Tamsel");
    assertThat(evidence.levels("rootstock")).containsExactly("r1", "");
    assertThat(evidence.levels("bed")).isEmpty();
  }

  @Test
  void a_level_is_its_cells_and_a_name_nobody_wrote_is_none() {
    GraftsByMember evidence =
        by(new Circle().row("m1 s1 Orrin ", 1, 2).row("m2 s1 Tamsel r1", 1, 2));

    assertThat(evidence.level("rootstock", "r1")).isEqualTo(Tables.cells(1));
    assertThat(evidence.level("rootstock", "")).isEqualTo(Tables.cells(0));
    assertThat(evidence.level("rootstock", "r2").isEmpty()).isTrue();
  }

  @Test
  void a_cell_knows_its_level_and_its_member() {
    GraftsByMember evidence = by(new Circle().row("m1 s1 Orrin ", 1, 2).row(" s1 Tamsel r1", 1, 2));

    assertThat(evidence.levelOf("rootstock", 0)).isEmpty();
    assertThat(evidence.levelOf("rootstock", 1)).isEqualTo("r1");
    assertThat(evidence.levelOf("cultivar", 0)).isEqualTo("Orrin");
    assertThat(evidence.levelOf("cultivar", 1)).isEqualTo("Tamsel");
    assertThat(evidence.levelOf("bed", 1)).isEmpty();
    assertThat(evidence.member(0)).isZero();
    assertThat(evidence.member(1)).isEqualTo(Factor.MISSING);
  }

  /** Two columns of two levels: each level, each two in common; a missing one counts as a level. */
  @Test
  void groups_with_a_name_are_levels_and_what_two_of_them_have_in_common() {
    Circle circle = new Circle();
    circle.row("m1 s1 Orrin r1", 1, 2).row("m2 s1 Tamsel ", 1, 2).row("m3 s1 Orrin ", 1, 2);
    GraftsByMember evidence =
        new GraftsByMember(circle.cells().without("grafter").without("season"), "grafter");

    assertThat(evidence.namedGroups())
        .containsExactlyInAnyOrder(
            Tables.cells(0, 2), // Orrin
            Tables.cells(1), // Tamsel
            Tables.cells(0), // Orrin on r1
            Tables.cells(1), // Tamsel on no stock written down
            Tables.cells(2), // Orrin on no stock written down
            Tables.cells(0), // r1
            Tables.cells(1, 2)); // no stock written down
  }

  @Test
  void counts_of_a_group_are_sums() {
    GraftsByMember evidence = members(of(3, 6), of(2, 4), of(2, 3));

    assertThat(evidence.count(Tables.cells(0, 2)).takes()).isEqualTo(5);
    assertThat(evidence.count(Tables.cells(0, 2)).grafts()).isEqualTo(9);
    assertThat(evidence.memberGroups())
        .containsExactly(Tables.cells(0), Tables.cells(1), Tables.cells(2));
  }
}
