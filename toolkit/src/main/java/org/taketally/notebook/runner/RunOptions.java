package org.taketally.notebook.runner;

import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How notebooks are to be run.
 *
 * @param parameters new values for the parameters cell, by name
 * @param timeout longest time for one cell, empty for none; a cell that takes longer is interrupted
 *     and counts as failed
 * @param allowErrors whether to go on after a cell that failed
 * @param timing whether to note in the notebook when each cell ran
 */
public record RunOptions(
    Map<String, String> parameters,
    Optional<Duration> timeout,
    boolean allowErrors,
    boolean timing) {

  public RunOptions {
    parameters = Map.copyOf(parameters);
  }

  /**
   * No parameters, no time limit, stop at the first error, note no times.
   *
   * @return options to start from
   */
  public static RunOptions usual() {
    return new RunOptions(Map.of(), Optional.empty(), false, false);
  }

  /**
   * With one more parameter.
   *
   * @param name declared in the cell tagged {@code parameters}
   * @param value its new value, text without quotes
   * @return changed options
   */
  public RunOptions set(String name, String value) {
    Map<String, String> more = new TreeMap<>(parameters);
    more.put(name, value);
    return new RunOptions(more, timeout, allowErrors, timing);
  }

  /**
   * With a time limit per cell.
   *
   * @param limit above zero
   * @return changed options
   */
  public RunOptions timeout(Duration limit) {
    if (limit.isZero() || limit.isNegative()) {
      throw new IllegalArgumentException("timeout must be above 0, got " + limit);
    }
    return new RunOptions(parameters, Optional.of(limit), allowErrors, timing);
  }

  /**
   * Going on after errors, or not.
   *
   * @param allow whether to go on
   * @return changed options
   */
  public RunOptions allowErrors(boolean allow) {
    return new RunOptions(parameters, timeout, allow, timing);
  }

  /**
   * Noting times, or not.
   *
   * @param note whether to note when each cell ran
   * @return changed options
   */
  public RunOptions timing(boolean note) {
    return new RunOptions(parameters, timeout, allowErrors, note);
  }
}
