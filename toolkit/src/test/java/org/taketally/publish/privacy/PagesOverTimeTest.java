package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;

/**
 * Attacks on pages made one after another: everything that follows from any of their counts by
 * adding and subtracting, alone or with one member's own results, tried on simulated circles. Ranks
 * are worked out here by plain elimination in doubles, not by the code under test.
 */
class PagesOverTimeTest {

  private static final int CIRCLES = 24;
  private static final int MANY_CIRCLES = 400;
  private static final PrivacyRule RULE = PrivacyRule.usual();

  private int linesFirst;
  private int linesSecond;
  private int pagesSecond;

  /** Pages as they came out, their lines as rows of the whole circle. */
  private static final class Pages {
    private final Circle circle;
    private final List<BitSet> lines = new ArrayList<>();
    private final boolean keepsFile;
    private PublishedBefore before = PublishedBefore.nothing();

    Pages(Circle circle) {
      this(circle, true);
    }

    Pages(Circle circle, boolean keepsFile) {
      this.circle = circle;
      this.keepsFile = keepsFile;
    }

    int publish(BitSet rows, String season, String... leftOut) {
      int[] row = rows.stream().toArray();
      Cells cells = circle.only(rows).cells();
      for (String column : leftOut) {
        cells = cells.without(column);
      }
      GraftsByMember evidence = new GraftsByMember(cells, "grafter");
      SeasonTables tables = SeasonTables.of(evidence, season, RULE, before);
      if (tables.whole().isEmpty()) {
        return 0;
      }
      if (keepsFile) {
        before = PublishedBefore.read(before.and(tables.asPublished(evidence, season)).csv());
      }
      int from = lines.size();
      lines.add(inCircle(tables.whole(), row));
      tables.tables().stream()
          .flatMap(table -> table.entries().stream())
          .forEach(entry -> lines.add(inCircle(entry.cells(), row)));
      return lines.size() - from;
    }

    private BitSet inCircle(BitSet cells, int[] row) {
      BitSet rows = new BitSet();
      cells.stream().forEach(cell -> rows.set(row[cell]));
      return rows;
    }

    /** Pairs of a member (or nobody) and another, whose own result the first can work out. */
    List<String> told() {
      List<String> members =
          IntStream.range(0, circle.size())
              .mapToObj(circle::grafter)
              .filter(name -> !name.isEmpty())
              .distinct()
              .toList();
      List<String> told = new ArrayList<>();
      for (String insider : concat("nobody", members)) {
        int known = rank(row -> !circle.grafter(row).equals(insider));
        for (String other : members) {
          if (!other.equals(insider)
              && known
                  > rank(
                      row ->
                          !circle.grafter(row).equals(insider)
                              && !circle.grafter(row).equals(other))) {
            told.add(insider + " of " + other);
          }
        }
      }
      return told;
    }

    private List<String> concat(String first, List<String> rest) {
      List<String> all = new ArrayList<>(List.of(first));
      all.addAll(rest);
      return all;
    }

    private int rank(IntPredicate columns) {
      int[] kept = IntStream.range(0, circle.size()).filter(columns).toArray();
      double[][] matrix = new double[lines.size()][kept.length];
      for (int i = 0; i < matrix.length; i++) {
        for (int k = 0; k < kept.length; k++) {
          matrix[i][k] = lines.get(i).get(kept[k]) ? 1 : 0;
        }
      }
      return rankOf(matrix);
    }
  }

  private static int rankOf(double[][] matrix) {
    int rank = 0;
    int columns = matrix.length == 0 ? 0 : matrix[0].length;
    for (int c = 0; c < columns && rank < matrix.length; c++) {
      int best = rank;
      for (int r = rank + 1; r < matrix.length; r++) {
        best = Math.abs(matrix[r][c]) > Math.abs(matrix[best][c]) ? r : best;
      }
      if (Math.abs(matrix[best][c]) < 1e-7) {
        continue;
      }
      double[] pivot = matrix[best];
      matrix[best] = matrix[rank];
      matrix[rank++] = pivot;
      for (int r = rank; r < matrix.length; r++) {
        double factor = matrix[r][c] / pivot[c];
        for (int k = c; factor != 0 && k < columns; k++) {
          matrix[r][k] -= factor * pivot[k];
        }
      }
    }
    return rank;
  }

  private static BitSet rows(Circle circle, IntPredicate kept) {
    BitSet rows = new BitSet();
    IntStream.range(0, circle.size()).filter(kept).forEach(rows::set);
    return rows;
  }

  private static List<String> seasons(Circle circle) {
    return IntStream.range(0, circle.size()).mapToObj(circle::season).distinct().sorted().toList();
  }

