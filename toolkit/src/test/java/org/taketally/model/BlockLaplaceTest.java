package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.model.laplace.BlockLaplace;
import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.laplace.Marginal;
import org.taketally.model.laplace.ModelData;
import org.taketally.model.laplace.SortedCells;
import org.taketally.model.numeric.Parallel;

/**
 * The engine by blocks against the same likelihood with one dense matrix, and its gradient against
 * differences of its values, for nested, crossed and mixed varying columns.
 */
class BlockLaplaceTest {

  /** Levels: a crossed with b, c = a and b together, d nested in b, e one level a cell. */
  private static ModelData evidence(String columns, long seed) {
    Random random = new Random(seed);
    int cells = 400;
    int[] takes = new int[cells];
    int[] grafts = new int[cells];
    double[] x = new double[cells];
    int rows = 0;
    int[][] all = new int[6][cells];
    for (int i = 0; i < cells; i++) {
      grafts[i] = 1 + random.nextInt(4);
      x[i] = random.nextInt(7);
      all[0][i] = random.nextInt(12);
      all[1][i] = random.nextInt(5);
      all[2][i] = all[0][i] * 5 + all[1][i];
      all[3][i] = all[1][i] * 4 + random.nextInt(4);
      all[4][i] = i;
      all[5][i] = grafts[i] > 1 ? rows++ : ModelData.NONE;
      double take = 1 / (1 + Math.exp(-(0.8 - 0.2 * x[i] + 0.2 * (all[0][i] - 6))));
      for (int n = 0; n < grafts[i]; n++) {
        takes[i] += random.nextDouble() < take ? 1 : 0;
      }
    }
    int exempt = rows;
    all[5] = Arrays.stream(all[5]).map(code -> code == ModelData.NONE ? exempt : code).toArray();
    int[] sizes = {12, 5, 60, 20, 400, rows + 1};
    List<int[]> codes = new ArrayList<>();
    List<Integer> used = new ArrayList<>();
    for (int at = 0; at < columns.length(); at++) {
      char column = columns.charAt(at);
      codes.add(all[column - 'a']);
      used.add(sizes[column - 'a']);
    }
    return new ModelData(
        takes,
        grafts,
        FixedBlock.patterns(cells, List.of(new NumberBlock("x", x, null))),
        codes.toArray(int[][]::new),
        used.stream().mapToInt(Integer::intValue).toArray(),
        columns.chars().map(column -> column == 'f' ? exempt : ModelData.NONE).toArray());
  }

  private static double[] taus(int count) {
    double[] taus = {0.5, 0.04, 0.2, 0.1, 0.3};
    return Arrays.copyOf(taus, count);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a", "ab", "abc", "cab", "abcd", "db", "edb", "abcde", "ad", "ec", "e", "f", "fa", "cfab"
      })
  void agrees_with_one_dense_matrix(String columns) {
    ModelData evidence = evidence(columns, 7);
    Marginal blocks = new BlockLaplace(evidence, new SortedCells(evidence), new Parallel(2));
    Marginal dense = new DenseLaplace(evidence);
    double[] tau = taus(columns.length());
    double[] beta = {0.6, -0.15};
    LikelihoodPoint ours = blocks.at(tau, beta);
    blocks.differentiate(ours);
    LikelihoodPoint theirs = dense.at(tau, beta);
    dense.differentiate(theirs);
    assertThat(ours.logLikelihood).isCloseTo(theirs.logLikelihood, within(1e-9));
    assertThat(ours.gradient).containsExactly(theirs.gradient, within(1e-6));
    for (int k = 0; k < tau.length; k++) {
      assertThat(ours.modes[k]).containsExactly(theirs.modes[k], within(1e-8));
      assertThat(ours.variances[k]).containsExactly(theirs.variances[k], within(1e-9));
    }
    for (int j = tau.length; j < ours.gradient.length; j++) {
      assertThat(ours.information[j]).containsExactly(theirs.information[j], within(1e-7));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"a", "abc", "edb", "abf"})
  void gradient_is_that_of_the_value(String columns) {
    ModelData evidence = evidence(columns, 11);
    Marginal blocks = new BlockLaplace(evidence, new SortedCells(evidence), new Parallel(1));
    double[] x = Arrays.copyOf(taus(columns.length()), columns.length() + 2);
    x[columns.length()] = 0.5;
    x[columns.length() + 1] = -0.2;
    LikelihoodPoint here = at(blocks, x);
    blocks.differentiate(here);
    for (int j = 0; j < x.length; j++) {
      double width = 1e-4;
      double[] up = x.clone();
      up[j] += width;
      double[] down = x.clone();
      down[j] -= width;
      double slope = (at(blocks, up).logLikelihood - at(blocks, down).logLikelihood) / (2 * width);
      assertThat(here.gradient[j]).isCloseTo(slope, within(1e-5 * Math.max(1, Math.abs(slope))));
    }
  }

  private static LikelihoodPoint at(Marginal marginal, double[] x) {
    return marginal.at(
        Arrays.copyOf(x, x.length - 2), Arrays.copyOfRange(x, x.length - 2, x.length));
  }
}
