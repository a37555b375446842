package org.taketally.plan.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.taketally.plan.order.GraftOrder.Ordered;
import org.taketally.plan.order.SeasonTakes.BatchLuck;
import org.taketally.terms.Problem;
import org.taketally.wording.OnHandWords;

/** What grafts and sticks there are give; four grafts a stick, of which half take. */
class OnHandTest {

  private static OrderBook read(String lines) throws IOException {
    return OrderBook.read(
        "book.csv", new StringReader("cultivar,trees,due,grafts,sticks\n" + lines));
  }

  private static List<OnHand> of(String lines) throws IOException {
    OrderBook book = read(lines);
    assertThat(book.problems()).isEmpty();
    SeasonTakes half = SeasonTakes.of(new double[] {0.5}, BatchLuck.NONE);
    List<Ordered> ordered =
        book.entries().stream().map(entry -> new Ordered(entry.line(), half)).toList();
    return OnHand.byLine(book.entries(), ordered, GraftOrder.of(ordered, OrderTerms.defaults()))
        .stream()
        .flatMap(Optional::stream)
        .toList();
  }

  /** Ten trees need 26 grafts, so 7 sticks; 13 are left for the line due later. */
  @Test
  void lines_of_a_cultivar_share_its_sticks_those_due_first_before_others() throws IOException {
    List<OnHand> there =
        of("Orrin,50,,,20\n orrin,10,2027-05-01,,20\nTamsel,5,,,3\nOrrin,4,2027-06-01,,\n");
    assertThat(there.stream().mapToInt(line -> line.sticks().orElseThrow()))
        .containsExactly(10, 7, 3, 3);
    assertThat(there).extracting(OnHand::grafts).containsExactly(40, 28, 12, 12);
    assertThat(OnHandWords.of(there).get(0))
        .isEqualTo(
            "What there is. 3 lines of Orrin share its sticks, those due first before others: each"
                + " takes what it needs, the last what is left.");
    assertThat(OnHandWords.of(there))
        .anyMatch(line -> line.startsWith("What there is. orrin due 2027-05-01: 28"));
  }

  /** Wood of this season is none for the next. */
  @Test
  void lines_of_another_season_have_sticks_of_their_own() throws IOException {
    List<OnHand> there =
        of("Orrin,10,2028-05-01,,12\nOrrin,10,2027-05-01,,20\nOrrin,50,2027-10-01,,20\n");
    assertThat(there.stream().mapToInt(line -> line.sticks().orElseThrow()))
        .containsExactly(12, 7, 13);
    assertThat(there).extracting(OnHand::season).containsExactly(1, 0, 0);
    assertThat(OnHandWords.of(there))
        .contains(
            "What there is. 2 lines of Orrin in one season share its sticks, those due first before"
                + " others: each takes what it needs, the last what is left.")
        .anyMatch(line -> line.startsWith("What there is. Orrin due 2028-05-01: 48 grafts"));
  }

  @Test
  void a_line_for_which_nothing_is_left_is_told_so() throws IOException {
    List<OnHand> there = of("Orrin,500,2027-05-01,,20\nOrrin,10,2027-06-01,,20\n");
    assertThat(there).extracting(OnHand::grafts).containsExactly(80, 0);
    assertThat(there.get(1).chance()).isZero();
    assertThat(OnHandWords.of(there))
        .contains("What there is. Orrin due 2027-06-01: nothing is there, or left, to graft.");
  }

  @Test
  void grafts_there_can_be_limit_the_sticks_a_line_takes() throws IOException {
    List<OnHand> there = of("Orrin,500,2027-05-01,8,20\nOrrin,10,2027-06-01,,\nTamsel,5,,9,\n");
    assertThat(there).extracting(OnHand::grafts).containsExactly(8, 72, 9);
    assertThat(there.get(2).sticks()).isEmpty();
    assertThat(of("Orrin,5,,,\n")).isEmpty();
  }

  @Test
  void different_numbers_of_sticks_of_a_cultivar_are_a_problem() throws IOException {
    assertThat(read("Orrin,5,,,20\nORRIN,5,,,30\n").problems())
        .extracting(Problem::sentence)
        .containsExactly(
            "book.csv line 3, column sticks: found \"30\", expected 20, as an earlier line says of"
                + " ORRIN; write in each line of a cultivar all the sticks there are of it, or"
                + " leave the others empty: its lines share them");
  }
}
