package org.taketally.model.laplace;

import org.taketally.model.numeric.Dense;
import org.taketally.model.numeric.Vectors;

/** One number a level and fixed column, in the order of elimination. */
public final class LevelVector {

  /** One array a depth of the chain, one number a node. */
  public final double[][] chain;

  /** Levels of the remainder, then fixed columns. */
  public final double[] rest;

  public LevelVector(SortedCells sorted) {
    chain = new double[sorted.depths][];
    for (int d = 0; d < chain.length; d++) {
      chain[d] = new double[sorted.levelOf[d].length];
    }
    rest = new double[sorted.rest + sorted.patterns.width()];
  }

  private LevelVector(double[][] chain, double[] rest) {
    this.chain = chain;
    this.rest = rest;
  }

  /** The arrays by number: the depths of the chain, then the rest. */
  public double[] at(int number) {
    return number < chain.length ? chain[number] : rest;
  }

  public LevelVector copy() {
    double[][] copies = new double[chain.length][];
    for (int d = 0; d < chain.length; d++) {
      copies[d] = chain[d].clone();
    }
    return new LevelVector(copies, rest.clone());
  }

  public void add(double scale, LevelVector other) {
    for (int d = 0; d < chain.length; d++) {
      Dense.axpy(chain[d], scale, other.chain[d], 0, chain[d].length);
    }
    Dense.axpy(rest, scale, other.rest, 0, rest.length);
  }

  public double dot(LevelVector other) {
    double sum = Vectors.dot(rest, other.rest);
    for (int d = 0; d < chain.length; d++) {
      sum += Vectors.dot(chain[d], other.chain[d]);
    }
    return sum;
  }
}
