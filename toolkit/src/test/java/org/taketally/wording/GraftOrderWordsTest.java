package org.taketally.wording;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.taketally.figure.PlanFigures;
import org.taketally.plan.order.GraftOrder;
import org.taketally.plan.order.GraftOrder.Ordered;
import org.taketally.plan.order.OrderLine;
import org.taketally.plan.order.OrderTerms;
import org.taketally.plan.order.SeasonTakes;
import org.taketally.plan.order.SeasonTakes.BatchLuck;

/** What is promised in the words of an order, and what isn't. */
class GraftOrderWordsTest {

  private static Ordered line(String cultivar, int trees, double... shares) {
    return new Ordered(
        new OrderLine(cultivar, Optional.empty(), trees, Optional.empty()),
        SeasonTakes.of(shares, BatchLuck.NONE));
  }

  private static GraftOrder order(double sure, Ordered... lines) {
    return GraftOrder.of(List.of(lines), OrderTerms.defaults().withAssurance(sure));
  }

  private static GraftOrderWords words(double sure, Ordered... lines) {
    return GraftOrderWords.of(order(sure, lines));
  }

  @Test
  void lines_without_an_answer_are_promised_nothing() {
    GraftOrder order =
        order(
            0.9,
            line("Orrin", 20, 0.8, 0.8),
            line("Ivelle", 30, 0, 0.9),
            line("Pembrin", 2_000_000, 0.5, 0.5));
    GraftOrderWords words = GraftOrderWords.of(order);
    assertThat(words.headline())
        .isEqualTo(
            "1 of 3 lines has an answer. For its 20 saleable trees: make 28 grafts from 7 sticks,"
                + " then it has its trees in 9 seasons of 10. Ivelle and Pembrin have none: each"
                + " would need more than 1,000,000 grafts, if any number is enough.");
    assertThat(words.table())
        .extracting(row -> row.get(4))
        .containsExactly("28", "over 1,000,000", "over 1,000,000", "28");
    assertThat(words.table().get(3)).startsWith("All with an answer", "", "20");
    assertThat(words.more())
        .anyMatch(line -> line.startsWith("Ivelle: 1,000,000 grafts aren't enough to be as sure"));
    assertThat(PlanFigures.order(order))
        .contains("28 grafts for 20 saleable trees; 2 lines have no answer")
        .contains("each line with an answer has its trees")
        .contains("over 1,000,000 grafts for 30 trees");
  }

  @Test
  void an_order_without_any_answer_says_so() {
    assertThat(words(0.9, line("Ivelle", 30, 0, 0.9)).headline())
        .isEqualTo(
            "No line has an answer: to have its trees in 9 seasons of 10, it would need more"
                + " than 1,000,000 grafts, if any number is enough.");
  }

  /** Two million trees divided by a take of one half. */
  @Test
  void trees_by_the_rate_are_not_cut_off_in_silence() {
    GraftOrder order =
        order(0.9, line("Orrin", 20, 0.8, 0.8), line("Pembrin", 2_000_000, 0.5, 0.5));
    assertThat(order.lines().get(1).byRate()).isEmpty();
    assertThat(GraftOrderWords.of(order).more())
        .anyMatch(line -> line.startsWith("Trees divided by the take (25 grafts in all, Pembrin"));
  }

  @Test
  void grafts_by_the_rate_that_are_enough_are_not_belittled() {
    assertThat(words(0.5, line("Orrin", 20, 1, 1)).more())
        .anyMatch(line -> line.endsWith("would be enough with a chance of over 99 %."));
    assertThat(words(0.9, line("Orrin", 20, 0.8)).more())
        .anyMatch(
            line -> line.contains("would be enough with a chance of") && line.endsWith("only."));
  }

  @Test
  void shares_next_to_all_or_none_are_said_once() {
    assertThat(words(0.9, line("Orrin", 20, 1), line("Tamsel", 2, 0.8)).table())
        .extracting(row -> row.get(3))
        .containsExactly("over 99 % (100 to 100 %)", "about 80 % (80 to 80 %)", "");
  }

  @Test
  void seasons_are_said_as_wholes() {
    List<String> said = new ArrayList<>();
    for (double sure : new double[] {0.9, 0.95, 0.99, 0.995, 0.999, 0.6666}) {
      said.add(words(sure, line("Orrin", 20, 0.8)).headline().replaceAll(".* in (.*)[.]", "$1"));
    }
    assertThat(said)
        .containsExactly(
            "9 seasons of 10",
            "95 seasons of 100",
            "99 seasons of 100",
            "995 seasons of 1,000",
            "999 seasons of 1,000",
            "6,666 seasons of 10,000");
  }

  @Test
  void all_lines_together_are_never_said_to_be_certain() {
    Ordered one = line("Orrin", 20, 0.8);
    assertThat(words(0.999, one, one, one).more().get(0))
        .startsWith(
            "All 3 lines together, grafted in one season, are complete in over 99 seasons of 100,");
    assertThat(words(0.9, one, one).more().get(0))
        .startsWith(
            "Both lines together, grafted in one season, are complete in about 83 seasons of 100,");
  }
}
