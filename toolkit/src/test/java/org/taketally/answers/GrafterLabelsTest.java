package org.taketally.answers;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Factor;

class GrafterLabelsTest {

  private static final AnswerOptions HIDDEN = AnswerOptions.defaults();

  private static List<String> names(int count) {
    return IntStream.range(0, count).mapToObj(i -> "person " + i).toList();
  }

  @Test
  void letters_go_on_with_two_after_z_and_none_is_dealt_twice() {
    List<String> labels = GrafterLabels.of(names(55), HIDDEN);
    assertThat(labels).doesNotHaveDuplicates().contains("grafter A", "grafter Z");
    assertThat(labels)
        .contains("grafter AA", "grafter AZ", "grafter BA", "grafter BC")
        .doesNotContain("grafter BD");
  }

  @Test
  void letters_are_dealt_at_random_by_the_seed() {
    List<String> labels = GrafterLabels.of(names(10), HIDDEN);
    assertThat(labels).isEqualTo(GrafterLabels.of(names(10), HIDDEN));
    assertThat(labels).isNotEqualTo(GrafterLabels.of(names(10), HIDDEN.withSeed(2)));
    assertThat(labels.stream().sorted().toList()).isNotEqualTo(labels);
  }

  @Test
  void names_are_shown_where_they_may_be_and_other_columns_always() {
    List<String> names = names(3);
    assertThat(GrafterLabels.of(names, HIDDEN.withGrafterNames(true))).isEqualTo(names);
    Factor stocks = new Factor("rootstock", names, new int[] {0, 1, 2});
    assertThat(GrafterLabels.shown(stocks, HIDDEN)).isEqualTo(names);
    Factor hands = new Factor("grafter", names, new int[] {0, 1, 2});
    assertThat(GrafterLabels.shown(hands, HIDDEN)).doesNotContainAnyElementsOf(names);
  }
}
