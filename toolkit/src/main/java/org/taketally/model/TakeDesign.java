package org.taketally.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.model.laplace.Patterns;

/** How the cells of a fit enter the model: the fixed columns and the levels of varying columns. */
public final class TakeDesign {

  private final int cells;
  private final List<FixedBlock> blocks;
  private final Map<String, int[]> varying;
  private final Patterns patterns;

  TakeDesign(int cells, List<FixedBlock> blocks, Map<String, int[]> varying) {
    this.cells = cells;
    this.blocks = List.copyOf(blocks);
    this.varying = new LinkedHashMap<>(varying);
    this.patterns = FixedBlock.patterns(cells, blocks);
  }

  /**
   * Names of the fixed columns, intercept first.
   *
   * @return term and level of each, in the order of beta
   */
  public List<String> names() {
    List<String> names = new ArrayList<>(List.of(FixedEffect.INTERCEPT));
    for (FixedBlock block : blocks) {
      for (String label : block.labels()) {
        names.add(label.isEmpty() ? block.term() : block.term() + ": " + label);
      }
    }
    return names;
  }

  /**
   * The fixed part of the logit.
   *
   * @param beta fixed effects, in the order of the fit
   * @return one value a cell, logits
   */
  public double[] fixedPart(double[] beta) {
    double[] perPattern = patterns.times(beta);
    double[] eta = new double[cells];
    for (int i = 0; i < cells; i++) {
      eta[i] = perPattern[patterns.codes()[i]];
    }
    return eta;
  }

  /**
   * The logit: fixed part and deviations.
   *
   * @param beta fixed effects, in the order of the fit
   * @param deviations of the levels of each varying column, in the order of the fit
   * @return one value a cell, logits
   */
  public double[] linearPredictor(double[] beta, double[][] deviations) {
    double[] eta = fixedPart(beta);
    int k = 0;
    for (int[] codes : varying.values()) {
      for (int i = 0; i < eta.length; i++) {
        eta[i] += deviations[k][codes[i]];
      }
      k++;
    }
    return eta;
  }

  /**
   * The fixed part as if every cell had this level of an adjusted column.
   *
   * @param column an adjusted column of levels
   * @param level one of its levels in the fit
   * @param beta fixed effects
   * @return one value a cell, logits
   * @throws IllegalArgumentException if the fit doesn't know the column or the level
   */
  public double[] fixedPartWith(String column, String level, double[] beta) {
    int place = placeOf(column);
    double[] others = beta.clone();
    int at = startOf(place);
    Arrays.fill(others, at, at + blocks.get(place).width(), 0);
    double[] eta = fixedPart(others);
    double constant = contribution(column, level, beta);
    for (int i = 0; i < cells; i++) {
      eta[i] += constant;
    }
    return eta;
  }

  /**
   * What one level, or value, of an adjusted column adds to the logit of a cell.
   *
   * @param column an adjusted column
   * @param level one of its levels in the fit, or a number as text
   * @param beta fixed effects
   * @return logits; 0 for the base level
   * @throws IllegalArgumentException if the fit doesn't know the column or the level
   */
  public double contribution(String column, String level, double[] beta) {
    return part(column, level).at(beta);
  }

  /**
   * What one level, or value, of an adjusted column adds to the logit of a cell: for where {@link
   * #contribution} is needed draw by draw.
   *
   * @param column an adjusted column
   * @param level one of its levels in the fit, or a number as text
   * @return nothing for the base level
   * @throws IllegalArgumentException if the fit doesn't know the column or the level
   */
  public LogitPart part(String column, String level) {
    int place = placeOf(column);
    double[] weights = new double[patterns.width()];
    blocks.get(place).fill(level, weights, startOf(place));
    return new LogitPart(weights);
  }

  /**
   * The intercept as a part of the logit, to add parts of columns to.
   *
   * @return 1 of the intercept, nothing else
   */
  public LogitPart intercept() {
    double[] weights = new double[patterns.width()];
    weights[0] = 1;
    return new LogitPart(weights);
  }

  /**
   * What a level of an adjusted column adds on average to the logit of a cell.
   *
   * @param column an adjusted column
   * @return the mean of its levels, each counted once; nothing for a column of numbers
   * @throws IllegalArgumentException if the fit doesn't know the column
   */
  public LogitPart meanPart(String column) {
    List<String> levels = levels(column);
    LogitPart mean = new LogitPart(new double[patterns.width()]);
    for (String level : levels) {
      mean = mean.plus(1.0 / levels.size(), part(column, level));
    }
    return mean;
  }

  /**
   * The fixed part as if every cell had this value of an adjusted number column or curve.
   *
   * @param column an adjusted column of numbers
   * @param value in the column's unit
   * @param beta fixed effects
   * @return one value a cell, logits
   * @throws IllegalArgumentException if the fit doesn't know the column
   */
  public double[] fixedPartWith(String column, double value, double[] beta) {
    return fixedPartWith(column, Double.toString(value), beta);
  }

  /**
   * The level of a varying column each cell has.
   *
   * @param varyingColumn a varying column of the fit
   * @return a copy: index into {@link VaryingFactor#levels()}, one a cell
   * @throws IllegalArgumentException if the column doesn't vary in this fit
   */
  public int[] codes(String varyingColumn) {
    int[] codes = varying.get(varyingColumn);
    if (codes == null) {
      throw new IllegalArgumentException(
          "%s doesn't vary in this fit; %s do".formatted(varyingColumn, varying.keySet()));
    }
    return codes.clone();
  }

  /**
   * Levels of an adjusted column that the fit knows, base first.
   *
   * @param column an adjusted column of levels
   * @return level names; empty for columns of numbers
   * @throws IllegalArgumentException if the fit doesn't know the column
   */
  public List<String> levels(String column) {
    if (blocks.get(placeOf(column)) instanceof LevelBlock block) {
      List<String> levels = new ArrayList<>(List.of(block.levels().get(block.base())));
      levels.addAll(block.labels());
      return levels;
    }
    return List.of();
  }

  /**
   * Columns adjusted for in this fit.
   *
   * @return names, in the model's order
   */
  public List<String> terms() {
    return blocks.stream().map(FixedBlock::term).toList();
  }

  /**
   * Whether the column is adjusted for in this fit.
   *
   * @param column a column name
   * @return false also if it was left out for having one level only
   */
  public boolean adjustsFor(String column) {
    return blocks.stream().anyMatch(block -> block.term().equals(column));
  }

  Patterns patterns() {
    return patterns;
  }

  List<FixedBlock> blocks() {
    return blocks;
  }

  Map<String, int[]> varying() {
    return varying;
  }

  private int placeOf(String column) {
    for (int place = 0; place < blocks.size(); place++) {
      if (blocks.get(place).term().equals(column)) {
        return place;
      }
    }
    throw new IllegalArgumentException(
        "%s isn't adjusted for in this fit; %s are"
            .formatted(column, blocks.stream().map(FixedBlock::term).toList()));
  }

  FixedBlock blockOf(String column) {
    return blocks.get(placeOf(column));
  }

  /** Place of a block's first column among the fixed effects. */
  int startOf(FixedBlock block) {
    return startOf(blocks.indexOf(block));
  }

  private int startOf(int place) {
    int at = 1;
    for (int b = 0; b < place; b++) {
      at += blocks.get(b).width();
    }
    return at;
  }
}
