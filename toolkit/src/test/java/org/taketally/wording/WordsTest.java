package org.taketally.wording;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.answers.Estimate;
import org.taketally.terms.Interval;

class WordsTest {

  @Test
  void percentages_never_round_to_certainty() {
    assertThat(Words.percent(0.634)).isEqualTo("63 %");
    assertThat(Words.percent(0.0001)).isEqualTo("under 1 %");
    assertThat(Words.percent(0.9999)).isEqualTo("over 99 %");
    assertThat(Words.percent(0)).isEqualTo("0 %");
    assertThat(Words.percent(1)).isEqualTo("100 %");
  }

  @Test
  void takes_come_with_their_likely_range() {
    assertThat(Words.take(new Estimate(0.8, new Interval(0.63, 0.9, 0.95))))
        .isEqualTo("about 80 % (likely 63 to 90 %)");
  }

  @Test
  void points_have_signs_only_where_they_span_zero() {
    assertThat(Words.points(-0.04)).isEqualTo("4 points");
    assertThat(Words.points(0.012)).isEqualTo("1 point");
    assertThat(Words.points(0.002)).isEqualTo("under 1 point");
    assertThat(Words.points(new Interval(0.02, 0.09, 0.95))).isEqualTo("2 to 9 points");
    assertThat(Words.points(new Interval(-0.03, 0.05, 0.95))).isEqualTo("-3 to +5 points");
    assertThat(Words.below(new Interval(-0.09, -0.02, 0.95))).isEqualTo("2 to 9 points");
  }

  @Test
  void counts_and_lists_read_as_speech() {
    assertThat(Words.count(4782, "graft")).isEqualTo("4,782 grafts");
    assertThat(Words.count(1, "graft")).isEqualTo("1 graft");
    assertThat(Words.list(List.of("A", "B", "C"))).isEqualTo("A, B and C");
    assertThat(Words.list(List.of())).isEmpty();
    assertThat(List.of(1, 2, 3, 4, 11, 12, 13, 21, 112).stream().map(Words::place))
        .containsExactly("1st", "2nd", "3rd", "4th", "11th", "12th", "13th", "21st", "112th");
    assertThat(Words.amount(7, "days")).isEqualTo("7 days");
    assertThat(Words.amount(7.25, "")).isEqualTo("7.3");
  }

  @Test
  void long_lists_say_how_many_more_there_are() {
    assertThat(Words.first(List.of("Orrin", "Linnock", "Talla"), 3))
        .isEqualTo("Orrin, Linnock and Talla");
    assertThat(Words.first(List.of("Orrin", "Linnock", "Talla", "Vest"), 3))
        .isEqualTo("Orrin, Linnock and 2 more");
  }
}
