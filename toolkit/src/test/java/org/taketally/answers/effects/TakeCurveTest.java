package org.taketally.answers.effects;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Simulated;
import org.taketally.answers.effects.TakeCurve.Point;
import org.taketally.answers.effects.TakeCurve.Range;
import org.taketally.cells.Cells;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.wording.Wording;

class TakeCurveTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults().withDraws(400);
  private static final String DAYS = "storage_days";
  private static final double[] NO_SPREAD = new double[8];

  private static TakeCurve curve(Cells cells, TakeModel model) {
    TakeFit fit = model.varyBy("cultivar").fit(cells);
    return TakeCurveCalculator.of(fit, OPTIONS, DAYS);
  }

  private static double logistic(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }

  /** Truth: logit 0.8 - 0.15 a day, every cultivar alike. */
  @Test
  void follows_a_known_fall() {
    Cells cells = Simulated.grafts(6000, 3, 11).cultivars(NO_SPREAD).perDay(-0.15).cells();
    TakeCurve curve = curve(cells, TakeModel.ofTakes().adjustForCurve(DAYS, 3));
    assertThat(curve.points()).hasSize(15);
    long covered =
        curve.points().stream()
            .filter(p -> p.take().interval().contains(logistic(0.8 - 0.15 * p.value())))
            .count();
    assertThat(covered).isGreaterThanOrEqualTo(13);
    assertThat(curve.points().get(14).take().value()).isCloseTo(logistic(-1.3), within(0.06));
    assertThat(Wording.of(curve).headline())
        .matches(
            "From 0 to 14 days \\(storage days\\) take falls by about \\d+ points \\(likely \\d+ to"
                + " \\d+ points\\), from \\d+ % to \\d+ %; from 6,000 grafts\\.");
    assertThat(curve.thinFrom()).isNaN();
  }

  @Test
  void says_less_than_the_margin_when_nothing_changes() {
    Cells cells = Simulated.grafts(8000, 4, 12).cultivars(NO_SPREAD).cells();
    TakeCurve curve = curve(cells, TakeModel.ofTakes().adjustFor(DAYS));
    assertThat(Wording.of(curve).headline())
        .startsWith(
            "From 0 to 14 days (storage days) take changes by less than the 10 points you care"
                + " about (likely ");
  }

  @Test
  void cannot_tell_from_few_grafts() {
    Cells cells = Simulated.grafts(200, 2, 13).cultivars(NO_SPREAD).cells();
    TakeCurve curve = curve(cells, TakeModel.ofTakes().adjustFor(DAYS));
    assertThat(Wording.of(curve).headline())
        .contains("these records can't tell whether take falls or rises");
  }

  /** Truth: highest at day 7, alike at both ends, so the ends alone would say "no change". */
  @Test
  void names_a_top_between_the_ends() {
    Cells cells = Simulated.grafts(6000, 3, 14).cultivars(NO_SPREAD).bend(7, -0.04).cells();
    TakeCurve curve = curve(cells, TakeModel.ofTakes().adjustForCurve(DAYS, 3));
    assertThat(Wording.of(curve).headline())
        .containsPattern("but it is highest between them, near [678] days");
  }

  @Test
  void marks_where_the_grafts_run_out() {
    Cells all = Simulated.grafts(3000, 3, 15).cultivars(NO_SPREAD).perDay(-0.1).cells();
    double[] days = all.measure(DAYS).values();
    int[] late = {0};
    Cells few = all.where(i -> days[i] < 9 || (days[i] == 14 && late[0]++ < 5));
    TakeCurve curve = curve(few, TakeModel.ofTakes().adjustForCurve(DAYS, 3));
    assertThat(curve.thinFrom()).isEqualTo(10);
    assertThat(curve.points()).allMatch(p -> p.thin() == p.value() >= 10);
    assertThat(Wording.of(curve).text())
        .contains("From 10 days on there are few grafts, so the curve there is guesswork.");
    assertThat(Wording.of(curve).headline()).startsWith("From 0 to 9 days");
  }

  @Test
  void counts_every_graft_once() {
    Cells cells = Simulated.grafts(3000, 3, 16).cultivars(NO_SPREAD).cells();
    List<Range> counted = curve(cells, TakeModel.ofTakes().adjustFor(DAYS)).counted();
    assertThat(counted.stream().mapToLong(r -> r.tally().grafts()).sum()).isEqualTo(3000);
    assertThat(counted.stream().mapToLong(r -> r.tally().takes()).sum())
        .isEqualTo(cells.takesTotal());
    assertThat(counted.stream().map(Range::from)).containsExactly(0.0, 5.0, 10.0);
    double[] days = cells.measure(DAYS).values();
    long first = Arrays.stream(days).filter(day -> day < 5).count() * 3;
    assertThat(counted.get(0).tally().grafts()).isEqualTo(first);
  }

  @Test
  void gives_counts_and_a_sentence_when_the_model_leaves_the_column_out() {
    Cells cells = Simulated.grafts(600, 3, 17).cultivars(NO_SPREAD).cells();
    TakeCurve curve = curve(cells, TakeModel.ofTakes());
    assertThat(curve.points()).isEmpty();
    assertThat(curve.counted()).isNotEmpty();
    assertThat(Wording.of(curve).headline())
        .isEqualTo(
            "These records can't show how take changes with storage days: the grafts are alike in"
                + " it, or the model leaves it out; 600 grafts.");
    assertThat(Wording.of(curve).text()).isNotBlank();
    assertThat(Wording.of(curve).tables()).hasSize(2);
  }

  @Test
  void refuses_an_unknown_column() {
    Cells cells = Simulated.grafts(600, 3, 18).cultivars(NO_SPREAD).cells();
    TakeFit fit = TakeModel.ofTakes().varyBy("cultivar").fit(cells);
    assertThatThrownBy(() -> TakeCurveCalculator.of(fit, OPTIONS, "moon_days"))
        .hasMessage(
            "no column of numbers \"moon_days\" in these cells; there are [storage_days]. Cells"
                + " hold only the columns they were counted by: CellsOf.records(records, ...) with"
                + " one more");
  }

  @Test
  void is_the_same_each_time() {
    Cells cells = Simulated.grafts(900, 3, 19).cultivars(NO_SPREAD).perDay(-0.1).cells();
    TakeModel model = TakeModel.ofTakes().adjustForCurve(DAYS, 2);
    List<Point> once = curve(cells, model).points();
    assertThat(curve(cells, model).points()).isEqualTo(once);
  }
}
