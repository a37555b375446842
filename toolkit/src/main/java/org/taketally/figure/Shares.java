package org.taketally.figure;

/**
 * As much of an axis of shares as the data need, so that they aren't drawn small in an empty frame.
 *
 * @param low lowest share, 0 to 1
 * @param high highest share, {@code low} to 1
 */
record Shares(double low, double high) {

  private static final long WHOLE = 10;

  /** A frame of fewer tenths than this would make small differences look large. */
  private static final long LEAST = 4;

  static Shares of(double one, double other) {
    return new Shares(clipped(Math.min(one, other)), clipped(Math.max(one, other)));
  }

  private static double clipped(double share) {
    return Math.min(1, Math.max(0, share));
  }

  /** With one more share; NaN changes nothing. */
  Shares with(double share) {
    return Double.isNaN(share)
        ? this
        : new Shares(Math.min(low, clipped(share)), Math.max(high, clipped(share)));
  }

  /** From one tenth to another, at least four tenths apart. */
  Shares rounded() {
    long from = (long) Math.floor(low * WHOLE + 1e-9);
    long to = (long) Math.ceil(high * WHOLE - 1e-9);
    long lacking = Math.max(0, LEAST - (to - from));
    from = Math.max(0, from - (lacking + 1) / 2);
    to = Math.min(WHOLE, Math.max(to, from + LEAST));
    from = Math.min(from, to - LEAST);
    return new Shares((double) from / WHOLE, (double) to / WHOLE);
  }
}
