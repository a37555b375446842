package org.taketally.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.taketally.cells.Cells;

/**
 * What a take may depend on, in trade words: an immutable description, fitted to cells.
 *
 * <p>The model is takes ~ Binomial(grafts, p), logit p = fixed part + one normal deviation per
 * level of each varying column. Method, notation and references: docs/model.md.
 *
 * <pre>{@code
 * TakeFit fit = TakeModel.ofTakes()
 *     .adjustFor("method", "bud_stage")
 *     .adjustForCurve("storage_days", 3)
 *     .varyBy("cultivar", "rootstock", "pairing", "grafter")
 *     .fit(cells);
 * }</pre>
 */
public final class TakeModel {

  /** Column made from cultivar and rootstock when the cells lack it. */
  public static final String PAIRING = "pairing";

  private final List<String> adjusted;
  private final Map<String, Integer> curves;
  private final Map<String, String> bases;
  private final List<String> varying;
  private final String compared;
  private final int nodes;

  private TakeModel(
      List<String> adjusted,
      Map<String, Integer> curves,
      Map<String, String> bases,
      List<String> varying,
      String compared,
      int nodes) {
    this.adjusted = List.copyOf(adjusted);
    this.curves = Collections.unmodifiableMap(new LinkedHashMap<>(curves));
    this.bases = Collections.unmodifiableMap(new LinkedHashMap<>(bases));
    this.varying = List.copyOf(varying);
    this.compared = compared;
    this.nodes = nodes;
  }

  /**
   * A model in which every graft has the same chance to take: the start of every other.
   *
   * @return the model with an intercept only
   */
  public static TakeModel ofTakes() {
    return new TakeModel(List.of(), Map.of(), Map.of(), List.of(), null, 1);
  }

  /**
   * Adds columns whose effects are estimated level by level (columns of levels) or as a straight
   * line on the logit (columns of numbers).
   *
   * @param columns column names of the cells
   * @return a new model
   */
  public TakeModel adjustFor(String... columns) {
    return withAdjusted(union(adjusted, Arrays.asList(columns)), curves);
  }

  /**
   * Adds a column of numbers as a smooth curve: a natural cubic spline with knots at quantiles.
   *
   * @param column column of numbers
   * @param degreesOfFreedom 1 (a straight line) to 10
   * @return a new model
   * @throws IllegalArgumentException if degreesOfFreedom is outside its range
   */
  public TakeModel adjustForCurve(String column, int degreesOfFreedom) {
    if (!(degreesOfFreedom >= 1 && degreesOfFreedom <= 10)) {
      throw new IllegalArgumentException(
          "a curve has 1 to 10 degrees of freedom, got %d for %s"
              .formatted(degreesOfFreedom, column));
    }
    Map<String, Integer> more = new LinkedHashMap<>(curves);
    more.put(column, degreesOfFreedom);
    return withAdjusted(without(adjusted, column), more);
  }

  /**
   * Names the level others are compared with, instead of the first in use.
   *
   * @param column a column of levels
   * @param level one of its levels
   * @return a new model
   */
  public TakeModel base(String column, String level) {
    Map<String, String> more = new LinkedHashMap<>(bases);
    more.put(column, level);
    return new TakeModel(adjusted, curves, more, varying, compared, nodes);
  }

  /**
   * Adds columns whose levels deviate at random from the middle, drawn toward it the more the fewer
   * their grafts.
   *
   * @param columns columns of levels; {@value #PAIRING} is made from cultivar and rootstock
   * @return a new model
   */
  public TakeModel varyBy(String... columns) {
    return withVaryingList(union(varying, Arrays.asList(columns)));
  }

  /**
   * The question: the column to be compared. Enters as fixed levels unless it is adjusted for or
   * varies already.
   *
   * @param column e.g. {@code rootstock}
   * @return a new model
   */
  public TakeModel compare(String column) {
    return new TakeModel(adjusted, curves, bases, varying, column, nodes);
  }

