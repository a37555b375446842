package org.taketally.plan.size;

import java.util.OptionalInt;

/**
 * What is given a rootstock independently: the single graft, or a bed, tray or day as a whole.
 *
 * @param size grafts in a unit, 1 or more; 1 where each graft is its own unit
 * @param spread how far takes of whole units of one stock differ, the same about any take: standard
 *     deviation, 0 or more and below 0.5
 * @param most units there can be of each stock; empty if there is no limit
 */
public record TrialUnits(int size, double spread, OptionalInt most) {

  public TrialUnits {
    if (size < 1) {
      throw new IllegalArgumentException("a bed, tray or day holds 1 graft or more, got " + size);
    }
    if (!(spread >= 0 && spread < 0.5)) {
      throw new IllegalArgumentException(
          "the spread of the takes of beds, trays or days must be 0 or more and below 0.5, e.g. 0.09"
              + " for 9 points, got "
              + spread);
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
   * @param spread standard deviation of their takes, 0 or more and below 0.5
   * @return units, as many as wanted
   */
  public static TrialUnits beds(int size, double spread) {
    return new TrialUnits(size, spread, OptionalInt.empty());
  }

  /**
   * With a limit.
   *
   * @param units most of each stock, 2 or more
   * @return new units
   */
  public TrialUnits atMost(int units) {
    return new TrialUnits(size, spread, OptionalInt.of(units));
  }

  /**
   * Whether grafts count one by one.
   *
   * @return true if grafts share no luck beyond the stock, and their number isn't limited
   */
  public boolean isSingle() {
    return (size == 1 || spread == 0) && most.isEmpty();
  }

  /**
   * How many times the grafts are needed that independent ones would need.
   *
   * @param take about which units differ, one at which they {@link #canDiffer}
   * @return 1 + (size - 1) rho, the correlation of two grafts of a unit being spread² / (p (1 - p))
   * @see "Kish (1965), Survey Sampling, section 5.4"
   */
  public double designEffect(double take) {
    return 1 + (size - 1) * spread * spread / (take * (1 - take));
  }

  /**
   * Whether units can differ so far about a take.
   *
   * @param take above 0 and below 1
   * @return false if takes between 0 and 1 can't have this spread about it
   */
  public boolean canDiffer(double take) {
    return spread * spread < take * (1 - take);
  }
}
