package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.taketally.analysis.Analysis;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Simulated;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.cells.Cells;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.wording.AnswerTable;
import org.taketally.wording.Wording;

class PlannedContrastsTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults().withSeed(3);
  private static final Contrast CLONAL =
      Contrast.between(
          "clonal against seedling", List.of("Pellin", "Ostrey"), List.of("Halden seedling"));

  private static Cells cells(int grafts, double seedling, double pellin, double ostrey) {
    return Simulated.grafts(grafts, 4, 5)
        .cultivars(0.9, 0.5, 0.2, 0, -0.2, -0.4, -0.6, -1)
        .grafters(0.3, 0, -0.3, 0)
        .rootstocks(seedling, pellin, ostrey)
        .cells();
  }

  private static TakeFit fit(Cells cells) {
    return TakeModel.ofTakes().varyBy("cultivar", "grafter").compare("rootstock").fit(cells);
  }

  @Test
  void a_contrast_is_the_weighted_sum_of_the_takes_of_its_levels() {
    TakeFit fit = fit(cells(3_000, 0.2, -0.5, 0.1));
    MarginalTakes averages = MarginalTakes.of(fit, OPTIONS);
    double[][] takes = averages.takes("rootstock");
    List<String> levels = averages.levels("rootstock");
    double expected = 0;
    for (Map.Entry<String, Double> each : CLONAL.weights().entrySet()) {
      double[] column = DrawSummary.column(takes, levels.indexOf(each.getKey()));
      expected += each.getValue() * java.util.Arrays.stream(column).average().orElseThrow();
    }
    var result =
        PlannedContrastsCalculator.of(fit, "rootstock", List.of(CLONAL), OPTIONS).results().get(0);
    assertThat(result.difference().orElseThrow().value()).isCloseTo(expected, within(1e-12));
    assertThat(result.some().grafts() + result.others().grafts())
        .isEqualTo(fit.cells().graftsTotal());
  }

  /** One level against one is the pair of the verdict, seen alone: the same value and word. */
  @Test
  void of_two_levels_it_is_their_pair() {
    TakeFit fit = fit(twoStocks());
    FactorVerdict verdict = FactorVerdictCalculator.of(fit, "rootstock", OPTIONS);
    FactorVerdict.Pair pair = verdict.pair("Pellin", "Halden seedling").orElseThrow();
    var result =
        PlannedContrastsCalculator.of(
                fit,
                "rootstock",
                List.of(Contrast.between("one", List.of("Pellin"), List.of("Halden seedling"))),
                OPTIONS)
            .results()
            .get(0);
    assertThat(result.verdict()).isEqualTo(verdict.verdict()).isEqualTo(Verdict.MATTERS);
    assertThat(result.difference().orElseThrow().value())
        .isCloseTo(pair.difference().value(), within(1e-12));
    assertThat(result.difference().orElseThrow().low())
        .isCloseTo(pair.veryLikely().low(), within(1e-9));
  }

  private static Cells twoStocks() {
    return two(cells(6_000, 0.9, -0.9, 0));
  }

  private static Cells two(Cells three) {
    int[] codes = three.factor("rootstock").codes();
    int out = three.factor("rootstock").indexOf("Ostrey");
    return three.where(i -> codes[i] != out);
  }

  @Test
  void equal_sides_with_many_grafts_make_no_practical_difference() {
    var result =
        Analysis.of(fit(cells(12_000, 0, 0, 0)), OPTIONS)
            .withContrasts("rootstock", CLONAL)
            .contrasts()
            .orElseThrow()
            .find("clonal against seedling")
            .orElseThrow();
    assertThat(result.verdict()).isEqualTo(Verdict.NO_PRACTICAL_DIFFERENCE);
    assertThat(result.equivalent()).isTrue();
  }

  /** Each more contrast asked at once makes ranges wider, as each may be the one named. */
  @Test
  void ranges_hold_for_all_that_are_asked_at_once() {
    TakeFit fit = fit(cells(1_500, 0.2, 0, -0.2));
    Contrast other = Contrast.between("two clonal", List.of("Pellin"), List.of("Ostrey"));
    var alone = PlannedContrastsCalculator.of(fit, "rootstock", List.of(CLONAL), OPTIONS);
    var both = PlannedContrastsCalculator.of(fit, "rootstock", List.of(CLONAL, other), OPTIONS);
    assertThat(width(both)).isGreaterThan(1.05 * width(alone));
  }

  private static double width(PlannedContrasts answer) {
    var range = answer.results().get(0).difference().orElseThrow();
    return range.high() - range.low();
  }

  /**
   * In sets of records whose sides differ by just the margin, "no practical difference" and
   * "matters" are each claimed in at most 5 of 100; 60 sets allow 7 by chance (binomial, 98 %).
   */
  @Test
  void at_the_margin_neither_claim_is_made_often() {
    int wronglyEquivalent = 0;
    int wronglyMatters = 0;
    for (int seed = 1; seed <= 60; seed++) {
      Cells cells = two(Simulated.grafts(1_800, 2, seed).rootstocks(0.4055 - 0.8, -0.8, 0).cells());
      TakeFit fit = TakeModel.ofTakes().compare("rootstock").fit(cells);
      Contrast one = Contrast.between("one", List.of("Pellin"), List.of("Halden seedling"));
      // Simulated begins at logit 0.8; 0.4055 and 0 are takes of 60 and 50 %
      Verdict verdict =
          PlannedContrastsCalculator.of(fit, "rootstock", List.of(one), OPTIONS)
              .results()
              .get(0)
              .verdict();
      wronglyEquivalent +=
          verdict == Verdict.NO_PRACTICAL_DIFFERENCE || verdict == Verdict.LESS_THAN_YOU_CARE_ABOUT
              ? 1
              : 0;
      wronglyMatters += verdict == Verdict.MATTERS ? 1 : 0;
    }
    assertThat(wronglyEquivalent).isLessThanOrEqualTo(7);
    assertThat(wronglyMatters).isLessThanOrEqualTo(7);
  }

  @Test
  void weights_of_ones_own_come_to_the_scale_of_a_difference() {
    Contrast contrast = Contrast.weighted("x", Map.of("A", 2.0, "B", -1.0, "C", -1.0));
    assertThat(contrast.weights()).containsEntry("A", 1.0).containsEntry("C", -0.5);
    assertThatThrownBy(() -> Contrast.weighted("x", Map.of("A", 2.0, "B", -1.0)))
        .hasMessage(
            "weights of \"x\" must sum to zero, with some above it: those above sum to 2.0, those"
                + " below to -1.0");
    assertThatThrownBy(() -> Contrast.between("x", List.of("A"), List.of("A", "B")))
        .hasMessage("\"x\" has A on both sides; name it on one");
  }

  @Test
  void names_the_nearest_level_and_what_a_fit_lacks() {
    TakeFit fit = fit(cells(600, 0, 0, 0));
    assertThatThrownBy(
            () ->
                PlannedContrastsCalculator.of(
                    fit,
                    "rootstock",
                    List.of(Contrast.between("x", List.of("Pelin"), List.of("Ostrey"))),
                    OPTIONS))
        .hasMessage("no rootstock \"Pelin\" in this fit; did you mean \"Pellin\"?");
    assertThatThrownBy(() -> PlannedContrastsCalculator.of(fit, "season", List.of(CLONAL), OPTIONS))
        .hasMessage(
            "\"season\" isn't in this fit; add it to the model (adjustFor(\"season\") or"
                + " varyBy(\"season\")) and fit again. The fit has: rootstock, cultivar, grafter");
  }

  /** Another margin asks the same contrasts again. */
  @Test
  void contrasts_stay_when_the_margin_changes() {
    Analysis analysis =
        Analysis.of(fit(cells(1_500, 0.3, 0, 0)), OPTIONS).withContrasts("rootstock", CLONAL);
    PlannedContrasts wide = analysis.withMargin(0.4).contrasts().orElseThrow();
    assertThat(wide.options().margin()).isEqualTo(0.4);
    assertThat(wide.results().get(0).equivalent()).isTrue();
  }

  @Test
  void is_said_in_words_and_as_a_table() {
    PlannedContrasts answer =
        PlannedContrastsCalculator.of(
            fit(cells(4_000, 0.9, -0.9, -0.9)), "rootstock", List.of(CLONAL), OPTIONS);
    assertThat(Wording.of(answer).headline())
        .startsWith("Clonal against seedling: matters. Halden seedling takes ")
        .contains(" points better than Pellin and Ostrey together (likely ")
        .contains(", beyond your margin of 10 points; ");
    PlannedContrasts weighed =
        PlannedContrastsCalculator.of(
            fit(cells(1_000, 0, 0, 0)),
            "rootstock",
            List.of(
                Contrast.weighted(
                    "by use", Map.of("Pellin", 0.25, "Ostrey", 0.75, "Halden seedling", -1.0))),
            OPTIONS);
    assertThat(Wording.of(weighed).text()).contains("Pellin (25 %)", "against Halden seedling.");
    AnswerTable table = Wording.of(answer).table();
    assertThat(table.toTablesaw().stringColumn("verdict").get(0)).isEqualTo("matters");
  }
}
