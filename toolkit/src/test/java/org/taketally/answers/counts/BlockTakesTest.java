package org.taketally.answers.counts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Records;
import org.taketally.answers.counts.BlockTakes.BlockTake;
import org.taketally.answers.counts.BlockTakes.SiteBlocks;
import org.taketally.cells.Cells;
import org.taketally.wording.AnswerTable;
import org.taketally.wording.AnswerWords;
import org.taketally.wording.Wording;

class BlockTakesTest {

  /** Two sites that both have a block called east: they are different blocks. */
  private static final Cells CELLS =
      Records.of("site", "block", "cultivar")
          .row(40, 26, "Long Reach", "east", "Orrin")
          .row(20, 16, "Long Reach", "east", "Wenlow")
          .row(60, 18, "Long Reach", "low corner", "Orrin")
          .row(60, 33, "Long Reach", "west", "Orrin")
          .row(30, 21, "Tidewell", "east", "Orrin")
          .row(30, 20, "Tidewell", "west", "Wenlow")
          .row(50, 10, "Ferry", "only", "Orrin")
          .cells();

  private static BlockTakes takes(Cells cells) {
    return BlockTakesCalculator.of(cells, AnswerOptions.defaults()).orElseThrow();
  }

  @Test
  void compares_blocks_within_their_site_only() {
    BlockTakes takes = takes(CELLS);
    assertThat(takes.sites())
        .extracting(SiteBlocks::site)
        .containsExactly("Long Reach", "Tidewell");
    SiteBlocks reach = takes.sites().get(0);
    assertThat(reach.blocks())
        .extracting(BlockTake::block)
        .containsExactly("east", "west", "low corner");
    assertThat(reach.best().tally()).isEqualTo(new TakeCount(42, 60));
    assertThat(takes.pairs()).isEqualTo(4);
    assertThat(takes.tally()).isEqualTo(new TakeCount(134, 240));
    assertThat(takes.widest().site()).isEqualTo("Long Reach");
  }

  /** Reference: R 4.2.2, Wilson limits by prop.test at 1 - 0.05 / 4, combined as Newcombe does. */
  @Test
  void differences_hold_for_all_pairs_at_once() {
    BlockTake low = takes(CELLS).sites().get(0).blocks().get(2);
    assertThat(low.fromBest().value()).isCloseTo(-0.4, within(1e-15));
    assertThat(low.fromBest().low()).isCloseTo(-0.5740260, within(1e-7));
    assertThat(low.fromBest().high()).isCloseTo(-0.1726961, within(1e-7));
  }

  @Test
  void names_the_block_that_does_worse() {
    AnswerWords words = Wording.of(takes(CELLS));
    assertThat(words.question()).isEqualTo("Does a block of a site do worse?");
    assertThat(words.headline())
        .isEqualTo(
            "As counted, block low corner at Long Reach takes about 40 points worse than block east"
                + " (likely 17 to 57 points); from 240 grafts in 5 blocks.");
    AnswerTable table = words.table();
    assertThat(table.toText()).containsPattern("Long Reach +low corner +60 +18 +30 %");
  }

  @Test
  void names_none_where_none_is_shown_to_be_worse() {
    Cells alike =
        Records.of("site", "block")
            .row(30, 21, "Tidewell", "a")
            .row(30, 20, "Tidewell", "b")
            .cells();
    assertThat(Wording.of(takes(alike)).headline())
        .startsWith("No block is shown to take worse than another of its site; furthest apart are")
        .contains("blocks b and a at Tidewell, 3 points as counted")
        .endsWith("from 60 grafts in 2 blocks.");
  }

  @Test
  void is_missing_without_two_blocks_at_a_site() {
    Cells one =
        Records.of("site", "block").row(9, 3, "Tidewell", "a").row(9, 3, "Ferry", "a").cells();
    assertThat(BlockTakesCalculator.of(one, AnswerOptions.defaults())).isEmpty();
    Cells none = Records.of("site").row(9, 3, "Tidewell").row(9, 3, "Ferry").cells();
    assertThat(BlockTakesCalculator.of(none, AnswerOptions.defaults())).isEmpty();
  }
}
