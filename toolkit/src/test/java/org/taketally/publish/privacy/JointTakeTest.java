package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said of two people's takes together; ranges of takes worked out by hand. */
class JointTakeTest {

  private static Optional<JointTake> of(Circle circle, OptionalInt stated) {
    GraftsByMember evidence = new GraftsByMember(circle.cells(), "grafter");
    return JointTake.of(evidence, stated, PrivacyRule.usual());
  }

  private static Optional<JointTake> named(int takes, int grafts, int otherTakes, int otherGrafts) {
    Circle circle = new Circle().row("m1 s1 Orrin r1", takes, grafts);
    return of(circle.row("m2 s1 Orrin r1", otherTakes, otherGrafts), OptionalInt.empty());
  }

  private static Optional<JointTake> unnamed(int takes, int grafts, int people) {
    return of(new Circle().row(" s1 Orrin r1", takes, grafts), OptionalInt.of(people));
  }

  /** Of 60: none is 0 to 2 takes, the nearest tenth 6 k - 3 to 6 k + 2, all 57 to 60. */
  @ParameterizedTest
  @CsvSource({
    "0, 0, 0, 2, 0",
    "1, 0, 0, 2, 0",
    "10, 10, 15, 20, 3",
    "12, 10, 21, 26, 4",
    "20, 20, 39, 44, 7",
    "30, 26, 51, 56, 9",
    "29, 29, 57, 60, 10",
    "30, 30, 57, 60, 10"
  })
  void two_with_thirty_grafts_each_get_the_nearest_tenth(
      int first, int second, long low, long high, int part) {
    assertThat(named(first, 30, second, 30)).contains(new JointTake(60, low, high, 10, part));
  }

  /** Of 20 a tenth is 1.5 to 2.5 takes, at most two: too fine. Quarters: 0-4, 5-9, 10-14, 15-20. */
  @ParameterizedTest
  @CsvSource({
    "1, 2, 0, 4, 0",
    "3, 3, 5, 9, 1",
    "6, 6, 10, 14, 2",
    "7, 9, 15, 20, 3",
    "10, 10, 15, 20, 3"
  })
  void two_with_ten_grafts_each_get_the_quarter(
      int first, int second, long low, long high, int part) {
    assertThat(named(first, 10, second, 10)).contains(new JointTake(20, low, high, 4, part));
  }

  /**
   * "None" of 60 is 0 to 2 takes, so that one who had 2 knew the other's 0; the quarter is 0-14.
   */
  @Test
  void whose_takes_are_all_that_could_be_is_told_less() {
    assertThat(named(1, 30, 1, 30)).contains(new JointTake(60, 0, 2, 10, 0));
    assertThat(named(2, 30, 0, 30)).contains(new JointTake(60, 0, 14, 4, 0));
    assertThat(named(0, 10, 4, 10)).contains(new JointTake(20, 0, 9, 2, 0));
  }

  /** Even the half, 10 to 20, tells the one without a take that all of the other's took. */
  @Test
  void one_with_all_and_one_with_none_are_told_nothing() {
    assertThat(named(10, 10, 0, 10)).isEmpty();
  }

  /** Of 30 the first tenth is 2 to 4 takes: exactly the three values that must stay possible. */
  @Test
  void three_possible_takes_are_enough_two_are_not() {
    assertThat(named(1, 15, 2, 15)).contains(new JointTake(30, 2, 4, 10, 1));
    assertThat(named(1, 10, 2, 12)).get().extracting(JointTake::parts).isEqualTo(4);
  }

  @Test
  void ten_grafts_by_two_people_are_just_enough() {
    assertThat(named(1, 5, 0, 5)).contains(new JointTake(10, 0, 2, 4, 0));
    assertThat(named(1, 5, 0, 4)).isEmpty();
    assertThat(unnamed(6, 10, 2)).contains(new JointTake(10, 5, 7, 4, 2));
    assertThat(unnamed(6, 10, 1)).isEmpty();
    assertThat(of(new Circle().row(" s1 Orrin r1", 6, 10), OptionalInt.empty())).isEmpty();
  }

  /** Of 60 grafts "none" means 0 to 2: whoever had both takes knew the other's 0. */
  @Test
  void without_names_the_takes_never_lie_at_an_end_of_what_is_said_but_none_and_all() {
    for (int takes = 0; takes <= 60; takes++) {
      JointTake joint = unnamed(takes, 60, 2).orElseThrow();
      assertThat(takes > joint.low() || joint.low() == 0).as("%d takes", takes).isTrue();
      assertThat(takes < joint.high() || joint.high() == 60).as("%d takes", takes).isTrue();
    }
  }

  @Test
  void two_people_s_joint_take_is_said_so_that_neither_learns_of_the_other() {
    for (int first = 0; first <= 20; first++) {
      for (int second = 0; second <= 20; second++) {
        Circle circle = new Circle();
        circle.row("m1 s1 Orrin r1", first, 20).row("m2 s1 Orrin r1", second, 20);
        GraftsByMember evidence = new GraftsByMember(circle.cells(), "grafter");
        int own = first;
        int other = second;
        JointTake.of(evidence, OptionalInt.empty(), PrivacyRule.usual())
            .ifPresent(
                joint -> {
                  assertThat((long) own + other).isBetween(joint.low(), joint.high());
                  long least = Math.max(0, joint.low() - own);
                  long most = Math.min(20, joint.high() - own);
                  assertThat(most - least).as("%d and %d", own, other).isPositive();
                });
      }
    }
  }

  @Test
  void one_person_s_take_is_no_joint_take() {
    Circle circle = new Circle().row("m1 s1 Orrin r1", 30, 60);
    GraftsByMember evidence = new GraftsByMember(circle.cells(), "grafter");

    assertThat(JointTake.of(evidence, OptionalInt.of(5), PrivacyRule.usual())).isEmpty();
  }
}
