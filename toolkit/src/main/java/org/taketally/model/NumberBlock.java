package org.taketally.model;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.model.numeric.Spline;

/** A straight line, or a curve if there is a spline. */
final class NumberBlock implements FixedBlock {

  private final String term;
  private final Spline spline;
  private final double[] distinct;
  private final int[] codes;

  NumberBlock(String term, double[] values, Spline spline) {
    this.term = term;
    this.spline = spline;
    this.distinct = Arrays.stream(values).sorted().distinct().toArray();
    this.codes = new int[values.length];
    for (int i = 0; i < values.length; i++) {
      codes[i] = Arrays.binarySearch(distinct, values[i]);
    }
  }

  @Override
  public String term() {
    return term;
  }

  @Override
  public List<String> labels() {
    return spline == null
        ? List.of("")
        : IntStream.rangeClosed(1, spline.width()).mapToObj(k -> "curve " + k).toList();
  }

  @Override
  public int[] codes() {
    return codes;
  }

  @Override
  public int codeCount() {
    return distinct.length;
  }

  @Override
  public void fill(int code, double[] row, int at) {
    fill(distinct[code], row, at);
  }

  @Override
  public void fill(String level, double[] row, int at) {
    fill(Double.parseDouble(level), row, at);
  }

  private void fill(double value, double[] row, int at) {
    if (spline == null) {
      row[at] = value;
    } else {
      spline.fill(value, row, at);
    }
  }
}
