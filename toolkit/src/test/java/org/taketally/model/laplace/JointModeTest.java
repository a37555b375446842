package org.taketally.model.laplace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.model.numeric.Parallel;

/** Means, spreads and skewness by blocks against the same formulas with one dense matrix. */
class JointModeTest {

  private static final int CELLS = 150;

  /** A generator whose normals are all the same. */
  private record Same(double normal) implements RandomGenerator {
    @Override
    public long nextLong() {
      return 0;
    }

    @Override
    public double nextGaussian() {
      return normal;
    }
  }

  /** Levels: a crossed with b, c nested in b, d nested in c; a number with seven values. */
  private static ModelData evidence(String columns) {
    Random random = new Random(3);
    int[][] all = new int[4][CELLS];
    int[] grafts = new int[CELLS];
    int[] takes = new int[CELLS];
    int[] pattern = new int[CELLS];
    for (int i = 0; i < CELLS; i++) {
      all[0][i] = random.nextInt(6);
      all[1][i] = random.nextInt(3);
      all[2][i] = all[1][i] * 3 + random.nextInt(3);
      all[3][i] = all[2][i] * 3 + random.nextInt(3);
      pattern[i] = random.nextInt(7);
      grafts[i] = 1 + random.nextInt(5);
      takes[i] = Math.min(grafts[i], random.nextInt(6));
    }
    double[][] rows =
        IntStream.range(0, 7).mapToObj(x -> new double[] {1, x}).toArray(double[][]::new);
    int[] sizes = {6, 3, 9, 27};
    int[] used = columns.chars().map(column -> column - 'a').toArray();
    int[] exempt = new int[used.length];
    Arrays.fill(exempt, ModelData.NONE);
    return new ModelData(
        takes,
        grafts,
        new Patterns(pattern, rows, 2),
        IntStream.of(used).mapToObj(k -> all[k]).toArray(int[][]::new),
        IntStream.of(used).map(k -> sizes[k]).toArray(),
        exempt);
  }

  /** Deviations of the columns one after the other, then fixed effects. */
  private static double[] flat(BlockLaplace engine, LevelVector vector) {
    double[] beta = Arrays.copyOfRange(vector.rest, vector.rest.length - 2, vector.rest.length);
    return java.util.stream.Stream.concat(
            Arrays.stream(engine.split(vector)), java.util.stream.Stream.of(beta))
        .flatMapToDouble(Arrays::stream)
        .toArray();
  }

  /** One row a cell. */
  private static double[][] design(ModelData evidence) {
    int deviations = IntStream.of(evidence.sizes()).sum();
    double[][] rows = new double[CELLS][deviations + 2];
    for (int i = 0; i < CELLS; i++) {
      int from = 0;
      for (int k = 0; k < evidence.varying(); k++) {
        rows[i][from + evidence.codes()[k][i]] = 1;
        from += evidence.sizes()[k];
      }
      double[] x = evidence.patterns().rows()[evidence.patterns().codes()[i]];
      System.arraycopy(x, 0, rows[i], deviations, 2);
    }
    return rows;
  }

  private static double[] weights(ModelData evidence, double[][] design, double[] mode, int power) {
    double[] weights = new double[CELLS];
    for (int i = 0; i < CELLS; i++) {
      double eta = 0;
      for (int a = 0; a < mode.length; a++) {
        eta += design[i][a] * mode[a];
      }
      double mu = 1 / (1 + Math.exp(-eta));
      weights[i] = evidence.grafts()[i] * mu * (1 - mu) * (power == 1 ? 1 : 1 - 2 * mu);
    }
    return weights;
  }

  private static RealMatrix covariance(
      ModelData evidence, double[][] design, double[] w, double[] tau) {
    int size = design[0].length;
    RealMatrix precision = new Array2DRowRealMatrix(size, size);
    int from = 0;
    for (int k = 0; k < tau.length; k++) {
      for (int j = 0; j < evidence.sizes()[k]; j++) {
        precision.addToEntry(from++, from - 1, 1 / tau[k]);
      }
    }
    for (int i = 0; i < CELLS; i++) {
      for (int a = 0; a < size; a++) {
        for (int b = 0; b < size && design[i][a] != 0; b++) {
          precision.addToEntry(a, b, w[i] * design[i][a] * design[i][b]);
        }
      }
    }
    return new LUDecomposition(precision).getSolver().getInverse();
  }

  /** Where a draw of all zero normals lies: mean - s g / 6 / sqrt(1 + g^2 / 18). */
  private static double[] middle(
      ModelData evidence, double[] mode, double[] tau, boolean jeffreys) {
    double[][] design = design(evidence);
    int size = mode.length;
    RealMatrix k = covariance(evidence, design, weights(evidence, design, mode, 1), tau);
    double[] slope = weights(evidence, design, mode, 2);
    RealMatrix fixed = k.getSubMatrix(size - 2, size - 1, size - 2, size - 1);
    RealMatrix information = new LUDecomposition(fixed).getSolver().getInverse();
    double[] along = new double[size];
    double[] third = new double[size];
    for (int i = 0; i < CELLS; i++) {
      double[] c = k.operate(design[i]);
      double v = 0;
      for (int a = 0; a < size; a++) {
        v += design[i][a] * c[a];
        boolean own = a >= size - 2 || design[i][a] != 0; // of levels the cells they hold
        third[a] -= own ? slope[i] * c[a] * c[a] * c[a] : 0;
      }
      double[] beta = {c[size - 2], c[size - 1]};
      double[] informed = information.operate(beta);
      v -= jeffreys ? informed[0] * beta[0] + informed[1] * beta[1] : 0;
      for (int a = 0; a < size; a++) {
        along[a] += slope[i] * v * design[i][a];
      }
    }
    double[] shift = k.operate(along);
    double[] middle = new double[size];
    for (int a = 0; a < size; a++) {
      double s = Math.sqrt(k.getEntry(a, a));
      double g = Math.max(-0.9, Math.min(0.9, third[a] / (s * s * s)));
      middle[a] = mode[a] - shift[a] / 2 - s * g / 6 / Math.sqrt(1 + g * g / 18);
    }
    return middle;
  }

