package org.taketally.answers.effects;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.answers.effects.TakeCurve.Range;
import org.taketally.cells.Cells;

/** Grafts and takes counted in about six round ranges of a number. */
final class CountedRanges {

  private static final int AIM = 6;
  private static final double[] ROUND = {1, 2, 5, 10};

  private CountedRanges() {}

  /** Ranges from the lowest to the highest recorded value; those without grafts left out. */
  static List<Range> of(Cells cells, String column, double coverage) {
    double[] values = cells.measure(column).values();
    int[] recorded =
        IntStream.range(0, values.length).filter(i -> !Double.isNaN(values[i])).toArray();
    if (recorded.length == 0) {
      return List.of();
    }
    double low = IntStream.of(recorded).mapToDouble(i -> values[i]).min().orElseThrow();
    double high = IntStream.of(recorded).mapToDouble(i -> values[i]).max().orElseThrow();
    double width = width(high - low);
    double start = width * Math.floor(low / width);
    int count = (int) Math.max(1, Math.ceil((high - start) / width - 1e-9));
    long[] grafts = new long[count];
    long[] takes = new long[count];
    for (int i : recorded) {
      int range = (int) Math.min(count - 1, Math.floor((values[i] - start) / width + 1e-9));
      grafts[range] += cells.grafts(i);
      takes[range] += cells.takes(i);
    }
    List<Range> ranges = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      if (grafts[k] > 0) {
        ranges.add(
            new Range(
                start + k * width,
                start + (k + 1) * width,
                new TakeCount(takes[k], grafts[k]),
                TakeRateInterval.wilson(takes[k], grafts[k], coverage)));
      }
    }
    return ranges;
  }

  /** 1, 2 or 5 times a power of ten. */
  private static double width(double span) {
    if (!(span > 0)) {
      return 1;
    }
    double rough = span / AIM;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    for (double round : ROUND) {
      if (round * power >= rough * (1 - 1e-9)) {
        return round * power;
      }
    }
    throw new AssertionError("no round width for " + span);
  }
}
