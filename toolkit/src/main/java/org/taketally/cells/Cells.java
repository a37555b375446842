package org.taketally.cells;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import org.taketally.terms.Provenance;

/**
 * The evidence, compactly: grafts assessed and takes for each distinct covariate pattern.
 *
 * <p>Columnar and immutable: arrays given and taken are copies, and loops ask cell by cell ({@link
 * #grafts(int)}, {@link Factor#code}). Cost of everything downstream depends on the number of
 * cells, not of grafts.
 */
public final class Cells {

  /**
   * Column that tells rows of several grafts apart, if asked for: a level each; cells of single
   * grafts have none. Rows of grafts made together scatter more than single grafts do.
   */
  public static final String BATCH_ROW = "batch_row";

  /** What single grafts are called where rows of several have levels. */
  public static final String SINGLE_GRAFTS = "single grafts";

  private final Map<String, Factor> factors;
  private final Map<String, Measure> measures;
  private final int[] grafts;
  private final int[] takes;
  private final double logCoefficients;
  private final Provenance provenance;
  private final Map<String, long[]> unassessed;

  /**
   * Cells from columns, with no graft unassessed.
   *
   * @param factors level columns, each as long as {@code grafts}
   * @param measures number columns, each as long as {@code grafts}
   * @param grafts grafts assessed per cell, at least 1 each
   * @param takes takes per cell, 0 to grafts
   * @param logCoefficients sum of the log binomial coefficients of the rows as given; 0 for rows of
   *     one graft
   * @param provenance where the records came from
   */
  public Cells(
      List<Factor> factors,
      List<Measure> measures,
      int[] grafts,
      int[] takes,
      double logCoefficients,
      Provenance provenance) {
    this(factors, measures, grafts, takes, logCoefficients, provenance, Map.of());
  }

  private Cells(
      List<Factor> factors,
      List<Measure> measures,
      int[] grafts,
      int[] takes,
      double logCoefficients,
      Provenance provenance,
      Map<String, long[]> unassessed) {
    this.unassessed = unassessed;
    this.factors = new LinkedHashMap<>();
    this.measures = new LinkedHashMap<>();
    this.grafts = grafts.clone();
    this.takes = takes.clone();
    this.logCoefficients = logCoefficients;
    this.provenance = provenance;
    requireLength("takes", takes.length);
    for (int i = 0; i < grafts.length; i++) {
      if (grafts[i] < 1 || takes[i] < 0 || takes[i] > grafts[i]) {
        throw new IllegalArgumentException(
            "takes must be 0 to %d (grafts), got %d in cell %d"
                .formatted(grafts[i], takes[i], i + 1));
      }
    }
    for (Factor factor : factors) {
      requireLength(factor.name(), factor.cells());
      this.factors.put(factor.name(), factor);
    }
    for (Measure measure : measures) {
      requireLength(measure.name(), measure.cells());
      this.measures.put(measure.name(), measure);
    }
  }

  private void requireLength(String column, int length) {
    if (length != grafts.length) {
      throw new IllegalArgumentException(
          "column %s has %d cells, expected %d".formatted(column, length, grafts.length));
    }
  }

  /**
   * Number of cells.
   *
   * @return distinct patterns, 0 or more
   */
  public int size() {
    return grafts.length;
  }

  /**
   * Grafts assessed per cell.
   *
   * @return a copy of the column
   */
  public int[] grafts() {
    return grafts.clone();
  }

  /**
   * Grafts assessed in one cell.
   *
   * @param cell 0 to size - 1
   * @return 1 or more
   */
  public int grafts(int cell) {
    return grafts[cell];
  }

  /**
   * Takes per cell.
   *
   * @return a copy of the column
   */
  public int[] takes() {
    return takes.clone();
  }

  /**
   * Takes in one cell.
   *
   * @param cell 0 to size - 1
   * @return 0 to its grafts
   */
  public int takes(int cell) {
    return takes[cell];
  }

  /**
   * All grafts assessed.
   *
   * @return sum over cells
   */
  public long graftsTotal() {
    return sum(grafts);
  }

  /**
   * All takes.
   *
   * @return sum over cells
   */
  public long takesTotal() {
    return sum(takes);
  }

  private static long sum(int[] values) {
    long total = 0;
    for (int value : values) {
      total += value;
    }
    return total;
  }

  /**
   * Sum of log binomial coefficients of the rows as given.
   *
   * @return 0 when every row was a single graft
   */
  public double logCoefficients() {
    return logCoefficients;
  }

  /**
   * Where the records came from.
   *
   * @return sources and row counts
   */
  public Provenance provenance() {
    return provenance;
  }

  /**
   * All level columns.
   *
   * @return in order of definition
   */
  public List<Factor> factors() {
    return List.copyOf(factors.values());
  }

  /**
   * All number columns.
   *
   * @return in order of definition
   */
  public List<Measure> measures() {
    return List.copyOf(measures.values());
  }

  /**
   * A level column, if there is one of that name.
   *
   * @param name column name
   * @return the column
   */
  public Optional<Factor> findFactor(String name) {
    return Optional.ofNullable(factors.get(name));
  }

  /**
   * A number column, if there is one of that name.
   *
   * @param name column name
   * @return the column
   */
  public Optional<Measure> findMeasure(String name) {
    return Optional.ofNullable(measures.get(name));
  }