  @ParameterizedTest
  @CsvSource({
    "a,true",
    "ab,false",
    "ab,true",
    "cb,true",
    "acb,false",
    "abc,true",
    "dcba,true",
    "dcb,false",
    "ad,true"
  })
  void draws_of_the_middle_agree_with_one_dense_matrix(String columns, boolean jeffreys) {
    ModelData evidence = evidence(columns);
    BlockLaplace engine = new BlockLaplace(evidence, new SortedCells(evidence), new Parallel(1));
    double[] tau = Arrays.copyOf(new double[] {0.5, 0.2, 0.9, 0.3}, columns.length());
    JointMode joint = engine.joint(tau, new double[] {0.2, 0}).correct(jeffreys);
    double[] mode = flat(engine, joint.mode);
    double[] expected = middle(evidence, mode, tau, jeffreys);
    assertThat(flat(engine, joint.draw(new Same(0)))).containsExactly(expected, within(1e-8));
    double[][] design = design(evidence);
    RealMatrix k = covariance(evidence, design, weights(evidence, design, mode, 1), tau);
    double[] sd = flat(engine, joint.sd);
    int last = mode.length - 1;
    assertThat(flat(engine, joint.covarianceWith(1))).containsExactly(k.getRow(last), within(1e-9));
    for (int a = 0; a <= last; a++) {
      assertThat(sd[a] * sd[a]).isCloseTo(k.getEntry(a, a), within(1e-9));
    }
  }

  /** Room is used again from one decomposition to the next, but not that of one still needed. */
  @ParameterizedTest
  @ValueSource(strings = {"ab", "acb", "dcba"})
  void draws_stay_what_they_were_when_the_engine_moves_on(String columns) {
    ModelData evidence = evidence(columns);
    BlockLaplace engine = new BlockLaplace(evidence, new SortedCells(evidence), new Parallel(1));
    double[] tau = Arrays.copyOf(new double[] {0.5, 0.2, 0.9, 0.3}, columns.length());
    double[] wide = Arrays.stream(tau).map(t -> 4 * t).toArray();
    double[] beta = {0.2, 0};
    JointMode joint = engine.joint(tau, beta).correct(true);
    double[] drawn = flat(engine, joint.draw(new Same(0.7)));
    LevelVector start = joint.mode.copy();

    double rough = engine.startAt(start).roughly(wide).logDensity();
    double value = engine.at(wide, beta).logLikelihood;
    JointMode other = engine.startAt(start).joint(wide).correct(true);

    assertThat(flat(engine, joint.draw(new Same(0.7)))).containsExactly(drawn);
    BlockLaplace fresh = new BlockLaplace(evidence, new SortedCells(evidence), new Parallel(1));
    JointMode alone = fresh.startAt(start).joint(wide).correct(true);
    assertThat(flat(engine, other.draw(new Same(0.7))))
        .containsExactly(flat(fresh, alone.draw(new Same(0.7))));
    assertThat(rough).isCloseTo(alone.logDensity, within(1e-7));
    assertThat(value).isCloseTo(fresh.at(wide, beta).logLikelihood, within(1e-8));
  }

  /**
   * 8 of 11 took, nothing varies: w = 11 * 8/11 * 3/11 = 24/11, w' = w (3 - 8) / 11. With a flat
   * prior the mean is log(8/3) + (5/11) / (2 w) and the skewness (5/11) / sqrt(w).
   */
  @Test
  void draws_of_one_logit_are_bent_by_its_skewness() {
    int[] none = new int[0];
    ModelData evidence =
        new ModelData(
            new int[] {8},
            new int[] {11},
            new Patterns(new int[1], new double[][] {{1}}, 1),
            new int[0][],
            none,
            none);
    BlockLaplace engine = new BlockLaplace(evidence, new SortedCells(evidence), new Parallel(1));
    JointMode joint = engine.joint(new double[0], new double[] {0.5}).correct(false);
    double w = 24 / 11.0;
    double mean = Math.log(8 / 3.0) + 5 / 11.0 / (2 * w);
    double g = 5 / 11.0 / Math.sqrt(w);
    for (double z : new double[] {-2, -1, 0, 1, 2}) {
      double bent = (z + g * (z * z - 1) / 6) / Math.sqrt(1 + g * g / 18);
      assertThat(joint.draw(new Same(z)).rest[0])
          .isCloseTo(mean + bent / Math.sqrt(w), within(1e-8));
    }
  }
}
