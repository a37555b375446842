package org.taketally.answers.adjusted;

import java.util.Arrays;
import java.util.List;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeDesign;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

/**
 * Taking one column's part out of every condition's logit and putting a level's part in.
 *
 * <p>Where pairings vary, swapping the cultivar (or the rootstock) also swaps the pairing: a level
 * then contributes the mean of its pairings over the records' mix of the other partner, pairings
 * never made counting as nothing.
 */
public final class LevelSubstitution {

  private final Conditions conditions;
  private final TakeDesign design;
  private final TakeDraws draws;
  private final String column;
  private final boolean varies;
  private final List<String> levels;
  private final PairingMix pairing;

  private LevelSubstitution(
      TakeFit fit,
      TakeDraws draws,
      Conditions conditions,
      String column,
      List<String> levels,
      PairingMix pairing) {
    this.conditions = conditions;
    this.design = fit.design();
    this.draws = draws;
    this.column = column;
    this.varies = varies(fit, column);
    this.levels = levels;
    this.pairing = pairing;
  }

  static LevelSubstitution ofLevels(
      TakeFit fit, TakeDraws draws, Conditions conditions, String column, List<String> levels) {
    return new LevelSubstitution(
        fit, draws, conditions, column, levels, PairingMix.of(fit, column, levels));
  }

  static LevelSubstitution ofValues(
      TakeFit fit, TakeDraws draws, Conditions conditions, String column, double[] values) {
    List<String> names = Arrays.stream(values).mapToObj(Double::toString).toList();
    return new LevelSubstitution(fit, draws, conditions, column, names, null);
  }

  public static boolean varies(TakeFit fit, String column) {
    return fit.varying().stream().anyMatch(f -> f.factor().equals(column));
  }

  /** What each level or value contributes in a draw, logits. */
  double[] contributions(int d) {
    double[] own =
        varies
            ? draws.effects(column, d).clone()
            : levels.stream()
                .mapToDouble(level -> design.contribution(column, level, draws.beta(d)))
                .toArray();
    if (pairing != null) {
      for (int l = 0; l < own.length; l++) {
        own[l] += pairing.mean(l, draws, d);
      }
    }
    return own;
  }

  /** Logits less the column's part, in a draw. */
  double[] rest(int d, float[] eta) {
    double[] rest = new double[eta.length];
    if (varies) {
      double[] effects = draws.effects(column, d);
      int[] codes = conditions.codes(column);
      Arrays.setAll(rest, i -> eta[i] - effects[codes[i]]);
    } else {
      double[] part = conditions.part(column, draws.beta(d));
      Arrays.setAll(rest, i -> eta[i] - part[i]);
    }
    if (pairing != null) {
      double[] effects = draws.effects(TakeModel.PAIRING, d);
      int[] codes = conditions.codes(TakeModel.PAIRING);
      for (int i = 0; i < rest.length; i++) {
        rest[i] -= effects[codes[i]];
      }
    }
    return rest;
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
        Arrays.fill(row, Factor.MISSING);
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

    /** A pairing never made deviates by what its like do. */
    double mean(int level, TakeDraws draws, int d) {
      double[] effects = draws.effects(TakeModel.PAIRING, d);
      double mean = 0;
      for (int o = 0; o < mix.length; o++) {
        int code = pairings[level][o];
        mean +=
            mix[o]
                * (code == Factor.MISSING
                    ? draws.unseen(TakeModel.PAIRING, (long) level * mix.length + o, d)
                    : effects[code]);
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
