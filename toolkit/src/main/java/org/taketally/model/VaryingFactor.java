package org.taketally.model;

import java.util.List;
import org.taketally.cells.Cells;
import org.taketally.model.laplace.ModelData;

/**
 * A column whose levels deviate at random from the middle.
 *
 * @param factor column name
 * @param levels levels with grafts in the cells used
 * @param standardDeviation of the deviations, logits, 0 or more
 * @param levelEffects most likely deviation per level, logits
 * @param levelEffectSds spread of each deviation given the standard deviations and fixed effects,
 *     logits
 * @param grafts per level
 * @param takes per level
 */
public record VaryingFactor(
    String factor,
    List<String> levels,
    double standardDeviation,
    double[] levelEffects,
    double[] levelEffectSds,
    long[] grafts,
    long[] takes) {

  public VaryingFactor {
    levels = List.copyOf(levels);
    levelEffects = levelEffects.clone();
    levelEffectSds = levelEffectSds.clone();
    grafts = grafts.clone();
    takes = takes.clone();
  }

  /**
   * Most likely deviation per level.
   *
   * @return a copy, logits
   */
  @Override
  public double[] levelEffects() {
    return levelEffects.clone();
  }

  /**
   * Most likely deviation of one level.
   *
   * @param level place in {@link #levels}
   * @return logits
   */
  public double levelEffect(int level) {
    return levelEffects[level];
  }

  /**
   * Spread of each deviation given the standard deviations and fixed effects.
   *
   * @return a copy, logits
   */
  @Override
  public double[] levelEffectSds() {
    return levelEffectSds.clone();
  }

  /**
   * Spread of one deviation given the standard deviations and fixed effects.
   *
   * @param level place in {@link #levels}
   * @return logits
   */
  public double levelEffectSd(int level) {
    return levelEffectSds[level];
  }

  /**
   * Grafts per level.
   *
   * @return a copy
   */
  @Override
  public long[] grafts() {
    return grafts.clone();
  }

  /**
   * Grafts of one level.
   *
   * @param level place in {@link #levels}
   * @return 1 or more
   */
  public long grafts(int level) {
    return grafts[level];
  }

  /**
   * Takes per level.
   *
   * @return a copy
   */
  @Override
  public long[] takes() {
    return takes.clone();
  }

  /**
   * Takes of one level.
   *
   * @param level place in {@link #levels}
   * @return 0 to its grafts
   */
  public long takes(int level) {
    return takes[level];
  }

  /**
   * Whether a level has no deviation: single grafts, where rows of several vary.
   *
   * @param level place in {@link #levels}
   * @return false but for the last level of {@value Cells#BATCH_ROW}
   */
  public boolean isExempt(int level) {
    return level == exempt(levels);
  }

  /** The level whose cells have no deviation: single grafts, where rows of several vary. */
  static int exempt(List<String> levels) {
    int last = levels.size() - 1;
    return levels.get(last).equals(Cells.SINGLE_GRAFTS) ? last : ModelData.NONE;
  }
}
