package org.taketally.terms;

/**
 * A season, as the records name it.
 *
 * @param name never blank, e.g. {@code 2024}
 */
public record Season(String name) {

  public Season {
    if (name == null || name.isBlank()) {
      throw new IllegalArgumentException("a season needs a name");
    }
  }

  @Override
  public String toString() {
    return name;
  }
}