  private void attack(int seed) {
    Circle circle = Circle.random(seed);
    List<String> seasons = seasons(circle);
    String last = seasons.get(seasons.size() - 1);
    BitSet all = rows(circle, row -> true);

    Pages yearAfterYear = new Pages(circle);
    if (seasons.size() > 1) {
      String previous = seasons.get(seasons.size() - 2);
      linesFirst +=
          yearAfterYear.publish(rows(circle, r -> !circle.season(r).equals(last)), previous);
      int second = yearAfterYear.publish(all, last);
      linesSecond += second;
      pagesSecond += second > 0 ? 1 : 0;
      assertThat(yearAfterYear.told()).as("circle %d, year after year", seed).isEmpty();
    }

    Pages eachSeason = new Pages(circle);
    for (String season : seasons) {
      eachSeason.publish(all, season);
    }
    for (String season : seasons) {
      eachSeason.publish(rows(circle, r -> circle.season(r).equals(season)), season);
    }
    assertThat(eachSeason.told()).as("circle %d, each season", seed).isEmpty();

    Random random = new Random(seed);
    String member = circle.grafter(random.nextInt(circle.size()));
    Pages lateSheet = new Pages(circle);
    lateSheet.publish(
        rows(circle, r -> !(circle.grafter(r).equals(member) && circle.season(r).equals(last))),
        last);
    lateSheet.publish(all, last);
    assertThat(lateSheet.told()).as("circle %d, after a late sheet", seed).isEmpty();

    Pages corrected = new Pages(circle);
    int lost = random.nextInt(circle.size());
    corrected.publish(rows(circle, r -> r != lost), last);
    corrected.publish(all, last);
    assertThat(corrected.told()).as("circle %d, after a row more", seed).isEmpty();
  }

  @Test
  void no_member_alone_can_be_worked_out_from_pages_and_one_member_s_knowledge() {
    IntStream.range(0, CIRCLES).forEach(this::attack);
  }

  /** Its late sheet has the same counts as another member's batch: which was late isn't known. */
  @Test
  void a_late_sheet_that_could_be_another_s_is_not_taken_for_it() {
    attack(30);
  }

  @Tag("slow")
  @Test
  void nor_in_many_circles() {
    IntStream.range(0, MANY_CIRCLES).forEach(this::attack);
    System.out.printf(
        "%d circles: 0 told; %d lines on first pages, %d on %d second pages%n",
        MANY_CIRCLES, linesFirst, linesSecond, pagesSecond);
  }

  /** The attack itself works: pages that know nothing of each other do tell. */
  @Test
  void without_the_file_a_late_sheet_tells() {
    int told = 0;
    for (int seed = 0; seed < CIRCLES; seed++) {
      Circle circle = Circle.random(seed);
      String last = seasons(circle).get(seasons(circle).size() - 1);
      String member = circle.grafter(0);
      Pages pages = new Pages(circle, false);
      pages.publish(rows(circle, r -> !circle.grafter(r).equals(member)), last);
      pages.publish(rows(circle, row -> true), last);
      told += pages.told().isEmpty() ? 0 : 1;
    }
    assertThat(told).isGreaterThan(CIRCLES / 2);
  }

  /**
   * The same records with and without a column, in both orders: neither page alone nor the one
   * taken off the other tells.
   */
  @Test
  void leaving_a_column_out_tells_nothing_more() {
    int shown = 0;
    for (int seed = 0; seed < CIRCLES; seed++) {
      Circle circle = Circle.random(seed);
      String last = seasons(circle).get(seasons(circle).size() - 1);
      BitSet all = rows(circle, row -> true);
      for (String column : List.of("cultivar", "rootstock")) {
        Pages without = new Pages(circle);
        shown += without.publish(all, last, column);
        assertThat(without.told()).as("circle %d, without %s", seed, column).isEmpty();
        without.publish(all, last);
        assertThat(without.told()).as("circle %d, %s filled in", seed, column).isEmpty();

        Pages with = new Pages(circle);
        with.publish(all, last);
        with.publish(all, last, column);
        assertThat(with.told()).as("circle %d, %s left out", seed, column).isEmpty();
      }
    }
    assertThat(shown).as("lines of pages that lack a column").isGreaterThan(CIRCLES);
  }

  /** A page made before the seasons were written down, then one with them and a late sheet. */
  @Test
  void filling_seasons_in_does_not_tell_a_late_sheet() {
    int shown = 0;
    for (int seed = 0; seed < CIRCLES; seed++) {
      Circle circle = Circle.random(seed);
      String last = seasons(circle).get(seasons(circle).size() - 1);
      String member = circle.grafter(0);
      Pages pages = new Pages(circle);
      pages.publish(
          rows(circle, r -> !(circle.grafter(r).equals(member) && circle.season(r).equals(last))),
          "",
          "season");
      shown += pages.publish(rows(circle, row -> true), last) > 0 ? 1 : 0;
      assertThat(pages.told()).as("circle %d", seed).isEmpty();
    }
    assertThat(shown).as("pages with seasons").isGreaterThan(CIRCLES / 4);
  }

  /** Nobody can check how few people stand behind a line: none is shown. */
  @Test
  void without_the_column_of_hands_no_line_is_shown() {
    for (int seed = 0; seed < CIRCLES; seed++) {
      Circle circle = Circle.random(seed);
      String last = seasons(circle).get(seasons(circle).size() - 1);

      Pages pages = new Pages(circle);

      assertThat(pages.publish(rows(circle, row -> true), last, "grafter")).isZero();
    }
  }

  /** A second page that is never made would pass the tests above. */
  @Test
  void a_year_later_most_circles_still_get_a_page() {
    IntStream.range(0, CIRCLES).forEach(this::attack);
    assertThat(pagesSecond).isGreaterThan(CIRCLES / 2);
    assertThat(linesSecond).isGreaterThan(linesFirst / 2);
  }
}
