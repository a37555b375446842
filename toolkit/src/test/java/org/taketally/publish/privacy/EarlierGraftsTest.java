package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.publish.privacy.EarlierGrafts.Found;
import org.taketally.publish.privacy.PublishedBefore.EarlierPage;
import org.taketally.publish.privacy.PublishedBefore.Kind;
import org.taketally.publish.privacy.PublishedBefore.Line;

/** The grafts behind an earlier page, found again by its counts among the records of today. */
class EarlierGraftsTest {

  private static final List<String> YEAR = List.of("2025");

  /** What was there when the page was made, cells 0 to 5: 120 grafts, 66 took. */
  private static Circle circle() {
    return new Circle()
        .row("m1 2025 Orrin r1", 13, 20)
        .row("m2 2025 Orrin r1", 12, 20)
        .row("m3 2025 Orrin r2", 11, 20)
        .row("m1 2025 Tamsel r1", 10, 20)
        .row("m2 2025 Tamsel r2", 11, 20)
        .row("m3 2025 Vardy r2", 9, 20);
  }

  private static Line all(long grafts, long takes) {
    return new Line("all", "", YEAR, Kind.ALL, "", grafts, takes);
  }

  private static Line level(String column, String level, long grafts, long takes) {
    return new Line(column, column, YEAR, Kind.LEVEL, level, grafts, takes);
  }

  private static Line others(String column, long grafts, long takes) {
    return new Line(column, column, YEAR, Kind.OTHERS, "", grafts, takes);
  }

  private static EarlierPage page(Line... lines) {
    return new EarlierPage(List.of(lines));
  }

  /** All, Orrin (60 grafts), the other cultivars, and both stocks. */
  private static EarlierPage ofCircle() {
    return page(
        all(120, 66),
        level("cultivar", "Orrin", 60, 36),
        others("cultivar", 60, 30),
        level("rootstock", "r1", 60, 35),
        level("rootstock", "r2", 60, 31));
  }

  private static Optional<Found> find(Circle circle, EarlierPage page) {
    return new EarlierGrafts(new GraftsByMember(circle.cells(), "grafter")).find(page);
  }

  private static Optional<BitSet> late(Circle circle, EarlierPage page) {
    return find(circle, page).map(Found::late);
  }

  @Test
  void every_line_of_an_unchanged_page_is_found() {
    Found found = find(circle(), ofCircle()).orElseThrow();

    assertThat(found.late().isEmpty()).isTrue();
    assertThat(found.tables())
        .containsExactly(
            new PublishedTable(
                "all", List.of(new PublishedTable.Entry(List.of(""), Tables.range(0, 6), false))),
            new PublishedTable(
                "cultivar",
                List.of(
                    new PublishedTable.Entry(List.of("Orrin"), Tables.cells(0, 1, 2), false),
                    new PublishedTable.Entry(List.of(""), Tables.cells(3, 4, 5), true))),
            new PublishedTable(
                "rootstock",
                List.of(
                    new PublishedTable.Entry(List.of("r1"), Tables.cells(0, 1, 3), false),
                    new PublishedTable.Entry(List.of("r2"), Tables.cells(2, 4, 5), false))));
  }

  @Test
  void a_new_season_changes_nothing_of_an_earlier_page() {
    assertThat(late(circle().row("m1 2026 Orrin r1", 3, 9), ofCircle())).contains(new BitSet());
  }

  @Test
  void one_row_that_came_late_is_told_apart() {
    Circle today = circle().row("m4 2025 Orrin r1", 5, 7);

    Found found = find(today, ofCircle()).orElseThrow();

    assertThat(found.late()).isEqualTo(Tables.cells(6));
    assertThat(found.tables().get(0).entries().get(0).cells()).isEqualTo(Tables.range(0, 6));
    assertThat(found.tables().get(1).of("Orrin").orElseThrow().cells())
        .isEqualTo(Tables.cells(0, 1, 2));
  }

  /** Late grafts that all failed, or all took, are found as others are. */
  @ParameterizedTest
  @ValueSource(ints = {0, 7})
  void a_late_row_of_none_or_all_taken_is_told_apart(int takes) {
    assertThat(late(circle().row("m4 2025 Orrin r1", takes, 7), ofCircle()))
        .contains(Tables.cells(6));
  }

