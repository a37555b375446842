package org.taketally.records.problems;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers for messages: no needless zeros, no exponents. */
public final class Plain {

  private static final MathContext DIGITS = new MathContext(6);

  private Plain() {}

  public static String number(double value) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
    BigDecimal rounded = new BigDecimal(value).round(DIGITS);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
