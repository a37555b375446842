package org.taketally.terms;

/**
 * A cultivar, as the records name it.
 *
 * @param name never blank, e.g. {@code Orrin}
 */
public record Cultivar(String name) {

  public Cultivar {
    if (name == null || name.isBlank()) {
      throw new IllegalArgumentException("a cultivar needs a name");
    }
  }

  @Override
  public String toString() {
    return name;
  }
}
