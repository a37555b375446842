package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.compare.Bootstrap;
import org.taketally.terms.Interval;
import org.taketally.terms.Provenance;

/** Twenty grafts of one row count for less than twenty rows of one, if rows scatter. */
class RowScatterTest {

  private static final int ROWS = 40;
  private static final int SINGLES = 60;
  private static final TakeModel MODEL = TakeModel.ofTakes().compare("rootstock").varyByBatchRow();

  /** Two stocks alike: rows of 20 with scatter, and single grafts already counted together. */
  private static Cells rowsAndSingles(long seed, double scatter, int graftsPerRow) {
    SplittableRandom random = new SplittableRandom(seed);
    int size = ROWS + 2;
    int[] stock = new int[size];
    int[] row = new int[size];
    int[] grafts = new int[size];
    int[] takes = new int[size];
    for (int i = 0; i < size; i++) {
      boolean singles = i >= ROWS;
      stock[i] = i % 2;
      row[i] = singles ? Factor.MISSING : i;
      grafts[i] = singles ? SINGLES : graftsPerRow;
      double eta = 0.5 + (singles ? 0 : scatter * random.nextGaussian());
      for (int n = 0; n < grafts[i]; n++) {
        takes[i] += random.nextDouble() < 1 / (1 + Math.exp(-eta)) ? 1 : 0;
      }
    }
    return new Cells(
        List.of(
            new Factor("rootstock", List.of("R1", "R2"), stock),
            new Factor(
                Cells.BATCH_ROW,
                IntStream.range(0, ROWS).mapToObj(i -> "row " + (i + 1)).toList(),
                row)),
        List.of(),
        grafts,
        takes,
        0,
        Provenance.of("simulated", size));
  }

  @Test
  void ranges_of_rows_that_scatter_hold() {
    int sets = 60;
    int plain = 0;
    int held = 0;
    double scatter = 0;
    for (int seed = 0; seed < sets; seed++) {
      Cells cells = rowsAndSingles(seed, 0.7, 20);
      Interval narrow =
          TakeModel.ofTakes().compare("rootstock").fit(cells).fixed(0.9).get(1).interval();
      TakeFit fit = MODEL.fit(cells);
      Interval wide = fit.fixed(0.9).get(1).interval();
      plain += narrow.low() < 0 && narrow.high() > 0 ? 1 : 0;
      held += wide.low() < 0 && wide.high() > 0 ? 1 : 0;
      scatter += fit.varying(Cells.BATCH_ROW).standardDeviation() / sets;
    }
    assertThat(plain).isLessThan(48);
    assertThat(held).isBetween(49, 59);
    assertThat(scatter).isBetween(0.6, 0.75);
  }

  /** Sixty single grafts in one cell are sixty: they share no luck. */
  @Test
  void single_grafts_have_no_scatter() {
    TakeFit fit = MODEL.fit(rowsAndSingles(5, 1.5, 20));
    VaryingFactor rows = fit.varying(Cells.BATCH_ROW);
    int last = rows.levels().size() - 1;
    assertThat(rows.levels().get(last)).isEqualTo(Cells.SINGLE_GRAFTS);
    assertThat(rows.levels()).hasSize(ROWS + 1);
    assertThat(rows.grafts(last)).isEqualTo(2 * SINGLES);
    assertThat(rows.levelEffect(last)).isZero();
    assertThat(rows.levelEffectSd(last)).isZero();
    TakeDraws draws = fit.draws(50, 1);
    for (int d = 0; d < 50; d++) {
      assertThat(draws.effects(Cells.BATCH_ROW, d)[last]).isZero();
      assertThat(draws.effects(Cells.BATCH_ROW, d)[0]).isNotZero();
    }
    assertThat(fit.leftOut()).isEmpty();
  }

  @Test
  void where_all_are_single_grafts_there_is_nothing_to_scatter() {
    Cells cells = rowsAndSingles(6, 0, 1).where(i -> i >= ROWS);
    TakeFit fit = MODEL.fit(cells);
    assertThat(fit.varying()).isEmpty();
    assertThat(fit.warnings()).isEmpty();
  }

  @Test
  void needs_cells_that_keep_rows_apart() {
    Cells merged = rowsAndSingles(7, 0.5, 20).where(i -> true);
    Cells without =
        new Cells(
            List.of(merged.factor("rootstock")),
            List.of(),
            merged.grafts(),
            merged.takes(),
            0,
            merged.provenance());
    assertThatThrownBy(() -> MODEL.fit(without))
        .isInstanceOf(CannotFit.class)
        .hasMessageContaining("batch_row");
  }

  /** Simulated takes scatter as the fit says, single grafts not at all. */
  @Test
  void bootstrap_keeps_single_grafts_from_scattering() {
    TakeFit fit = MODEL.fit(rowsAndSingles(8, 1.2, 20));
    double sd = fit.varying(Cells.BATCH_ROW).standardDeviation();
    double mean =
        Bootstrap.of(3).withReplicates(40).of(fit).stream()
            .mapToDouble(replicate -> replicate.sds()[0])
            .average()
            .orElse(0);
    assertThat(mean).isBetween(0.85 * sd, 1.05 * sd);
  }
}
