package org.taketally.answers;

import java.util.List;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeDesign;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

/**
 * Taking one column's part out of every cell's logit and putting a level's part in.
 *
 * <p>Where pairings vary, swapping the cultivar (or the rootstock) also swaps the pairing: a level
 * then contributes the mean of its pairings over the records' mix of the other partner, pairings
 * never made counting as nothing.
 */
final class Swap {

  private final TakeFit fit;
  private final TakeDesign design;
  private final TakeDraws draws;
  private final String column;
  private final boolean varies;
  private final List<String> levels;
  private final double[] values;
  private final PairingMix pairing;

  private Swap(TakeFit fit, TakeDraws draws, String column, List<String> levels, double[] values) {
    this.fit = fit;
    this.design = fit.design();
    this.draws = draws;
    this.column = column;
    this.varies = varies(fit, column);
    this.levels = levels;
    this.values = values;
    this.pairing = levels == null ? null : PairingMix.of(fit, column, levels);
  }

  static Swap ofLevels(TakeFit fit, TakeDraws draws, String column, List<String> levels) {
    return new Swap(fit, draws, column, levels, null);
  }

  static Swap ofValues(TakeFit fit, TakeDraws draws, String column, double[] values) {
    return new Swap(fit, draws, column, null, values);
  }

  static boolean varies(TakeFit fit, String column) {
    return fit.varying().stream().anyMatch(f -> f.factor().equals(column));
  }

  /** What each level or value contributes in a draw, logits; fixed columns against the first. */
  double[] contributions(int d) {
    double[] pairings = pairing == null ? null : draws.effects(TakeModel.PAIRING, d);
    double[] effects = own(draws.beta(d), varies ? draws.effects(column, d) : null);
    if (pairing != null) {
      for (int l = 0; l < effects.length; l++) {
        effects[l] += pairing.mean(l, pairings);
      }
    }
    return effects;
  }

  private double[] own(double[] beta, double[] effects) {
    if (varies) {
      return effects.clone();
    }
    int count = levels == null ? values.length : levels.size();
    double[] own = new double[count];
    double first = Double.NaN;
    for (int l = 0; l < count; l++) {
      double at = design.contribution(column, name(l), beta);
      first = l == 0 ? at : first;
      own[l] = at - first;
    }
    return own;
  }

  private String name(int l) {
    return levels == null ? Double.toString(values[l]) : levels.get(l);
  }

  /** Logits less the column's part, in a draw. */
  double[] rest(int d, double[] eta) {
    return rest(
        eta,
        draws.beta(d),
        varies ? draws.effects(column, d) : null,
        pairing == null ? null : draws.effects(TakeModel.PAIRING, d));
  }

  /** Logits less the column's part, at the estimates. */
  double[] restAtEstimates(double[] eta) {
    return rest(
        eta,
        fit.beta(),
        varies ? fit.varying(column).modes() : null,
        pairing == null ? null : fit.varying(TakeModel.PAIRING).modes());
  }

  private double[] rest(double[] eta, double[] beta, double[] effects, double[] pairings) {
    double[] rest = eta.clone();
    if (varies) {
      int[] codes = design.codes(column);
      for (int i = 0; i < rest.length; i++) {
        rest[i] -= effects[codes[i]];
      }
    } else {
      double[] as = design.fixedPart(beta);
      double[] first = design.fixedPartWith(column, name(0), beta);
      for (int i = 0; i < rest.length; i++) {
        rest[i] += first[i] - as[i];
      }
    }
    if (pairing != null) {
      int[] codes = design.codes(TakeModel.PAIRING);
      for (int i = 0; i < rest.length; i++) {
        rest[i] -= pairings[codes[i]];
      }
    }
    return rest;
  }

  /** How far the mean of {@link #rest} in a draw lies from that at the estimates. */
  double meanRestChange(int d, Pooled pooled) {
    double change = pooled.change(draws, d);
    change -= pooled.columnChange(column, varies, name(0), draws, d);
    return pairing == null
        ? change
        : change - pooled.columnChange(TakeModel.PAIRING, true, "", draws, d);
  }

  /** Which pairings a level has, and how the records mix the other partner. */
  private record PairingMix(int[][] pairings, double[] mix) {

    static PairingMix of(TakeFit fit, String column, List<String> levels) {
      boolean cultivar = column.equals("cultivar");
      if (!(cultivar || column.equals("rootstock")) || !varies(fit, TakeModel.PAIRING)) {
        return null;
      }
      Cells cells = fit.cells();
      Factor own = cells.factor(column);
      Factor other = cells.factor(cultivar ? "rootstock" : "cultivar");
      int[] codes = fit.design().codes(TakeModel.PAIRING);
      int[][] pairings = new int[levels.size()][other.size()];
      for (int[] row : pairings) {
        java.util.Arrays.fill(row, Factor.MISSING);
      }
      double[] mix = new double[other.size()];
      double total = cells.graftsTotal();
      int[] place = own.levels().stream().mapToInt(levels::indexOf).toArray();
      for (int i = 0; i < codes.length; i++) {
        pairings[place[own.codes()[i]]][other.codes()[i]] = codes[i];
        mix[other.codes()[i]] += cells.grafts()[i] / total;
      }
      return new PairingMix(pairings, mix);
    }

    double mean(int level, double[] effects) {
      double mean = 0;
      for (int o = 0; o < mix.length; o++) {
        int code = pairings[level][o];
        mean += code == Factor.MISSING ? 0 : mix[o] * effects[code];
      }
      return mean;
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
