package org.taketally.answers.confounding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.terms.Provenance;

class InformationMatrixTest {

  /**
   * Reference: the same matrix by projection, A'W^(1/2) (I - B B^+) W^(1/2)A with the
   * pseudo-inverse of commons-math3; designs drawn at random, some blocks empty, missing or sums of
   * others.
   */
  @Test
  void agrees_with_the_projection_of_every_graft() {
    SplittableRandom random = new SplittableRandom(4);
    for (int round = 0; round < 60; round++) {
      int size = 5 + random.nextInt(40);
      Factor factor = factor("rootstock", 2 + random.nextInt(4), size, random);
      List<Factor> blocks =
          IntStream.range(0, random.nextInt(4))
              .mapToObj(b -> factor("block" + b, 1 + random.nextInt(9), size, random))
              .toList();
      int[] grafts = random.ints(size, 1, 9).toArray();
      List<Factor> all = new java.util.ArrayList<>(blocks);
      all.add(factor);
      Cells cells =
          new Cells(all, List.of(), grafts, new int[size], 0, Provenance.of("drawn", size));
      double[][] expected = projected(factor, blocks, grafts);
      double[][] found = InformationMatrix.of(cells, factor, blocks);
      for (int i = 0; i < expected.length; i++) {
        assertThat(found[i]).as("round %d", round).containsExactly(expected[i], within(1e-8));
      }
    }
  }

  private static Factor factor(String name, int levels, int size, SplittableRandom random) {
    return new Factor(
        name,
        IntStream.range(0, levels).mapToObj(l -> name + l).toList(),
        random.ints(size, -1, levels).toArray());
  }

  private static double[][] projected(Factor factor, List<Factor> blocks, int[] grafts) {
    int size = grafts.length;
    int width = blocks.stream().mapToInt(b -> b.size() + 1).sum();
    RealMatrix a = new Array2DRowRealMatrix(size, factor.size());
    RealMatrix b = new Array2DRowRealMatrix(size, Math.max(1, width));
    for (int i = 0; i < size; i++) {
      double root = Math.sqrt(grafts[i]);
      if (factor.code(i) == Factor.MISSING) {
        continue;
      }
      a.setEntry(i, factor.code(i), root);
      int start = 0;
      for (Factor block : blocks) {
        int code = block.codes()[i];
        b.setEntry(i, start + (code == Factor.MISSING ? block.size() : code), root);
        start += block.size() + 1;
      }
    }
    RealMatrix inverse = new SingularValueDecomposition(b).getSolver().getInverse();
    RealMatrix left = a.subtract(b.multiply(inverse).multiply(a));
    return a.transpose().multiply(left).getData();
  }
}
