package org.taketally.terms;

/**
 * A rootstock, as the records name it.
 *
 * @param name never blank, e.g. {@code Halden seedling}
 */
public record Rootstock(String name) {

  public Rootstock {
    if (name == null || name.isBlank()) {
      throw new IllegalArgumentException("a rootstock needs a name");
    }
  }

  @Override
  public String toString() {
    return name;
  }
}
