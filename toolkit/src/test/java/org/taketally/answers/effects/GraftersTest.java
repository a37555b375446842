package org.taketally.answers.effects;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Simulated;
import org.taketally.answers.effects.Grafters.GrafterTake;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.wording.Wording;

class GraftersTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults().withDraws(400);
  private static final double[] TRUTH = {0.6, 0.2, 0.0, -0.8};

  private static Cells cells() {
    return Simulated.grafts(6000, 3, 21)
        .cultivars(0.9, 0.6, 0.3, 0.1, -0.1, -0.3, -0.6, -0.9)
        .grafters(TRUTH)
        .cells();
  }

  private static TakeFit varying() {
    return TakeModel.ofTakes().varyBy("cultivar", "grafter").fit(cells());
  }

  /** Truth by the simulation's own logits: mean take had one hand done all. */
  private static double truth(int grafter) {
    double[] rest =
        Simulated.grafts(6000, 3, 21)
            .cultivars(0.9, 0.6, 0.3, 0.1, -0.1, -0.3, -0.6, -0.9)
            .logits();
    return java.util.Arrays.stream(rest)
        .map(eta -> 1 / (1 + Math.exp(-eta - TRUTH[grafter])))
        .average()
        .orElseThrow();
  }

  @Test
  void finds_known_hands_whether_varying_or_adjusted_for() {
    TakeFit adjusted = TakeModel.ofTakes().adjustFor("grafter").varyBy("cultivar").fit(cells());
    for (TakeFit fit : List.of(varying(), adjusted)) {
      Grafters answer = GraftersCalculator.of(fit, OPTIONS.withGrafterNames(true));
      assertThat(answer.grafters().stream().map(GrafterTake::shownAs))
          .containsExactly("Aldis", "Berit", "Caspar", "Dagny");
      for (int g = 0; g < 4; g++) {
        GrafterTake grafter = answer.grafters().get(g);
        assertThat(grafter.take().interval().contains(truth(g))).as(grafter.shownAs()).isTrue();
      }
    }
  }

  /** Four hands equally often: mean of the six differences between two of them. */
  @Test
  void typical_difference_is_that_of_two_hands() {
    double sum = 0;
    for (int a = 0; a < 4; a++) {
      for (int b = 0; b < a; b++) {
        sum += Math.abs(truth(a) - truth(b)) / 6;
      }
    }
    Grafters answer = GraftersCalculator.of(varying(), OPTIONS);
    assertThat(answer.typical().value()).isCloseTo(sum, within(0.03));
    assertThat(answer.typical().interval().contains(sum)).isTrue();
  }

  @Test
  void hides_names_unless_asked() {
    Grafters hidden = GraftersCalculator.of(varying(), OPTIONS);
    assertThat(hidden.grafters().stream().map(GrafterTake::shownAs))
        .containsExactlyInAnyOrder("grafter A", "grafter B", "grafter C", "grafter D");
    String all = Wording.of(hidden).text() + Wording.of(hidden).table().toCsv();
    assertThat(all).doesNotContain("Aldis", "Berit", "Caspar", "Dagny");
    assertThat(Wording.of(hidden).text())
        .contains("Grafters are shown by letters dealt out at random.");
    assertThat(Wording.of(GraftersCalculator.of(varying(), OPTIONS.withGrafterNames(true))).text())
        .contains("Dagny: ")
        .doesNotContain("letters");
  }

  @Test
  void counts_and_differences_add_up() {
    Grafters answer = GraftersCalculator.of(varying(), OPTIONS);
    assertThat(answer.grafters().stream().mapToLong(g -> g.tally().grafts()).sum()).isEqualTo(6000);
    assertThat(answer.grafters().stream().mapToLong(g -> g.tally().takes()).sum())
        .isEqualTo(cells().takesTotal());
    // differences from the average hand sum to zero draw by draw, so their means do
    assertThat(answer.grafters().stream().mapToDouble(g -> g.difference().value()).sum())
        .isCloseTo(0, within(1e-12));
  }

  @Test
  void says_when_there_is_one_hand_only() {
    Cells cells = cells();
    Factor grafter = cells.factor("grafter");
    Cells one = cells.where(i -> grafter.code(i) == 1);
    TakeFit fit = TakeModel.ofTakes().varyBy("cultivar", "grafter").fit(one);
    Grafters answer = GraftersCalculator.of(fit, OPTIONS);
    assertThat(Wording.of(answer).text())
        .startsWith(
            "These records can't part the hand from the wood: they name fewer than two grafters, or"
                + " the model leaves them out; ");
    assertThat(Wording.of(answer).table().rows().size()).isEqualTo(answer.grafters().size());
  }
}