  /**
   * A level column that must be there.
   *
   * @param name column name
   * @return the column
   * @throws IllegalArgumentException if there is none, naming those there are
   */
  public Factor factor(String name) {
    return findFactor(name)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no column of levels \"%s\" in these cells; there are %s. Cells hold only the columns they were counted by: CellsOf.records(records, ...) with one more"
                        .formatted(name, factors.keySet())));
  }

  /**
   * A number column that must be there.
   *
   * @param name column name
   * @return the column
   * @throws IllegalArgumentException if there is none, naming those there are
   */
  public Measure measure(String name) {
    return findMeasure(name)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no column of numbers \"%s\" in these cells; there are %s. Cells hold only the columns they were counted by: CellsOf.records(records, ...) with one more"
                        .formatted(name, measures.keySet())));
  }

  /**
   * The same cells with one more (or a replaced) level column.
   *
   * @param factor as long as these cells
   * @return new cells sharing the other columns
   */
  public Cells with(Factor factor) {
    Map<String, Factor> all = new LinkedHashMap<>(factors);
    all.put(factor.name(), factor);
    return new Cells(
        List.copyOf(all.values()),
        measures(),
        grafts,
        takes,
        logCoefficients,
        provenance,
        unassessed);
  }

  /**
   * The same cells with more columns of numbers.
   *
   * @param more each as long as these cells
   * @return new cells sharing the other columns
   */
  public Cells with(List<Measure> more) {
    List<Measure> all = new ArrayList<>(measures());
    all.addAll(more);
    return new Cells(factors(), all, grafts, takes, logCoefficients, provenance, unassessed);
  }

  /**
   * The same cells, knowing how many grafts were not assessed.
   *
   * @param grafts by column of levels: grafts whose result is not known, one number a level
   * @return new cells sharing all columns
   */
  Cells withUnassessed(Map<String, long[]> grafts) {
    return new Cells(
        factors(), measures(), this.grafts, takes, logCoefficients, provenance, grafts);
  }

  /**
   * Grafts of a level whose result is not known; they are in no cell.
   *
   * @param factor a column of levels
   * @param level one of its levels
   * @return 0 also where nobody counted them
   */
  public long unassessed(String factor, String level) {
    long[] grafts = unassessed.get(factor);
    int code = factor(factor).indexOf(level);
    return grafts == null || code == Factor.MISSING ? 0 : grafts[code];
  }

  /**
   * The same cells with all levels of a column but one put together.
   *
   * @param column of levels, or of numbers that name groups
   * @param level the one that stays
   * @param others what the rest together are called; comes first
   * @return new cells sharing all other columns
   */
  public Cells apart(String column, String level, String others) {
    Factor all = findFactor(column).orElseGet(() -> Factor.of(measure(column)));
    int one = all.indexOf(level);
    int[] codes =
        java.util.Arrays.stream(all.codes())
            .map(code -> code == Factor.MISSING ? code : code == one ? 1 : 0)
            .toArray();
    Map<String, long[]> waiting = new LinkedHashMap<>(unassessed);
    waiting.computeIfPresent(
        column,
        (name, counts) -> {
          long own = one == Factor.MISSING ? 0 : counts[one];
          return new long[] {java.util.Arrays.stream(counts).sum() - own, own};
        });
    List<Factor> kept =
        new ArrayList<>(factors().stream().filter(f -> !f.name().equals(column)).toList());
    kept.add(new Factor(column, List.of(others, level), codes));
    return new Cells(
        kept,
        measures().stream().filter(m -> !m.name().equals(column)).toList(),
        grafts,
        takes,
        logCoefficients,
        provenance,
        waiting);
  }

  /**
   * The same cells without a column; cells that differed in it only stay apart.
   *
   * @param column a level or number column, e.g. {@code pairing}
   * @return new cells sharing the other columns
   * @throws IllegalArgumentException if there is no such column, naming those there are
   */
  public Cells without(String column) {
    if (findFactor(column).isEmpty()) {
      measure(column);
    }
    return new Cells(
        factors().stream().filter(factor -> !factor.name().equals(column)).toList(),
        measures().stream().filter(measure -> !measure.name().equals(column)).toList(),
        grafts,
        takes,
        logCoefficients,
        provenance,
        unassessed);
  }

  /**
   * The same cells with other takes, for simulation.
   *
   * @param otherTakes takes per cell, 0 to grafts
   * @return new cells sharing all other columns
   */
  public Cells withTakes(int[] otherTakes) {
    return new Cells(
        factors(), measures(), grafts, otherTakes, logCoefficients, provenance, unassessed);
  }

  /**
   * The cells that meet a condition. Level lists are kept whole, so codes keep their meaning.
   *
   * <p>The log coefficients are kept as they are: they are constants of the rows as given, so
   * likelihoods of counts compare only between fits to the same cells.
   *
   * @param keep condition on the cell index
   * @return new cells
   */
  public Cells where(IntPredicate keep) {
    int[] index = IntStream.range(0, size()).filter(keep).toArray();
    return new Cells(
        factors().stream()
            .map(f -> new Factor(f.name(), f.levels(), pick(f::code, index)))
            .toList(),
        measures().stream()
            .map(m -> new Measure(m.name(), IntStream.of(index).mapToDouble(m::value).toArray()))
            .toList(),
        pick(this::grafts, index),
        pick(this::takes, index),
        logCoefficients,
        provenance,
        unassessed);
  }

  /**
   * The cells of one level of a factor, as by {@link #where(IntPredicate)}.
   *
   * @param factor a factor of these cells
   * @param level one of its levels
   * @return new cells
   * @throws IllegalArgumentException if there is no such factor or level, naming those there are
   */
  public Cells where(String factor, String level) {
    Factor all = factor(factor);
    int code = all.indexOf(level);
    if (code == Factor.MISSING) {
      throw new IllegalArgumentException(
          "no %s \"%s\" in these records; there are: %s"
              .formatted(factor, level, String.join(", ", all.levels())));
    }
    return where(i -> all.code(i) == code);
  }

  private static int[] pick(IntUnaryOperator column, int[] index) {
    return IntStream.of(index).map(column).toArray();
  }
}
