package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.terms.Provenance;

/**
 * Simulation-based calibration (Talts et al. 2018): truths drawn from the prior, records from the
 * truths; the share of draws below the truth must be uniform. Draws have a flat prior on the
 * intercept, truths a normal one, so draws are weighted by it. Writes docs/validation-draws.md.
 */
@Tag("slow")
class DrawsCalibrationTest {

  private static final int STUDIES = 500;
  private static final int DRAWS = 500;
  private static final int BINS = 10;
  private static final int CULTIVARS = 12;
  private static final int ROOTSTOCKS = 5;
  private static final int GRAFTS = 6;
  private static final double MIDDLE = 0.8;
  private static final double WIDTH = 0.7;

  private final Map<String, int[]> counts = new LinkedHashMap<>();

  private record Truth(double intercept, double[] sds, double[][] effects) {}

  private static Truth truth(SplittableRandom random) {
    double[] sds = {Math.abs(random.nextGaussian()), Math.abs(random.nextGaussian())};
    double[][] effects = {new double[CULTIVARS], new double[ROOTSTOCKS]};
    for (int k = 0; k < 2; k++) {
      for (int j = 0; j < effects[k].length; j++) {
        effects[k][j] = sds[k] * random.nextGaussian();
      }
    }
    return new Truth(MIDDLE + WIDTH * random.nextGaussian(), sds, effects);
  }

  private static Cells records(Truth truth, SplittableRandom random) {
    int size = CULTIVARS * ROOTSTOCKS;
    int[][] codes = new int[2][size];
    int[] grafts = new int[size];
    int[] takes = new int[size];
    for (int i = 0; i < size; i++) {
      codes[0][i] = i / ROOTSTOCKS;
      codes[1][i] = i % ROOTSTOCKS;
      grafts[i] = GRAFTS;
      double eta =
          truth.intercept() + truth.effects()[0][codes[0][i]] + truth.effects()[1][codes[1][i]];
      for (int n = 0; n < GRAFTS; n++) {
        takes[i] += random.nextDouble() < 1 / (1 + Math.exp(-eta)) ? 1 : 0;
      }
    }
    return new Cells(
        List.of(
            new Factor("cultivar", names(CULTIVARS), codes[0]),
            new Factor("rootstock", names(ROOTSTOCKS), codes[1])),
        List.of(),
        grafts,
        takes,
        0,
        Provenance.of("simulated", size));
  }

  private static List<String> names(int count) {
    return java.util.stream.IntStream.range(0, count).mapToObj(i -> "level " + i).toList();
  }

  @Test
  void draws_are_calibrated() throws IOException {
    int left = 0;
    for (int study = 0; study < STUDIES; study++) {
      SplittableRandom random = new SplittableRandom(20_000 + study);
      Truth truth = truth(random);
      Cells cells = records(truth, random);
      if (cells.takesTotal() == 0 || cells.takesTotal() == cells.graftsTotal()) {
        left++;
        continue;
      }
      TakeFit fit = TakeModel.ofTakes().varyBy("cultivar", "rootstock").fit(cells);
      add(truth, fit.draws(DRAWS, study));
    }
    write(left);
    counts.forEach((what, bins) -> assertThat(chiSquare(bins)).as(what).isLessThan(limit()));
  }

  /** The chi-square of 9 degrees of freedom passed once in 1,000 calibrated studies. */
  private static double limit() {
    return 27.877;
  }

  private void add(Truth truth, TakeDraws draws) {
    double[] below = new double[6];
    double total = 0;
    double[] truths = {
      truth.intercept(),
      truth.sds()[0],
      truth.sds()[1],
      truth.effects()[0][0],
      truth.effects()[1][0],
      truth.intercept() + truth.effects()[0][0] + truth.effects()[1][0]
    };
    for (int d = 0; d < draws.count(); d++) {
      double z = (draws.beta(d)[0] - MIDDLE) / WIDTH;
      double weight = Math.exp(-z * z / 2);
      double cultivar = draws.effects("cultivar", d)[0];
      double rootstock = draws.effects("rootstock", d)[0];
      double[] drawn = {
        draws.beta(d)[0],
        draws.sds(d)[0],
        draws.sds(d)[1],
        cultivar,
        rootstock,
        draws.beta(d)[0] + cultivar + rootstock
      };
      total += weight;
      for (int q = 0; q < below.length; q++) {
        below[q] += drawn[q] < truths[q] ? weight : 0;
      }
    }
    String[] names = {
      "intercept",
      "spread of cultivars",
      "spread of rootstocks",
      "one cultivar",
      "one rootstock",
      "logit of one pairing"
    };
    for (int q = 0; q < below.length; q++) {
      int bin = Math.min(BINS - 1, (int) (BINS * below[q] / total));
      counts.computeIfAbsent(names[q], name -> new int[BINS])[bin]++;
    }
  }

  private static double chiSquare(int[] bins) {
    double expected = java.util.Arrays.stream(bins).sum() / (double) BINS;
    double sum = 0;
    for (int count : bins) {
      sum += (count - expected) * (count - expected) / expected;
    }
    return sum;
  }

  private void write(int left) throws IOException {
    StringBuilder page = new StringBuilder();
    page.append("# Are the posterior draws calibrated?\n\n");
    page.append(
        "Simulation-based calibration (Talts et al. 2018, arXiv:1804.06788): %d studies, each with truths drawn from the prior (standard deviations half-normal with scale 1, intercept normal around %.1f with standard deviation %.1f), %d cultivars by %d rootstocks, %d grafts a pairing, %d draws. %d studies in which all or no grafts took were left out. If the draws are right, the share of draws below the truth is as often in each tenth.\n\n"
            .formatted(STUDIES, MIDDLE, WIDTH, CULTIVARS, ROOTSTOCKS, GRAFTS, DRAWS, left));
    page.append(
        "| quantity | studies in each tenth of the draws | chi-square (9 df; 27.9 is passed once in 1,000) |\n|---|---|---|\n");
    counts.forEach(
        (what, bins) ->
            page.append(
                String.format(
                    Locale.ROOT,
                    "| %s | %s | %.1f |\n",
                    what,
                    java.util.Arrays.toString(bins).replaceAll("[\\[\\],]", ""),
                    chiSquare(bins))));
    page.append(
        "\nMade by `DrawsCalibrationTest` (`./mvnw -Pslow verify`), seeds 20,000 and up.\n");
    Files.writeString(
        Path.of(System.getProperty("taketally.root")).resolve("docs/validation-draws.md"), page);
  }
}
