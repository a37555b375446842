package org.taketally.answers.adjusted;

import java.util.Arrays;
import org.taketally.model.SystematicPicks;

/**
 * Draws picked as often as their weights ask for: as many as would, drawn evenly, say as much, so
 * that error by chance is not thought smaller than it is.
 */
final class PickedDraws {

  private static final double MIDDLE = 0.5;

  private final int[] numbers;
  private final double effective;

  private PickedDraws(int[] numbers, double effective) {
    this.numbers = numbers;
    this.effective = effective;
  }

  /**
   * Picks.
   *
   * @param logWeights one a draw, up to a constant
   */
  static PickedDraws of(double[] logWeights) {
    SystematicPicks picks = SystematicPicks.of(logWeights);
    double effective = picks.effective();
    return new PickedDraws(picks.numbers(Math.max(1, (int) effective), MIDDLE), effective);
  }

  /** Places of the draws picked, in order; a heavy one several times. */
  int[] numbers() {
    return numbers.clone();
  }

  /** How many draws, weighing alike, would say as much; 1 to their number. */
  double effective() {
    return effective;
  }

  /** The picked ones of what belongs to each draw. */
  <T> T[] of(T[] each) {
    T[] own = Arrays.copyOf(each, numbers.length);
    Arrays.setAll(own, k -> each[numbers[k]]);
    return own;
  }
}
