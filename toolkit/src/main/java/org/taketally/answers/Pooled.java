package org.taketally.answers;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;

/** Mean logit over all cells in a draw, from means of the design: no pass over the cells. */
final class Pooled {

  private final TakeFit fit;
  private final double[] meanRow;
  private final double[][] shares;
  private final double[] weights;
  private final Map<String, double[]> columnRows = new ConcurrentHashMap<>();

  Pooled(TakeFit fit, double[] weights) {
    this.fit = fit;
    this.weights = weights;
    int width = fit.beta().length;
    this.meanRow = new double[width];
    for (int k = 0; k < width; k++) {
      double[] unit = new double[width];
      unit[k] = 1;
      double[] part = fit.design().fixedPart(unit);
      for (int i = 0; i < part.length; i++) {
        meanRow[k] += weights[i] * part[i];
      }
    }
    List<VaryingFactor> varying = fit.varying();
    this.shares = new double[varying.size()][];
    for (int f = 0; f < shares.length; f++) {
      shares[f] = new double[varying.get(f).levels().size()];
      int[] codes = fit.design().codes(varying.get(f).factor());
      for (int i = 0; i < codes.length; i++) {
        shares[f][codes[i]] += weights[i];
      }
    }
  }

  /** Mean logit in a draw minus mean logit at the estimates. */
  double change(TakeDraws draws, int d) {
    double change = dot(meanRow, draws.beta(d)) - dot(meanRow, fit.beta());
    for (int f = 0; f < shares.length; f++) {
      VaryingFactor factor = fit.varying().get(f);
      change += dot(shares[f], draws.effects(factor.factor(), d)) - dot(shares[f], factor.modes());
    }
    return change;
  }

  /** Change of the mean of what a column adds, against its first level where it is fixed. */
  double columnChange(String column, boolean varies, String first, TakeDraws draws, int d) {
    if (varies) {
      int f = fit.varying().indexOf(fit.varying(column));
      return dot(shares[f], draws.effects(column, d)) - dot(shares[f], fit.varying(column).modes());
    }
    double[] row = columnRows.computeIfAbsent(column, c -> columnRow(c, first));
    return dot(row, draws.beta(d)) - dot(row, fit.beta());
  }

  private double[] columnRow(String column, String first) {
    double[] row = new double[meanRow.length];
    for (int k = 0; k < row.length; k++) {
      double[] unit = new double[row.length];
      unit[k] = 1;
      double[] as = fit.design().fixedPart(unit);
      double[] with = fit.design().fixedPartWith(column, first, unit);
      for (int i = 0; i < as.length; i++) {
        row[k] += weights[i] * (as[i] - with[i]);
      }
    }
    return row;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int k = 0; k < a.length; k++) {
      sum += a[k] * b[k];
    }
    return sum;
  }
}