  /** More rows than three, but one sheet; m0 is the first of all names. */
  @ParameterizedTest
  @ValueSource(strings = {"m0", "m4"})
  void a_member_s_whole_season_that_came_late_is_one_batch(String member) {
    Circle today = circle();
    for (String row : List.of("Orrin r1", "Orrin r2", "Tamsel r1", "Vardy r2")) {
      today.row(member + " 2025 " + row, 5, 7);
    }
    assertThat(late(today, ofCircle())).contains(Tables.range(6, 10));
  }

  /** m1 was on the page with Orrin and Tamsel; Vardy on four stocks came late. */
  @Test
  void a_member_s_cultivar_that_came_late_is_one_batch() {
    Circle today = circle();
    for (int stock = 1; stock <= 4; stock++) {
      today.row("m1 2025 Vardy r" + stock, 5, 6 + stock);
    }
    EarlierPage page = page(all(120, 66), level("cultivar", "Orrin", 60, 36));

    assertThat(late(today, page)).contains(Tables.range(6, 10));
  }

  @Test
  void the_same_member_s_other_seasons_are_another_batch() {
    Circle today = circle().row("m4 2026 Orrin r1", 1, 3).row("m4 2025 Orrin r1", 5, 7);

    assertThat(late(today, ofCircle())).contains(Tables.cells(7));
  }

  /** Grafts 1, 2 and 4: only together 7. */
  @Test
  void up_to_three_batches_may_be_late_at_once_not_four() {
    Circle today = circle();
    for (int batches = 1; batches <= 4; batches++) {
      today.row("n" + batches + " 2025 Orrin r1", 1, 1 << batches);
      assertThat(late(today, ofCircle()))
          .as("%d batches", batches)
          .isEqualTo(batches <= 3 ? Optional.of(Tables.range(6, 6 + batches)) : Optional.empty());
    }
  }

  @Test
  void rows_without_a_name_are_no_one_s_sheet() {
    Circle three = circle();
    Circle four = circle().row(" 2025 Orrin r4", 1, 2);
    for (int stock = 1; stock <= 3; stock++) {
      three.row(" 2025 Orrin r" + stock, 1, 2 << stock);
      four.row(" 2025 Orrin r" + stock, 1, 2 << stock);
    }
    EarlierPage page = page(all(120, 66), level("cultivar", "Orrin", 60, 36));

    assertThat(late(three, page)).contains(Tables.range(6, 9));
    assertThat(late(four, page)).isEmpty();
  }

  @Test
  void two_rows_of_the_same_counts_leave_open_which_was_late() {
    Circle today = circle().row("m4 2025 Orrin r1", 13, 20);
    EarlierPage whole = page(all(120, 66));

    assertThat(late(today, whole)).as("m1's Orrin or m4's").isEmpty();
    assertThat(late(today.row("m5 2025 Orrin r1", 13, 20), whole)).as("no one of three").isEmpty();
  }

  /** By the whole, m1's Orrin or m4's Vardy; by cultivars, only the latter. */
  @Test
  void lines_of_levels_settle_which_row_was_late() {
    Circle today = circle().row("m4 2025 Vardy r1", 13, 20);

    assertThat(late(today, page(all(120, 66)))).isEmpty();
    assertThat(late(today, page(all(120, 66), level("cultivar", "Orrin", 60, 36))))
        .contains(Tables.cells(6));
  }

  @Test
  void counts_that_no_late_row_explains_are_not_found() {
    Circle today = circle().row("m4 2025 Orrin r1", 5, 7);

    assertThat(late(today, page(all(119, 66)))).as("8 grafts more").isEmpty();
    assertThat(late(today, page(all(120, 65)))).as("6 takes more").isEmpty();
    assertThat(late(today, page(all(120, 67)))).as("4 takes more").isEmpty();
    assertThat(late(today, page(all(128, 66)))).as("fewer grafts than then").isEmpty();
    assertThat(late(circle(), page(all(120, 67)))).as("a take fewer").isEmpty();
    assertThat(late(circle(), page(all(120, 65)))).as("a take more").isEmpty();
  }

