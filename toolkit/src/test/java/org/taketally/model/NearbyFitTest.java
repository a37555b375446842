package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.terms.Logit;
import org.taketally.terms.Provenance;

/** Starting where another fit ended finds what starting anew finds, spreads at zero included. */
class NearbyFitTest {

  private static final int CELLS = 400;

  private static final TakeModel MODEL =
      TakeModel.ofTakes().adjustFor("method").varyBy("cultivar", "grafter", "season", "block");

  private static Factor factor(String name, int levels, int[] codes) {
    return new Factor(
        name, IntStream.range(0, levels).mapToObj(l -> name + " " + l).toList(), codes);
  }

  /** Cultivars and hands differ, seasons a little, blocks not at all. */
  private static Cells records(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int[] sizes = {3, 12, 6, 4, 10};
    double[] spreads = {0.3, 0.8, 0.4, 0.15, 0};
    int[][] codes = new int[sizes.length][CELLS];
    double[][] effects = new double[sizes.length][];
    for (int k = 0; k < sizes.length; k++) {
      double spread = spreads[k];
      effects[k] = random.doubles(sizes[k]).map(u -> (u - 0.5) * 3.5 * spread).toArray();
      int size = sizes[k];
      Arrays.setAll(codes[k], i -> random.nextInt(size));
    }
    int[] grafts = new int[CELLS];
    int[] takes = new int[CELLS];
    for (int i = 0; i < CELLS; i++) {
      double eta = 0.3;
      for (int k = 0; k < sizes.length; k++) {
        eta += effects[k][codes[k][i]];
      }
      grafts[i] = 1 + random.nextInt(5);
      double take = Logit.take(eta);
      takes[i] = (int) random.doubles(grafts[i]).filter(u -> u < take).count();
    }
    return new Cells(
        List.of(
            factor("method", 3, codes[0]),
            factor("cultivar", 12, codes[1]),
            factor("grafter", 6, codes[2]),
            factor("season", 4, codes[3]),
            factor("block", 10, codes[4])),
        List.of(),
        grafts,
        takes,
        0,
        Provenance.of("made for a test", Arrays.stream(grafts).sum()));
  }

  private static void same(TakeFit found, TakeFit anew) {
    assertThat(found.logLikelihood()).isCloseTo(anew.logLikelihood(), within(1e-7));
    for (int j = 0; j < anew.beta().length; j++) {
      assertThat(found.beta()[j]).isCloseTo(anew.beta()[j], within(1e-5));
    }
    for (VaryingFactor factor : anew.varying()) {
      assertThat(found.varying(factor.factor()).standardDeviation())
          .isCloseTo(factor.standardDeviation(), within(1e-4));
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void without_a_season_or_a_column(long seed) {
    Cells cells = records(seed);
    TakeFit all = MODEL.fit(cells);
    Factor seasons = cells.factor("season");
    for (int season = 0; season < seasons.size(); season++) {
      int out = season;
      Cells rest = cells.where(i -> seasons.code(i) != out);
      same(MODEL.fitNear(all, rest, FitOptions.defaults()), MODEL.fit(rest));
    }
    TakeModel fewer = MODEL.without("block");
    same(fewer.fitNear(all, cells, FitOptions.defaults()), fewer.fit(cells));
    same(MODEL.fitNear(fewer.fit(cells), cells, FitOptions.defaults()), all);
    TakeModel handByHand = MODEL.without("grafter").adjustFor("grafter");
    same(handByHand.fitNear(all, cells, FitOptions.defaults()), handByHand.fit(cells));
  }
}
