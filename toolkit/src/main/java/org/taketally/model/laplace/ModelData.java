package org.taketally.model.laplace;

/**
 * The cells as the engine sees them.
 *
 * @param takes y
 * @param grafts n
 * @param patterns X, one row a pattern, and the pattern of each cell
 * @param codes level of each cell, one array a varying column
 * @param sizes levels of each varying column
 * @param exempt the level of each varying column whose cells have no deviation of it; {@link #NONE}
 *     where all have
 */
public record ModelData(
    int[] takes, int[] grafts, Patterns patterns, int[][] codes, int[] sizes, int[] exempt) {

  /** No level without a deviation. */
  public static final int NONE = -1;

  public int cells() {
    return takes.length;
  }

  public int varying() {
    return sizes.length;
  }

  public int fixed() {
    return patterns.width();
  }

  /** Cells of each level of a varying column, in order; one array a level. */
  int[][] cellsByLevel(int column) {
    int[] count = new int[sizes[column]];
    for (int code : codes[column]) {
      count[code]++;
    }
    int[][] byLevel = new int[count.length][];
    for (int level = 0; level < count.length; level++) {
      byLevel[level] = new int[count[level]];
    }
    for (int i = cells() - 1; i >= 0; i--) {
      int code = codes[column][i];
      byLevel[code][--count[code]] = i;
    }
    return byLevel;
  }

  public ModelData withTakes(int[] otherTakes) {
    return new ModelData(otherTakes, grafts, patterns, codes, sizes, exempt);
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return System.identityHashCode(this);
  }
}