  @Test
  void one_line_that_differs_is_enough_not_to_find_a_page() {
    assertThat(late(circle(), page(all(120, 66), level("cultivar", "Orrin", 60, 35)))).isEmpty();
    assertThat(late(circle(), page(all(120, 66), level("cultivar", "Orrin", 61, 36)))).isEmpty();
    assertThat(late(circle(), page(all(120, 66), level("cultivar", "Pell", 60, 36)))).isEmpty();
    assertThat(late(circle(), page(all(120, 66), level("bed", "1", 60, 36)))).isEmpty();
  }

  /** The page's others are all but its own levels, whatever other tables show. */
  @Test
  void what_is_counted_together_leaves_out_levels_of_its_own_table_only() {
    EarlierPage page =
        page(
            all(120, 66),
            level("rootstock", "r1", 60, 35),
            level("cultivar", "Orrin", 60, 36),
            level("cultivar", "Vardy", 20, 9),
            others("cultivar", 40, 21));

    Found found = find(circle(), page).orElseThrow();

    assertThat(found.tables().get(2).entries().get(2).cells()).isEqualTo(Tables.cells(3, 4));
  }

  @Test
  void a_page_about_a_season_that_is_gone_is_not_found() {
    Circle today = new Circle().row("m1 2026 Orrin r1", 66, 120);

    assertThat(late(today, page(all(120, 66)))).isEmpty();
  }

  @Test
  void records_without_seasons_are_those_of_a_page_without_seasons_only() {
    Circle today = circle();
    GraftsByMember evidence = new GraftsByMember(today.cells().without("season"), "grafter");
    Line none = new Line("all", "", List.of(""), Kind.ALL, "", 120, 66);

    assertThat(new EarlierGrafts(evidence).find(page(none)).map(Found::late))
        .contains(new BitSet());
    assertThat(new EarlierGrafts(evidence).find(page(all(120, 66)))).isEmpty();
  }

  @Test
  void where_some_grafts_have_no_season_a_page_without_one_is_about_these() {
    Circle today = circle().row("m4  Orrin r1", 5, 7);
    Line none = new Line("all", "", List.of(""), Kind.ALL, "", 7, 5);

    assertThat(find(today, page(none)).orElseThrow().tables().get(0).entries().get(0).cells())
        .isEqualTo(Tables.cells(6));
  }

  @Test
  void a_page_that_is_not_found_may_be_about_its_seasons_or_all_if_it_had_none() {
    Circle today = circle().row("m1 2026 Orrin r1", 3, 9);
    EarlierGrafts known = new EarlierGrafts(new GraftsByMember(today.cells(), "grafter"));
    EarlierGrafts unknown =
        new EarlierGrafts(new GraftsByMember(today.cells().without("season"), "grafter"));
    EarlierPage none = page(new Line("all", "", List.of(""), Kind.ALL, "", 7, 5));

    assertThat(known.mayBeAbout(ofCircle())).isEqualTo(Tables.range(0, 6));
    assertThat(known.mayBeAbout(none)).isEqualTo(Tables.range(0, 7));
    assertThat(unknown.mayBeAbout(ofCircle())).isEqualTo(Tables.range(0, 7));
  }

  /** Of 200 batches three may be late, of more two, so that the search ends soon. */
  @ParameterizedTest
  @ValueSource(ints = {200, 201})
  void in_many_batches_fewer_late_ones_are_looked_for(int batches) {
    for (int late = 1; late <= 3; late++) {
      Optional<BitSet> found = lateAmong(batches, late);
      assertThat(found.isPresent()).as("%d late", late).isEqualTo(late <= (batches > 200 ? 2 : 3));
    }
  }

  /** Rows without a name, a batch each: the last 1, 2 and 4 grafts were late, the others 100. */
  private static Optional<BitSet> lateAmong(int batches, int late) {
    Circle circle = new Circle();
    for (int row = 0; row < batches - late; row++) {
      circle.row(" 2025 Orrin r1", 60, 100);
    }
    for (int row = 0; row < late; row++) {
      circle.row(" 2025 Orrin r1", 0, 1 << row);
    }
    return late(circle, page(all(100L * (batches - late), 60L * (batches - late))));
  }
}
