package org.taketally.answers.counts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.answers.Records;
import org.taketally.answers.counts.TakeCounts.LevelCount;
import org.taketally.cells.Cells;
import org.taketally.wording.AnswerTable;
import org.taketally.wording.Wording;

class TakeCountsTest {

  private static final Cells CELLS =
      Records.of("method", "cultivar")
          .row(20, 12, "cleft", "Orrin")
          .row(10, 2, "whip", "Orrin")
          .row(20, 16, "cleft", "Wenlow")
          .cells();

  @Test
  void adds_up_the_cells_of_each_level() {
    TakeCounts counts = TakeCountsCalculator.of(CELLS, "method", 0.95);
    assertThat(counts.levels())
        .containsExactly(
            new LevelCount("cleft", new TakeCount(28, 40)),
            new LevelCount("whip", new TakeCount(2, 10)));
    assertThat(counts.total()).isEqualTo(new TakeCount(30, 50));
    assertThat(counts.notRecorded()).isZero();
  }

  /** Reference: R 4.2.2, prop.test(30, 50, correct = FALSE)$conf.int: 0.4618 to 0.7239. */
  @Test
  void says_the_whole_in_one_sentence() {
    assertThat(Wording.of(TakeCountsCalculator.of(CELLS, "method", 0.95)).headline())
        .isEqualTo("30 of 50 grafts took, 60 % (likely 46 to 72 %).");
  }

  /** Reference: R 4.2.2, prop.test(2, 10, correct = FALSE)$conf.int: 0.0567 to 0.5098. */
  @Test
  void has_a_row_for_each_level_with_its_own_range() {
    AnswerTable table = Wording.of(TakeCountsCalculator.of(CELLS, "method", 0.95)).table();
    assertThat(table.toText()).containsPattern("whip +10 +2 +20 % +6 % +51 %");
  }

  @Test
  void counts_apart_what_was_not_recorded() {
    TakeCounts counts =
        new TakeCounts("method", List.of(new LevelCount("cleft", new TakeCount(28, 40))), 3, 0.95);
    assertThat(Wording.of(counts).text())
        .contains("\n3 grafts without a recorded method left out.\n");
    assertThatThrownBy(() -> new TakeCounts("method", List.of(), 3, 0.95))
        .hasMessage("no grafts to count: column \"method\" was not recorded for any");
  }
}
