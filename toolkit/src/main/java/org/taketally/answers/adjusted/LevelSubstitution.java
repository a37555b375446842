package org.taketally.answers.adjusted;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.LogitPart;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.columns.RecordColumn;

/**
 * Taking one column's part out of every condition's logit and putting a level's part in.
 *
 * <p>Where pairings vary, swapping the cultivar (or the rootstock) also swaps the pairing: a level
 * then contributes the mean of its pairings over the records' mix of the other partner; a pairing
 * never made is drawn from the spread of pairings. Where rootstocks vary by season as well, that
 * part is taken out: what is left is their take in an average season.
 */
public final class LevelSubstitution {

  private final ObservedConditions conditions;
  private final TakeDraws draws;
  private final String column;
  private final boolean varies;
  private final List<LogitPart> parts;
  private final PairingMix pairing;
  private final boolean bySeason;
  private final int[][] cellsOfPartner;

  private LevelSubstitution(
      TakeFit fit,
      TakeDraws draws,
      ObservedConditions conditions,
      String column,
      List<String> levels,
      PairingMix pairing) {
    this.conditions = conditions;
    this.draws = draws;
    this.column = column;
    this.varies = varies(fit, column);
    this.parts =
        varies
            ? List.of()
            : levels.stream().map(level -> fit.design().part(column, level)).toList();
    this.pairing = pairing;
    this.bySeason =
        column.equals(RecordColumn.ROOTSTOCK.columnName())
            && varies(fit, SuggestedModel.STOCK_BY_SEASON);
    this.cellsOfPartner = pairing == null ? new int[0][] : pairing.cells(conditions);
  }

  static LevelSubstitution ofLevels(
      TakeFit fit,
      TakeDraws draws,
      ObservedConditions conditions,
      String column,
      List<String> levels) {
    return new LevelSubstitution(
        fit, draws, conditions, column, levels, PairingMix.of(fit, draws, column, levels));
  }

  static LevelSubstitution ofValues(
      TakeFit fit, TakeDraws draws, ObservedConditions conditions, String column, double[] values) {
    List<String> names = Arrays.stream(values).mapToObj(Double::toString).toList();
    return new LevelSubstitution(fit, draws, conditions, column, names, null);
  }

  public static boolean varies(TakeFit fit, String column) {
    return fit.varying().stream().anyMatch(f -> f.factor().equals(column));
  }

  private double[] own(int d) {
    if (varies) {
      return draws.effects(column, d);
    }
    double[] beta = draws.beta(d);
    return parts.stream().mapToDouble(part -> part.at(beta)).toArray();
  }

  /** What each level or value contributes in a draw, logits. */
  double[] contributions(int d) {
    double[] own = own(d);
    if (pairing != null) {
      TakeDraws.Deviations deviations = pairing.deviations().in(d);
      for (int l = 0; l < own.length; l++) {
        own[l] += pairing.mean(l, deviations);
      }
    }
    return own;
  }

  /** Whether the column is one of two that pair, and pairings vary. */
  boolean pairs() {
    return pairing != null;
  }

  /** Take of each level on each partner, over that partner's own conditions, in a draw. */
  double[][] takesByPartner(int d, float[] eta) {
    double[] rest = rest(d, eta);
    double[] own = own(d);
    double[] weights = conditions.weights();
    TakeDraws.Deviations deviations = pairing.deviations().in(d);
    double[][] takes = new double[pairing.mix().length][own.length];
    for (int o = 0; o < takes.length; o++) {
      int[] cells = cellsOfPartner[o];
      if (cells.length == 0) {
        continue;
      }
      double[] levels = own.clone();
      for (int l = 0; l < own.length; l++) {
        levels[l] += pairing.effect(l, o, deviations);
      }
      takes[o] = ShiftedMean.of(picked(cells, rest, 1), shares(cells, weights)).at(levels);
    }
    return takes;
  }

  private static double[] shares(int[] cells, double[] weights) {
    double total = 0;
    for (int i : cells) {
      total += weights[i];
    }
    return picked(cells, weights, total);
  }

  private static double[] picked(int[] places, double[] from, double dividedBy) {
    double[] picked = new double[places.length];
    for (int k = 0; k < picked.length; k++) {
      picked[k] = from[places[k]] / dividedBy;
    }
    return picked;
  }

  /** Logits less the column's part, in a draw. */
  double[] rest(int d, float[] eta) {
    double[] rest = new double[eta.length];
    Arrays.setAll(rest, i -> eta[i]);
    if (varies) {
      takeOut(column, d, rest);
    } else {
      conditions.takeOut(column, draws.beta(d), rest);
    }
    if (pairing != null) {
      takeOut(TakeModel.PAIRING, d, rest);
    }
    if (bySeason) {
      takeOut(SuggestedModel.STOCK_BY_SEASON, d, rest);
    }
    return rest;
  }

  private void takeOut(String varyingColumn, int d, double[] rest) {
    double[] effects = draws.effects(varyingColumn, d);
    int[] codes = conditions.codes(varyingColumn);
    for (int i = 0; i < rest.length; i++) {
      rest[i] -= effects[codes[i]];
    }
  }

  /** Which pairings a level has, and how the records mix the other partner. */
  private record PairingMix(
      int[][] pairings, double[] mix, int[] partners, TakeDraws.Column deviations) {

    static PairingMix of(TakeFit fit, TakeDraws draws, String column, List<String> levels) {
      boolean cultivar = column.equals(RecordColumn.CULTIVAR.columnName());
      if (!(cultivar || column.equals(RecordColumn.ROOTSTOCK.columnName()))
          || !varies(fit, TakeModel.PAIRING)) {
        return null;
      }
      Cells cells = fit.cells();
      Factor own = cells.factor(column);
      Factor other =
          cells.factor(
              cultivar ? RecordColumn.ROOTSTOCK.columnName() : RecordColumn.CULTIVAR.columnName());
      int[] codes = fit.design().codes(TakeModel.PAIRING);
      int[][] pairings = new int[levels.size()][other.size()];
      for (int[] row : pairings) {
        Arrays.fill(row, Factor.MISSING);
      }
      double[] mix = new double[other.size()];
      double total = cells.graftsTotal();
      int[] place = own.levels().stream().mapToInt(levels::indexOf).toArray();
      for (int i = 0; i < codes.length; i++) {
        pairings[place[own.code(i)]][other.code(i)] = codes[i];
        mix[other.code(i)] += cells.grafts(i) / total;
      }
      return new PairingMix(pairings, mix, other.codes(), draws.column(TakeModel.PAIRING));
    }

    double mean(int level, TakeDraws.Deviations drawn) {
      double mean = 0;
      for (int o = 0; o < mix.length; o++) {
        mean += mix[o] * effect(level, o, drawn);
      }
      return mean;
    }

    /** A pairing never made deviates by what its like do. */
    double effect(int level, int other, TakeDraws.Deviations drawn) {
      int code = pairings[level][other];
      return code == Factor.MISSING
          ? drawn.ofUnseen((long) level * mix.length + other)
          : drawn.of(code);
    }

    /** Conditions by partner. */
    int[][] cells(ObservedConditions conditions) {
      int[] partner = conditions.cells().map(cell -> partners[cell]).toArray();
      return IntStream.range(0, mix.length)
          .mapToObj(o -> IntStream.range(0, partner.length).filter(i -> partner[i] == o).toArray())
          .toArray(int[][]::new);
    }

    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }
}
