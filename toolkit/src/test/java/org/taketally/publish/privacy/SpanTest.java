package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Which groups of grafts follow from published lines. Cells are numbered; no records needed. */
class SpanTest {

  @Test
  void a_line_and_what_is_left_of_a_larger_one_are_known() {
    Span span = new Span(List.of(Tables.of("all", 0, 1, 2, 3, 4), Tables.of("r1", 1, 2)));

    assertThat(span.holds(Tables.cells(1, 2))).isTrue();
    assertThat(span.holds(Tables.cells(0, 3, 4))).isTrue();
    assertThat(span.holds(Tables.cells(0, 1, 2, 3, 4))).isTrue();
  }

  @Test
  void each_line_of_a_table_is_known() {
    Span span =
        new Span(
            List.of(
                Tables.of("r", Tables.cells(0, 1), Tables.cells(2, 3), Tables.cells(4, 5)),
                Tables.of("all", 0, 1, 2, 3, 4, 5, 6)));

    assertThat(span.holds(Tables.cells(0, 1))).isTrue();
    assertThat(span.holds(Tables.cells(2, 3))).isTrue();
    assertThat(span.holds(Tables.cells(4, 5))).isTrue();
    assertThat(span.holds(Tables.cells(6))).isTrue();
    assertThat(span.holds(Tables.cells(0, 2))).isFalse();
  }

  @Test
  void a_part_of_a_line_is_not_known() {
    Span span = new Span(List.of(Tables.of("all", 0, 1, 2, 3, 4), Tables.of("r1", 1, 2)));

    assertThat(span.holds(Tables.cells(1))).isFalse();
    assertThat(span.holds(Tables.cells(0, 3))).isFalse();
    assertThat(span.holds(Tables.cells(1, 2, 3))).isFalse();
  }

  @Test
  void grafts_in_no_line_are_not_known() {
    Span span = new Span(List.of(Tables.of("r1", 1, 2)));

    assertThat(span.holds(Tables.cells(7))).isFalse();
    assertThat(span.holds(Tables.cells(1, 2, 7))).isFalse();
  }

  /**
   * Two cultivars on two stocks: rows and columns don't tell a cell; with one cell they tell all.
   */
  @Test
  void margins_of_two_by_two_tell_no_cell_until_one_of_them_is_known() {
    PublishedTable cultivars = Tables.of("cultivar", Tables.cells(0, 1), Tables.cells(2, 3));
    PublishedTable stocks = Tables.of("rootstock", Tables.cells(0, 2), Tables.cells(1, 3));
    Span margins = new Span(List.of(cultivars, stocks));
    Span withOne = new Span(List.of(cultivars, stocks, Tables.of("latest", 3)));

    for (int cell = 0; cell < 4; cell++) {
      assertThat(margins.holds(Tables.cells(cell))).as("cell " + cell).isFalse();
      assertThat(withOne.holds(Tables.cells(cell))).as("cell " + cell).isTrue();
    }
  }
}
