package org.taketally.answers.verdict;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A comparison planned in advance: some levels of a column against others. What it gives is a
 * difference in take, so that the margin means the same as between two levels.
 *
 * <pre>{@code
 * Contrast.between("clonal against seedling", List.of("Quay 2", "Quay 5"), List.of("Halden seedling"))
 * }</pre>
 *
 * @param name what it is called in tables and figures
 * @param weights level to weight; those above zero sum to 1, those below to -1
 */
public record Contrast(String name, Map<String, Double> weights) {

  private static final double ROUNDING = 1e-9;

  /**
   * Checks the weights, and brings them to the scale of a difference in take.
   *
   * @throws IllegalArgumentException if it has no name, or its weights don't sum to zero
   */
  public Contrast {
    if (name.isBlank()) {
      throw new IllegalArgumentException("a contrast needs a name");
    }
    Map<String, Double> used = new LinkedHashMap<>();
    double above = 0;
    double below = 0;
    for (Map.Entry<String, Double> each : weights.entrySet()) {
      double weight = each.getValue();
      above += Math.max(0, weight);
      below -= Math.min(0, weight);
      if (weight != 0) {
        used.put(each.getKey(), weight);
      }
    }
    if (!(above > 0 && Math.abs(above - below) <= ROUNDING * above)) {
      throw new IllegalArgumentException(
          "weights of \"%s\" must sum to zero, with some above it: those above sum to %s, those below to -%s"
              .formatted(name, above, below));
    }
    double scale = above;
    used.replaceAll((level, weight) -> weight / scale);
    weights = java.util.Collections.unmodifiableMap(used);
  }

  /**
   * The average of some levels less the average of others, each level counting the same.
   *
   * @param name what it is called
   * @param some levels whose take should be the higher, at least one
   * @param others levels they are compared with, at least one, none of {@code some}
   * @return the contrast
   * @throws IllegalArgumentException if a level stands on both sides, or a side is empty
   */
  public static Contrast between(String name, Collection<String> some, Collection<String> others) {
    if (some.isEmpty() || others.isEmpty()) {
      throw new IllegalArgumentException(
          "\"%s\" needs at least one level on either side".formatted(name));
    }
    Map<String, Double> weights = new LinkedHashMap<>();
    some.forEach(level -> weights.put(level, 1.0 / some.size()));
    for (String level : others) {
      if (some.contains(level)) {
        throw new IllegalArgumentException(
            "\"%s\" has %s on both sides; name it on one".formatted(name, level));
      }
      weights.put(level, -1.0 / others.size());
    }
    return new Contrast(name, weights);
  }

  /**
   * A contrast by weights of one's own. They are brought to the scale of a difference: 2, -1 and -1
   * become 1, -0.5 and -0.5.
   *
   * @param name what it is called
   * @param weights level to weight, summing to zero
   * @return the contrast
   * @throws IllegalArgumentException if they don't sum to zero, or none differs from it
   */
  public static Contrast weighted(String name, Map<String, Double> weights) {
    return new Contrast(name, weights);
  }

  /**
   * Levels whose average comes first.
   *
   * @return those with a weight above zero
   */
  public List<String> some() {
    return side(1);
  }

  /**
   * Levels they are compared with.
   *
   * @return those with a weight below zero
   */
  public List<String> others() {
    return side(-1);
  }

  private List<String> side(int sign) {
    return weights.entrySet().stream()
        .filter(each -> sign * each.getValue() > 0)
        .map(Map.Entry::getKey)
        .collect(Collectors.toUnmodifiableList());
  }
}
