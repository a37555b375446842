package org.taketally.plan.layout;

/**
 * What is compared: a cultivar on a rootstock.
 *
 * @param cultivar the cultivar
 * @param rootstock the stock
 */
public record Pairing(String cultivar, String rootstock) {

  @Override
  public String toString() {
    return cultivar + " on " + rootstock;
  }
}
