package org.taketally.cells;

import it.unimi.dsi.fastutil.longs.Long2IntOpenHashMap;
import it.unimi.dsi.fastutil.longs.LongArrayList;

/** Gives whole numbers from 0 to values, in the order met. */
final class Coding {

  private final Long2IntOpenHashMap codes = new Long2IntOpenHashMap();
  private final LongArrayList values = new LongArrayList();

  Coding() {
    codes.defaultReturnValue(Factor.MISSING);
  }

  int code(long value) {
    int code = codes.get(value);
    if (code == Factor.MISSING) {
      code = values.size();
      codes.put(value, code);
      values.add(value);
    }
    return code;
  }

  /** The code of a number; {@link Factor#MISSING} of NaN. */
  int code(double number) {
    return Double.isNaN(number)
        ? Factor.MISSING
        : code(Double.doubleToLongBits(number + 0.0)); // -0 is 0
  }

  long value(int code) {
    return values.getLong(code);
  }

  double number(int code) {
    return Double.longBitsToDouble(values.getLong(code));
  }
}
