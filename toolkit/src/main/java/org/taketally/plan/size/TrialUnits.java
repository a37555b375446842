package org.taketally.plan.size;

import java.util.OptionalInt;

/**
 * What is given a rootstock independently: the single graft, or a bed, tray or day as a whole.
 *
 * @param size grafts in a unit, 1 or more; 1 where each graft is its own unit
 * @param correlation of two grafts of a unit beyond the stock (intraclass), 0 or more and below 1
 * @param most units there can be of each stock; empty if there is no limit
 */
public record TrialUnits(int size, double correlation, OptionalInt most) {

  public TrialUnits {
    if (size < 1) {
      throw new IllegalArgumentException("a bed, tray or day holds 1 graft or more, got " + size);
    }
    if (!(correlation >= 0 && correlation < 1)) {
      throw new IllegalArgumentException(
          "the correlation of grafts of one bed, tray or day must be 0 or more and below 1, e.g."
              + " 0.05, got "
              + correlation);
    }
    if (most.isPresent() && most.getAsInt() < 2) {
      throw new IllegalArgumentException(
          "with %d bed, tray or day of each stock the stock can't be told from the bed; at least 2 of each are needed"
              .formatted(most.getAsInt()));
    }
  }

  /**
   * Stocks are mixed within every bed, tray and day, so that each graft counts.
   *
   * @return units of one graft, as many as wanted
   */
  public static TrialUnits singleGrafts() {
    return new TrialUnits(1, 0, OptionalInt.empty());
  }

  /**
   * One stock to a bed, tray or day.
   *
   * @param size grafts in each, 1 or more
   * @param correlation of two grafts of one of them, 0 or more and below 1
   * @return units, as many as wanted
   */
  public static TrialUnits beds(int size, double correlation) {
    return new TrialUnits(size, correlation, OptionalInt.empty());
  }

  /**
   * With a limit.
   *
   * @param units most of each stock, 2 or more
   * @return new units
   */
  public TrialUnits atMost(int units) {
    return new TrialUnits(size, correlation, OptionalInt.of(units));
  }

  /**
   * Whether grafts count one by one.
   *
   * @return true if grafts share no luck beyond the stock, and their number isn't limited
   */
  public boolean isSingle() {
    return (size == 1 || correlation == 0) && most.isEmpty();
  }

  /**
   * How many times the grafts are needed that independent ones would need.
   *
   * @return 1 + (size - 1) correlation
   * @see "Kish (1965), Survey Sampling, section 5.4"
   */
  public double designEffect() {
    return 1 + (size - 1) * correlation;
  }
}
