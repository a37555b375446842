package org.taketally.answers.advice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.advice.Advice.PreferLevels;
import org.taketally.answers.advice.Advice.UseWithin;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.verdict.FactorVerdict.LevelTake;
import org.taketally.answers.verdict.FactorVerdict.Pair;
import org.taketally.answers.verdict.LevelComparison;
import org.taketally.terms.Interval;

/** Direction, size and confounding of advice, on values typed in. */
class LevelRuleTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults();

  /** Levels with their takes; every difference has the same half range. */
  private static LevelComparison takes(double half, double efficiency, Object... levelsAndTakes) {
    Map<String, Double> takes = new LinkedHashMap<>();
    for (int i = 0; i < levelsAndTakes.length; i += 2) {
      takes.put((String) levelsAndTakes[i], (Double) levelsAndTakes[i + 1]);
    }
    List<LevelTake> levels = new ArrayList<>();
    List<Pair> pairs = new ArrayList<>();
    takes.forEach(
        (level, take) -> {
          TakeCount tally = new TakeCount(Math.round(100 * take), 100);
          levels.add(
              new LevelTake(
                  level, tally, around(take, half), Optional.of(estimate(take, half)), false));
          takes.forEach(
              (other, least) -> {
                if (take > least) {
                  double gap = take - least;
                  Interval alone = around(gap, 0.85 * half);
                  boolean alike = alone.low() > -0.1 && alone.high() < 0.1;
                  pairs.add(
                      new Pair(
                          level,
                          other,
                          estimate(gap, half),
                          around(gap, 1.2 * half),
                          alone,
                          alike,
                          0.5));
                }
              });
        });
    Confounding.Group all =
        new Confounding.Group(List.copyOf(takes.keySet()), List.of(), 100L * takes.size());
    return new LevelComparison(
        "rootstock",
        levels,
        pairs,
        new Confounding("rootstock", List.of(all), efficiency, List.of(), all.grafts()),
        OPTIONS);
  }

  private static Estimate estimate(double value, double half) {
    return new Estimate(value, around(value, half));
  }

  private static Interval around(double value, double half) {
    return new Interval(value - half, value + half, 0.95);
  }

  private static LevelRule rule(LevelComparison comparison) {
    return new LevelRule(comparison, new Sureness(5));
  }

  private static PreferLevels advice(LevelComparison comparison) {
    return rule(comparison).advice().orElseThrow();
  }

  @Test
  void the_best_stock_is_advised_for_never_against() {
    PreferLevels advice = advice(takes(0.06, 0.9, "Pellin", 0.68, "Ostrey", 0.45, "Nerrin", 0.44));

    assertThat(advice.rather()).containsExactly("Pellin");
    assertThat(advice.than()).containsExactlyInAnyOrder("Ostrey", "Nerrin");
    assertThat(advice.gain().value()).isCloseTo(0.23, org.assertj.core.data.Offset.offset(1e-9));
    assertThat(advice.grafts()).isEqualTo(300);
  }

  @Test
  void one_bad_stock_of_three_is_the_only_one_advised_against() {
    PreferLevels advice = advice(takes(0.06, 0.9, "Pellin", 0.68, "Ostrey", 0.66, "Nerrin", 0.40));

    assertThat(advice.than()).containsExactly("Nerrin");
    assertThat(advice.rather()).containsExactly("Ostrey", "Pellin");
    assertThat(advice.gain().value()).isCloseTo(0.26, org.assertj.core.data.Offset.offset(1e-9));
  }

  @Test
  void a_stock_in_the_middle_is_neither_advised_for_nor_against() {
    PreferLevels advice = advice(takes(0.12, 0.9, "Pellin", 0.70, "Ostrey", 0.58, "Nerrin", 0.45));

    assertThat(advice.rather()).containsExactly("Pellin");
    assertThat(advice.than()).containsExactly("Nerrin");
  }

  @Test
  void stocks_about_the_same_get_no_advice() {
    LevelRule rule = rule(takes(0.04, 0.9, "Pellin", 0.68, "Ostrey", 0.66, "Nerrin", 0.64));

    assertThat(rule.advice()).isEmpty();
    assertThat(rule.barred()).contains(NoAdvice.Reason.NO_PRACTICAL_DIFFERENCE);
  }

  @Test
  void a_difference_that_may_be_chance_gives_no_advice() {
    LevelRule rule = rule(takes(0.25, 0.9, "Pellin", 0.68, "Ostrey", 0.50));

    assertThat(rule.advice()).isEmpty();
    assertThat(rule.barred()).isEmpty();
  }

  @Test
  void levels_hardly_used_beside_each_other_get_no_advice() {
    LevelRule rule = rule(takes(0.06, 0.3, "Pellin", 0.68, "Ostrey", 0.40));

    assertThat(rule.advice()).isEmpty();
    assertThat(rule.barred()).contains(NoAdvice.Reason.NOT_COMPARED);
  }

  /** Takes 64 % to day 3, then 3 points a day less: 10 points are lost by day 7. */
  @Test
  void wood_is_to_be_used_before_take_has_fallen_not_by_then() {
    List<TakeCurve.Point> points = new ArrayList<>();
    for (int day = 0; day <= 12; day++) {
      points.add(
          new TakeCurve.Point(day, estimate(0.64 - 0.03 * Math.max(0, day - 3), 0.02), day > 10));
    }
    TakeCurve curve = curve(points);

    UseWithin advice = new CurveRule(curve, new Sureness(5), 3).advice().orElseThrow();

    assertThat(advice.within()).isEqualTo(3);
    assertThat(advice.beyond()).isEqualTo(7);
    assertThat(advice.takeWithin().value()).isEqualTo(0.64);
    assertThat(advice.gain().value()).isCloseTo(0.12, org.assertj.core.data.Offset.offset(1e-9));
  }

  @Test
  void wood_that_improves_or_holds_gets_no_advice() {
    for (double slope : new double[] {0.02, 0, -0.002}) {
      List<TakeCurve.Point> points = new ArrayList<>();
      for (int day = 0; day <= 12; day++) {
        points.add(new TakeCurve.Point(day, estimate(0.5 + slope * day, 0.02), false));
      }
      assertThat(new CurveRule(curve(points), new Sureness(5), 3).advice()).isEmpty();
    }
  }

  /** A fall that a straight line would make sure of; a curve of 3 bends shows one by chance. */
  @Test
  void a_bump_found_by_looking_along_a_curve_gets_no_advice() {
    List<TakeCurve.Point> points = new ArrayList<>();
    for (int day = 0; day <= 12; day++) {
      points.add(new TakeCurve.Point(day, estimate(day < 5 ? 0.9 : 0.8, 0.044), false));
    }

    assertThat(new CurveRule(curve(points), new Sureness(5), 3).advice()).isEmpty();
    assertThat(new CurveRule(curve(points), new Sureness(5), 1).advice()).isPresent();
  }

  private static TakeCurve curve(List<TakeCurve.Point> points) {
    return new TakeCurve(
        "storage_days",
        "days",
        points,
        List.of(),
        Double.NaN,
        Optional.empty(),
        new TakeCount(600, 1000),
        OPTIONS);
  }
}