  /**
   * Adaptive Gauss-Hermite quadrature instead of the Laplace approximation; one varying column
   * only.
   *
   * @param count nodes, 1 (Laplace) to 100; odd numbers are usual
   * @return a new model
   * @throws IllegalArgumentException if count is outside its range
   */
  public TakeModel nodes(int count) {
    if (!(count >= 1 && count <= 100)) {
      throw new IllegalArgumentException("nodes must be 1 to 100, got " + count);
    }
    return new TakeModel(adjusted, curves, bases, varying, compared, count);
  }

  /**
   * The model with one more varying column; if it was adjusted for, it no longer is.
   *
   * @param column a column of levels
   * @return a new model
   */
  public TakeModel withVarying(String column) {
    return without(column).compareAs(compared).varyBy(column);
  }

  /**
   * The model without a column, wherever it stood.
   *
   * @param column a column
   * @return a new model, nested in this one
   */
  public TakeModel without(String column) {
    Map<String, Integer> fewerCurves = new LinkedHashMap<>(curves);
    fewerCurves.remove(column);
    String question = column.equals(compared) ? null : compared;
    return new TakeModel(
        without(adjusted, column), fewerCurves, bases, without(varying, column), question, nodes);
  }

  /**
   * Fits the model with the usual options.
   *
   * @param cells grafts and takes; cells lacking a needed column are left out and counted
   * @return the fit
   * @throws CannotFit if the records can't answer, saying why and what to do
   */
  public TakeFit fit(Cells cells) {
    return fit(cells, FitOptions.withDefaults());
  }

  /**
   * Fits the model.
   *
   * @param cells grafts and takes; cells lacking a needed column are left out and counted
   * @param options tolerance, progress, threads
   * @return the fit
   * @throws CannotFit if the records can't answer, saying why and what to do
   */
  public TakeFit fit(Cells cells, FitOptions options) {
    return Fitting.fit(this, cells, options);
  }

  /**
   * Columns with fixed effects (levels or straight lines), the compared one included if it enters
   * so.
   *
   * @return in the order added
   */
  public List<String> adjusted() {
    boolean entersAsLevels =
        compared != null
            && !adjusted.contains(compared)
            && !varying.contains(compared)
            && !curves.containsKey(compared);
    return entersAsLevels ? union(adjusted, List.of(compared)) : adjusted;
  }

  /**
   * Columns entering as curves, with degrees of freedom.
   *
   * @return in the order added
   */
  public Map<String, Integer> curves() {
    return curves;
  }

  /**
   * Base levels named by {@link #base}.
   *
   * @return column to level
   */
  public Map<String, String> bases() {
    return bases;
  }

  /**
   * Varying columns.
   *
   * @return in the order added
   */
  public List<String> varying() {
    return varying;
  }

  /**
   * The compared column.
   *
   * @return empty if no question was asked
   */
  public Optional<String> compared() {
    return Optional.ofNullable(compared);
  }

  /**
   * Quadrature nodes.
   *
   * @return 1 for Laplace
   */
  public int nodes() {
    return nodes;
  }

  /**
   * Every column the cells must have.
   *
   * @return adjusted, curves, varying
   */
  public List<String> columns() {
    return union(union(adjusted(), List.copyOf(curves.keySet())), varying);
  }

  private TakeModel compareAs(String question) {
    return new TakeModel(adjusted, curves, bases, varying, question, nodes);
  }

  private TakeModel withAdjusted(List<String> columns, Map<String, Integer> newCurves) {
    return new TakeModel(columns, newCurves, bases, varying, compared, nodes);
  }

  private TakeModel withVaryingList(List<String> columns) {
    return new TakeModel(adjusted, curves, bases, columns, compared, nodes);
  }

  private static List<String> union(List<String> first, List<String> second) {
    Set<String> all = new LinkedHashSet<>(first);
    all.addAll(second);
    return List.copyOf(all);
  }

  private static List<String> without(List<String> columns, String column) {
    List<String> kept = new ArrayList<>(columns);
    kept.remove(column);
    return kept;
  }
}
