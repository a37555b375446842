package org.taketally.model;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.taketally.cells.Cells;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Logit;

/** Works out the take of a planned lot in every draw. */
final class LotPredictor {

  private final FitInput fit;
  private final TakeDesign design;
  private final TakeDraws draws;
  private final List<FixedBlock> unsaid = new ArrayList<>();
  private final List<Varying> varying = new ArrayList<>();
  private final double[] row;
  private final long[] upTo;

  /** Where a lot stands in a varying column: a level, or one never seen. */
  private record Varying(TakeDraws.Column column, int level, long key) {}

  LotPredictor(FitInput fit, List<VaryingFactor> factors, TakeDraws draws, PlannedLot lot) {
    this.fit = fit;
    this.design = fit.design();
    this.draws = draws;
    this.row = new double[design.names().size()];
    row[0] = 1;
    requireKnown(lot);
    for (FixedBlock block : design.blocks()) {
      String value = block instanceof ShareBlock ? "" : lot.value(block.term()).orElse(null);
      if (value == null) {
        unsaid.add(block);
      } else {
        block.fill(value, row, design.startOf(block));
      }
    }
    for (VaryingFactor factor : factors) {
      varying.add(place(factor, lot));
    }
    int[] grafts = fit.cells().grafts();
    this.upTo = new long[grafts.length];
    for (int i = 0; i < grafts.length; i++) {
      upTo[i] = grafts[i] + (i == 0 ? 0 : upTo[i - 1]);
    }
  }

  private void requireKnown(PlannedLot lot) {
    for (String column : lot.values().keySet()) {
      if (!fit.model().columns().contains(column) && fit.cells().findFactor(column).isEmpty()) {
        throw new IllegalArgumentException(
            "this fit knows nothing of %s; it knows of %s"
                .formatted(column, fit.model().columns()));
      }
    }
  }

  private Varying place(VaryingFactor factor, PlannedLot lot) {
    String column = factor.factor();
    List<String> parts =
        column.equals(ModelTerms.PAIRING)
            ? List.of(RecordColumn.CULTIVAR.columnName(), RecordColumn.ROOTSTOCK.columnName())
            : fit.model().together().getOrDefault(column, List.of());
    String level = lot.value(column).orElse(null);
    if (level == null && !parts.isEmpty()) {
      String first = lot.value(parts.get(0)).orElse(null);
      String second = lot.value(parts.get(1)).orElse(null);
      level = first == null || second == null ? null : Combination.level(first, second);
    }
    int known = level == null ? -1 : factor.levels().indexOf(level);
    boolean single = column.equals(Cells.BATCH_ROW) && Cells.SINGLE_GRAFTS.equals(level);
    return new Varying(
        draws.column(column),
        known,
        single ? known : level == null ? -1 : Integer.toUnsignedLong(level.hashCode()));
  }

  LotPrediction predict() {
    double[] takes = new double[draws.count()];
    for (int d = 0; d < takes.length; d++) {
      takes[d] = Logit.take(logit(d));
    }
    return new LotPrediction(takes);
  }

  private double logit(int d) {
    fillUnsaid(new SplittableRandom(d * 0x9E3779B97F4A7C15L + 11));
    double[] beta = draws.beta(d);
    double eta = 0;
    for (int j = 0; j < row.length; j++) {
      eta += row[j] * beta[j];
    }
    for (Varying place : varying) {
      eta +=
          place.level() >= 0
              ? place.column().effect(place.level(), d)
              : place.column().in(d).ofUnseen(place.key());
    }
    return eta;
  }

  /** Adjusted columns nothing was said of: those of a graft of the records. */
  private void fillUnsaid(SplittableRandom random) {
    if (unsaid.isEmpty()) {
      return;
    }
    long graft = random.nextLong(upTo[upTo.length - 1]) + 1;
    int cell = java.util.Arrays.binarySearch(upTo, graft);
    int at = cell >= 0 ? cell : -cell - 1;
    for (FixedBlock block : unsaid) {
      int from = design.startOf(block);
      java.util.Arrays.fill(row, from, from + block.width(), 0);
      block.fill(block.codes()[at], row, from);
    }
  }
}
