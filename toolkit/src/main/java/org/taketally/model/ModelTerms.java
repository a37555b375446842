package org.taketally.model;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.taketally.records.columns.DerivedColumn;

/**
 * What a take may depend on, as a value: the columns of a model and how each enters. {@link
 * TakeModel} makes it and fits it; a fit holds it ({@link TakeFit#model}), and {@link TakeModel#of}
 * takes it up again.
 *
 * @param named columns adjusted for by name, in the order added
 * @param curves columns entering as curves, with degrees of freedom
 * @param bases level others are compared with, by column, where one was named
 * @param varying columns whose levels deviate at random
 * @param together varying columns made of two columns together, {@code pairing} only if asked for
 *     by {@link TakeModel#varyTogether}
 * @param compared the column the question is about, empty if no question was asked
 * @param within columns within whose levels the compared column is compared
 * @param nodes quadrature nodes, 1 (Laplace) to 100
 */
public record ModelTerms(
    List<String> named,
    Map<String, Integer> curves,
    Map<String, String> bases,
    List<String> varying,
    Map<String, List<String>> together,
    Optional<String> compared,
    List<String> within,
    int nodes) {

  /** Column made from cultivar and rootstock when the cells lack it. */
  public static final String PAIRING = DerivedColumn.PAIRING.columnName();

  static final ModelTerms NONE =
      new ModelTerms(
          List.of(), Map.of(), Map.of(), List.of(), Map.of(), Optional.empty(), List.of(), 1);

  public ModelTerms {
    curves.forEach(
        (column, df) -> {
          if (!(df >= 1 && df <= 10)) {
            throw new IllegalArgumentException(
                "a curve has 1 to 10 degrees of freedom, got %d for %s".formatted(df, column));
          }
        });
    if (!(nodes >= 1 && nodes <= 100)) {
      throw new IllegalArgumentException("nodes must be 1 to 100, got " + nodes);
    }
    named = List.copyOf(named);
    curves = Collections.unmodifiableMap(new LinkedHashMap<>(curves));
    bases = Collections.unmodifiableMap(new LinkedHashMap<>(bases));
    varying = List.copyOf(varying);
    together = Collections.unmodifiableMap(new LinkedHashMap<>(together));
    within = List.copyOf(within);
  }

  /**
   * Columns with fixed effects (levels or straight lines), the compared one included if it enters
   * so.
   *
   * @return in the order added
   */
  public List<String> adjusted() {
    return compared
        .filter(column -> !varying.contains(column) && !curves.containsKey(column))
        .map(column -> union(named, List.of(column)))
        .orElse(named);
  }

  /**
   * Every column the cells must have.
   *
   * @return adjusted, curves, varying, compared within; of columns that vary together the two
   */
  public List<String> columns() {
    List<String> all = new ArrayList<>(union(adjusted(), List.copyOf(curves.keySet())));
    for (String column : varying) {
      all.addAll(
          column.equals(PAIRING)
              ? List.of(column)
              : together.getOrDefault(column, List.of(column)));
    }
    return union(all, within);
  }

  /**
   * The same model with another question. What was compared before stays adjusted for.
   *
   * @param column the question is about
   * @return a new model, compared within nothing
   */
  public ModelTerms asking(String column) {
    return new ModelTerms(
        adjusted(), curves, bases, varying, together, Optional.of(column), List.of(), nodes);
  }

  static List<String> union(List<String> first, List<String> second) {
    Set<String> all = new LinkedHashSet<>(first);
    all.addAll(second);
    return List.copyOf(all);
  }
}
