package org.taketally.answers.confounding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Records;
import org.taketally.answers.confounding.Confounding.Group;
import org.taketally.answers.confounding.Confounding.Tie;
import org.taketally.answers.confounding.Confounding.TieKind;
import org.taketally.cells.Cells;
import org.taketally.wording.TieWords;
import org.taketally.wording.Wording;

class ConfoundingTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults();

  /** Complete blocks lose nothing: every stock in every season, ten grafts each. */
  @Test
  void complete_blocks_keep_all_information() {
    Records records = Records.of("rootstock", "season", "cultivar");
    for (String stock : new String[] {"Ash", "Bay", "Cor"}) {
      for (String season : new String[] {"2022", "2023"}) {
        for (String cultivar : new String[] {"Orrin", "Pell"}) {
          records.row(10, 6, stock, season, cultivar);
        }
      }
    }
    Confounding answer = ConfoundingCalculator.of(records.cells(), "rootstock", OPTIONS);
    assertThat(answer.comparable()).isTrue();
    assertThat(answer.efficiency()).isCloseTo(1, within(1e-12));
    assertThat(answer.ties()).isEmpty();
    assertThat(Wording.of(answer).headline())
        .isEqualTo(
            "All 3 levels of rootstock can be compared: 100 % of the information about their"
                + " differences is left once everything else recorded is allowed for"
                + " (120 grafts).");
  }

  /** One day had two stocks, each on a cultivar of its own: nothing is left within days. */
  @Test
  void stocks_that_meet_across_days_alone_are_said_to() {
    Records records = Records.of("rootstock", "grafting_day", "cultivar");
    records.row(12, 10, "Ash", "4 March", "Orrin");
    records.row(12, 8, "Bay", "5 March", "Orrin");
    records.row(10, 3, "Ash", "5 March", "Pell");
    records.row(10, 2, "Bay", "6 March", "Pell");
    Confounding answer = ConfoundingCalculator.of(records.cells(), "rootstock", OPTIONS);
    assertThat(answer.comparable()).isTrue();
    assertThat(Wording.of(answer).headline())
        .isEqualTo(
            "Both levels of rootstock can be compared, but only across grafting days, blocks and"
                + " the like: within one of these, once everything else recorded is allowed for,"
                + " 0 % of the information about their differences is left (44 grafts).");
  }

  /**
   * Reference: balanced incomplete blocks with t treatments in blocks of k have efficiency t (k -
   * 1) / (k (t - 1)): 4 stocks in blocks of 2 give 4 * 1 / (2 * 3) = 2/3 (John and Williams 1995,
   * section 1.6; from memory).
   */
  @Test
  void balanced_incomplete_blocks_have_their_textbook_efficiency() {
    Records records = Records.of("rootstock", "grafter");
    String[] stocks = {"Ash", "Bay", "Cor", "Dun"};
    for (int i = 0; i < 4; i++) {
      for (int j = 0; j < i; j++) {
        records.row(8, 5, stocks[i], "g" + i + j).row(8, 5, stocks[j], "g" + i + j);
      }
    }
    Confounding answer = ConfoundingCalculator.of(records.cells(), "rootstock", OPTIONS);
    assertThat(answer.efficiency()).isCloseTo(2.0 / 3, within(1e-9));
  }

  /** Planted: each pair of stocks was used in a season of its own. */
  @Test
  void names_stocks_used_in_different_seasons_only() {
    Cells cells =
        Records.of("rootstock", "season")
            .row(40, 30, "Ash", "2022")
            .row(40, 31, "Bay", "2022")
            .row(40, 25, "Cor", "2023")
            .row(60, 20, "Dun", "2023")
            .cells();
    Confounding answer = ConfoundingCalculator.of(cells, "rootstock", OPTIONS);
    assertThat(answer.comparable()).isFalse();
    assertThat(answer.groups())
        .extracting(Group::levels)
        .containsExactly(java.util.List.of("Cor", "Dun"), java.util.List.of("Ash", "Bay"));
    assertThat(answer.ties()).extracting(Tie::kind).containsExactly(TieKind.NEVER_TOGETHER);
    assertThat(TieWords.sentence(answer.ties().get(0)))
        .isEqualTo(
            "The levels of rootstock fall into 2 sets that never shared a season (Ash and Bay; Cor"
                + " and Dun): sets can't be compared.");
    assertThat(Wording.of(answer).headline())
        .isEqualTo(
            "The levels of rootstock fall into 2 groups that these records can't compare with each"
                + " other: Cor and Dun; Ash and Bay.");
  }

  @Test
  void names_a_stock_that_was_alone_in_its_season() {
    Cells cells =
        Records.of("rootstock", "season")
            .row(40, 30, "Ash", "2022")
            .row(40, 31, "Bay", "2022")
            .row(40, 25, "Cor", "2023")
            .cells();
    Confounding answer = ConfoundingCalculator.of(cells, "rootstock", OPTIONS);
    assertThat(answer.groupOf("Cor").orElseThrow().levels()).containsExactly("Cor");
    assertThat(answer.ties().get(0).refuses()).isTrue();
    assertThat(TieWords.sentence(answer.ties().get(0)))
        .isEqualTo(
            "Rootstock Cor was used only in 2023, where no other rootstock was: the two can't be"
                + " told apart.");
  }

  @Test
  void a_single_stray_graft_does_not_make_a_comparison() {
    Cells cells =
        Records.of("rootstock", "season")
            .row(400, 300, "Ash", "2022")
            .row(1, 1, "Bay", "2022")
            .row(400, 250, "Bay", "2023")
            .cells();
    assertThat(ConfoundingCalculator.of(cells, "rootstock", OPTIONS).comparable()).isFalse();
  }

  /** Planted: a novice who grafted mostly one cultivar, which few others touched. */
  @Test
  void catches_the_novice_who_grafted_mostly_one_cultivar() {
    Records records = Records.of("rootstock", "cultivar", "grafter");
    for (String stock : new String[] {"Ash", "Bay"}) {
      for (String grafter : new String[] {"Ida", "Jon", "Kes"}) {
        for (String cultivar : new String[] {"Pell", "Quine", "Rusk"}) {
          records.row(20, 15, stock, cultivar, grafter);
        }
      }
      records.row(2, 1, stock, "Orrin", "Ida").row(45, 20, stock, "Orrin", "Lum");
      records.row(3, 2, stock, "Pell", "Lum");
    }
    Confounding answer =
        ConfoundingCalculator.of(records.cells(), "rootstock", OPTIONS.withGrafterNames(true));
    assertThat(answer.comparable()).isTrue();
    assertThat(answer.ties()).hasSize(1);
    Tie tie = answer.ties().get(0);
    assertThat(tie.kind()).isEqualTo(TieKind.ONE_HOLDS_MOST);
    assertThat(tie.refuses()).isFalse();
    assertThat(TieWords.sentence(tie))
        .startsWith(
            "96 % of the grafts of Orrin were by Lum, and 94 % of the grafts by Lum were of Orrin:"
                + " only ")
        .endsWith(
            "of the information about Orrin is left once the grafter is allowed for, so the two can"
                + " hardly be told apart.");
  }

  @Test
  void hides_grafters_unless_names_are_asked_for() {
    Cells cells =
        Records.of("rootstock", "grafter")
            .row(40, 30, "Ash", "Ida")
            .row(40, 31, "Bay", "Lum")
            .row(40, 31, "Cor", "Lum")
            .cells();
    String sentence =
        TieWords.sentence(ConfoundingCalculator.of(cells, "rootstock", OPTIONS).ties().get(0));
    assertThat(sentence).doesNotContain("Ida").contains("by grafter ");
    assertThat(
            Wording.of(ConfoundingCalculator.of(cells, "rootstock", OPTIONS.withGrafterNames(true)))
                .text())
        .contains("only by Ida");
  }

  /** Stocks stood in trays: a tray per stock is no comparison, many trays are. */
  @Test
  void stocks_in_trays_are_compared_between_trays() {
    Records few = Records.of("rootstock", "block");
    few.row(50, 30, "Ash", "t1").row(50, 40, "Bay", "t2");
    Confounding refused = ConfoundingCalculator.of(few.cells(), "rootstock", OPTIONS);
    assertThat(refused.comparable()).isFalse();
    assertThat(TieWords.sentence(refused.ties().get(0)))
        .isEqualTo(
            "Each block held one rootstock only, and there are only 2 of them: what is the"
                + " rootstock and what the block can't be told apart.");
    Records many = Records.of("rootstock", "block");
    for (int tray = 0; tray < 6; tray++) {
      many.row(20, 12, "Ash", "a" + tray).row(20, 13, "Bay", "b" + tray);
    }
    Confounding judged = ConfoundingCalculator.of(many.cells(), "rootstock", OPTIONS);
    assertThat(judged.comparable()).isTrue();
    assertThat(TieWords.sentence(judged.ties().get(0))).contains("between 12 of them");
  }

  @Test
  void one_stock_only_is_said_so() {
    Cells cells = Records.of("rootstock", "season").row(40, 30, "Ash", "2022").cells();
    assertThat(Wording.of(ConfoundingCalculator.of(cells, "rootstock", OPTIONS)).headline())
        .isEqualTo(
            "These records hold only one level of rootstock: there is nothing to compare it with.");
  }
}
