package org.taketally.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.taketally.cells.Cells;
import org.taketally.records.columns.RecordColumn;

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
  public static final String PAIRING = ModelTerms.PAIRING;

  private final ModelTerms terms;

  /** What the model is made of; changed only while a new model is made. */
  private static final class Parts {
    private List<String> named;
    private Map<String, Integer> curves;
    private Map<String, String> bases;
    private List<String> varying;
    private Map<String, List<String>> together;
    private Optional<String> compared;
    private List<String> within;
    private int nodes;

    private Parts(ModelTerms terms) {
      named = terms.named();
      curves = terms.curves();
      bases = terms.bases();
      varying = terms.varying();
      together = terms.together();
      compared = terms.compared();
      within = terms.within();
      nodes = terms.nodes();
    }

    private ModelTerms terms() {
      return new ModelTerms(named, curves, bases, varying, together, compared, within, nodes);
    }
  }

  private TakeModel(ModelTerms terms) {
    this.terms = terms;
  }

  private TakeModel with(Consumer<Parts> change) {
    Parts changed = new Parts(terms);
    change.accept(changed);
    return new TakeModel(changed.terms());
  }

  /**
   * The model of a fit, to be changed and fitted again.
   *
   * @param terms e.g. {@link TakeFit#model}
   * @return the model
   */
  public static TakeModel of(ModelTerms terms) {
    return new TakeModel(terms);
  }

  /**
   * A model in which every graft has the same chance to take: the start of every other.
   *
   * @return the model with an intercept only
   */
  public static TakeModel ofTakes() {
    return new TakeModel(ModelTerms.NONE);
  }

  /**
   * Adds columns whose effects are estimated level by level (columns of levels) or as a straight
   * line on the logit (columns of numbers).
   *
   * @param columns column names of the cells
   * @return a new model
   */
  public TakeModel adjustFor(String... columns) {
    return with(p -> p.named = ModelTerms.union(p.named, Arrays.asList(columns)));
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
    return with(
        p -> {
          p.named = without(p.named, column);
          p.curves = with(p.curves, column, degreesOfFreedom);
        });
  }

  /**
   * Names the level others are compared with, instead of the first in use.
   *
   * @param column a column of levels
   * @param level one of its levels
   * @return a new model
   */
  public TakeModel base(String column, String level) {
    return with(p -> p.bases = with(p.bases, column, level));
  }

  /**
   * Adds columns whose levels deviate at random from the middle, drawn toward it the more the fewer
   * their grafts.
   *
   * @param columns columns of levels, or of numbers that name groups (bed 1, 2, 3); {@code pairing}
   *     is made from cultivar and rootstock
   * @return a new model
   */
  public TakeModel varyBy(String... columns) {
    return with(p -> p.varying = ModelTerms.union(p.varying, Arrays.asList(columns)));
  }

  /**
   * Adds the combinations of two columns as one varying column: what a combination deviates by,
   * beyond what its two levels do on their own. Its name is {@link #together}; one never made is
   * drawn from the spread of those that were ({@link TakeDraws.Deviations#ofUnseen}).
   *
   * @param first a column of levels, e.g. {@code rootstock}
   * @param second another, e.g. {@code season}
   * @return a new model
   */
  public TakeModel varyTogether(String first, String second) {
    String name = together(first, second);
    return with(
        p -> {
          p.varying = ModelTerms.union(p.varying, List.of(name));
          p.together = with(p.together, name, List.of(first, second));
        });
  }

  /**
   * Lets rows of several grafts scatter: each has luck of its own, beyond that of its day, hand and
   * bed, so that twenty grafts in one row count for less than twenty in twenty. Single grafts have
   * none. Needs cells with the column {@value Cells#BATCH_ROW}; left out where there are no such
   * rows.
   *
   * @return a new model
   */
  public TakeModel varyByBatchRow() {
    return varyBy(Cells.BATCH_ROW);
  }

  /**
   * The name of the varying column of two columns together.
   *
   * @param first a column
   * @param second another
   * @return {@code pairing} for cultivar and rootstock, else {@code first × second}
   */
  public static String together(String first, String second) {
    return Set.of(first, second)
            .equals(Set.of(RecordColumn.CULTIVAR.columnName(), RecordColumn.ROOTSTOCK.columnName()))
        ? PAIRING
        : first + " \u00d7 " + second;
  }

  /**
   * The question: the column to be compared. Enters as fixed levels unless it is adjusted for or
   * varies already.
   *
   * @param column e.g. {@code rootstock}
   * @return a new model
   */
  public TakeModel compare(String column) {
    return with(p -> p.compared = Optional.ofNullable(column));
  }

  /**
   * Compares levels within groups of grafts that share their luck: a rootstock used mostly on bad
   * days looks bad, unless it is compared with others of the same day. The share each level of the
   * compared column has in each group enters beside the level itself, so that the level's effect is
   * the difference within groups and the share's effect what the difference across groups has more.
   * Both, and why a group couldn't be used, are in {@link TakeFit#within}.
   *
   * <p>The groups vary, too, unless they are adjusted for. Needs a compared column that enters as
   * fixed levels; where groups leave too little to compare within, the share is left out.
   *
   * @param groups columns that group grafts treated together, e.g. {@code grafting_day}, {@code
   *     grafter}
   * @return a new model
   * @see <a href="https://doi.org/10.2307/3109770">Neuhaus and Kalbfleisch (1998), Biometrics 54,
   *     638-645</a>
   * @see <a href="https://doi.org/10.2307/1913646">Mundlak (1978), Econometrica 46, 69-85</a>
   */
  public TakeModel compareWithin(String... groups) {
    return with(
        p -> {
          p.within = ModelTerms.union(p.within, Arrays.asList(groups));
          List<String> free = new ArrayList<>(p.within);
          free.removeAll(p.named);
          p.varying = ModelTerms.union(p.varying, free);
        });
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
    return with(p -> p.nodes = count);
  }

  /**
   * The model without a column, wherever it stood.
   *
   * @param column a column
   * @return a new model, nested in this one
   */
  public TakeModel without(String column) {
    return with(
        p -> {
          p.named = without(p.named, column);
          p.curves = without(p.curves, column);
          p.varying = without(p.varying, column);
          p.together = without(p.together, column);
          p.within =
              p.compared.filter(column::equals).isPresent() ? List.of() : without(p.within, column);
          p.compared = p.compared.filter(own -> !own.equals(column));
        });
  }

  /**
   * Fits the model with the usual options.
   *
   * @param cells grafts and takes; cells lacking a needed column are left out and counted
   * @return the fit
   * @throws CannotFit if the records can't answer, saying why and what to do
   */
  public TakeFit fit(Cells cells) {
    return fit(cells, FitOptions.defaults());
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
    return ModelFitter.fit(terms, cells, options);
  }

  /**
   * Fits the model, starting where another fit ended: one of nearly the same cells, or of the same
   * with a column more or less. Finds what {@link #fit(Cells, FitOptions)} finds, sooner.
   *
   * @param known the other fit
   * @param cells grafts and takes; cells lacking a needed column are left out and counted
   * @param options tolerance, progress, threads
   * @return the fit
   * @throws CannotFit if the records can't answer, saying why and what to do
   */
  public TakeFit fitNear(TakeFit known, Cells cells, FitOptions options) {
    return ModelFitter.fitNear(known, terms, cells, options);
  }

  /**
   * What the model says, as a value.
   *
   * @return its columns and how each enters
   */
  public ModelTerms terms() {
    return terms;
  }

  /**
   * Columns with fixed effects (levels or straight lines), the compared one included if it enters
   * so.
   *
   * @return in the order added
   */
  public List<String> adjusted() {
    return terms.adjusted();
  }

  /**
   * Columns entering as curves, with degrees of freedom.
   *
   * @return in the order added
   */
  public Map<String, Integer> curves() {
    return terms.curves();
  }

  /**
   * Base levels named by {@link #base}.
   *
   * @return column to level
   */
  public Map<String, String> bases() {
    return terms.bases();
  }

  /**
   * Varying columns.
   *
   * @return in the order added
   */
  public List<String> varying() {
    return terms.varying();
  }

  /**
   * Varying columns made of two columns together, {@code pairing} only if asked for by {@link
   * #varyTogether}.
   *
   * @return name to the two columns
   */
  public Map<String, List<String>> together() {
    return terms.together();
  }

  /**
   * Columns within whose levels the compared column is compared.
   *
   * @return in the order added
   */
  public List<String> within() {
    return terms.within();
  }

  /**
   * The compared column.
   *
   * @return empty if no question was asked
   */
  public Optional<String> compared() {
    return terms.compared();
  }

  /**
   * Quadrature nodes.
   *
   * @return 1 for Laplace
   */
  public int nodes() {
    return terms.nodes();
  }

  /**
   * Every column the cells must have.
   *
   * @return adjusted, curves, varying, compared within; of columns that vary together the two
   */
  public List<String> columns() {
    return terms.columns();
  }

  private static List<String> without(List<String> columns, String column) {
    List<String> kept = new ArrayList<>(columns);
    kept.remove(column);
    return List.copyOf(kept);
  }

  private static <T> Map<String, T> with(Map<String, T> map, String column, T value) {
    Map<String, T> more = new LinkedHashMap<>(map);
    more.put(column, value);
    return Collections.unmodifiableMap(more);
  }

  private static <T> Map<String, T> without(Map<String, T> map, String column) {
    Map<String, T> fewer = new LinkedHashMap<>(map);
    fewer.remove(column);
    return Collections.unmodifiableMap(fewer);
  }
}
