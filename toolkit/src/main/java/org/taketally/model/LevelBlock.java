package org.taketally.model;

import java.util.List;

/** One column a level, but for the base level. */
record LevelBlock(String term, List<String> levels, int base, int[] codes) implements FixedBlock {

  @Override
  public List<String> labels() {
    return levels.stream().filter(level -> !level.equals(levels.get(base))).toList();
  }

  @Override
  public int codeCount() {
    return levels.size();
  }

  @Override
  public int width() {
    return levels.size() - 1;
  }

  @Override
  public void fill(int code, double[] row, int at) {
    if (code != base) {
      row[at + (code < base ? code : code - 1)] = 1;
    }
  }

  @Override
  public void fill(String level, double[] row, int at) {
    int code = levels.indexOf(level);
    if (code < 0) {
      throw new IllegalArgumentException(
          "no %s \"%s\" in this fit; there are %s".formatted(term, level, levels));
    }
    fill(code, row, at);
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return term.hashCode();
  }
}
