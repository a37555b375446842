package org.taketally.answers;

/** How far apart the takes of two grafts lie that differ in one factor and in nothing else. */
final class TypicalDifference {

  private TypicalDifference() {}

  /**
   * Mean absolute difference between two grafts drawn by their shares, given that they differ.
   *
   * @param takes one a level
   * @param shares share of the grafts of each level
   * @return 0 to 1; 0 where fewer than two levels have grafts
   */
  static double of(double[] takes, double[] shares) {
    double sum = 0;
    double weight = 0;
    for (int a = 0; a < takes.length; a++) {
      for (int b = 0; b < a; b++) {
        double both = shares[a] * shares[b];
        sum += both * Math.abs(takes[a] - takes[b]);
        weight += both;
      }
    }
    return weight > 0 ? sum / weight : 0;
  }
}
