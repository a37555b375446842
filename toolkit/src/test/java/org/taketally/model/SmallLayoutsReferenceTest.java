package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import org.apache.commons.math3.util.CombinatoricsUtils;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;

/**
 * Fifty small layouts against lme4 and glmmTMB at tight tolerance, three starts each. Reference: R
 * 4.2.2, lme4 1.1-31, glmmTMB 1.1.5, small-layouts.R, whose output is
 * reference/small-layouts-fits.csv.
 *
 * <p>Where a program ends as high as we do (to 1e-6), estimates agree. Nowhere does one end higher.
 */
class SmallLayoutsReferenceTest {

  private static final Path FOLDER = Path.of("src/test/resources/reference");
  private static final int LAYOUTS = 50;
  private static final int LEAST_GRAFTS = 60;
  private static final int LEAST_CELLS = 15;

  private record Fit(int layout, String model, String program, double logLikelihood) {}

  private static Path resource(String name) {
    String root = System.getProperty("taketally.root", "..");
    return Path.of(root, "toolkit").resolve(FOLDER).resolve(name);
  }

  private static List<Long> seeds() {
    return LongStream.range(10_000, 20_000)
        .filter(
            seed -> {
              Cells cells = SmallLayouts.of(seed);
              return cells.graftsTotal() >= LEAST_GRAFTS && cells.size() >= LEAST_CELLS;
            })
        .limit(LAYOUTS)
        .boxed()
        .toList();
  }

  private static String records() {
    StringBuilder csv =
        new StringBuilder("layout,cultivar,rootstock,grafter,storage_days,grafts,takes\n");
    int layout = 0;
    for (long seed : seeds()) {
      layout++;
      Cells cells = SmallLayouts.of(seed);
      for (int i = 0; i < cells.size(); i++) {
        csv.append(layout);
        for (String column : List.of("cultivar", "rootstock", "grafter")) {
          csv.append(',').append(cells.factor(column).levels().get(cells.factor(column).code(i)));
        }
        csv.append(',').append((int) cells.measure("storage_days").value(i));
        csv.append(',').append(cells.grafts(i)).append(',').append(cells.takes(i)).append('\n');
      }
    }
    return csv.toString();
  }

  /** What the script read is what is fitted here. */
  @Test
  void the_layouts_are_those_the_reference_was_made_from() throws IOException {
    Path file = resource("small-layouts.csv");
    if ("write".equals(System.getProperty("golden"))) {
      Files.writeString(file, records());
    }
    assertThat(records()).isEqualTo(Files.readString(file, StandardCharsets.UTF_8));
  }

  private static Map<Fit, Map<String, Double>> references() throws IOException {
    Map<Fit, Map<String, Double>> references = new LinkedHashMap<>();
    List<String> lines = Files.readAllLines(resource("small-layouts-fits.csv"));
    for (String line : lines.subList(1, lines.size())) {
      String[] cell = line.split(",", -1);
      references
          .computeIfAbsent(
              new Fit(Integer.parseInt(cell[0]), cell[1], cell[2], Double.parseDouble(cell[3])),
              fit -> new LinkedHashMap<>())
          .put(cell[4], Double.parseDouble(cell[5]));
    }
    return references;
  }

  @Test
  void no_program_ends_higher_and_those_as_high_agree() throws IOException {
    List<Long> seeds = seeds();
    List<String> higher = new ArrayList<>();
    int agreeing = 0;
    for (Map.Entry<Fit, Map<String, Double>> reference : references().entrySet()) {
      Fit theirs = reference.getKey();
      Cells cells = SmallLayouts.of(seeds.get(theirs.layout() - 1));
      TakeFit ours = fit(cells, theirs.model());
      double lead = ours.logLikelihood() + coefficients(cells) - theirs.logLikelihood();
      if (lead < -1e-5) {
        higher.add("%s: %.3g".formatted(theirs, -lead));
      }
      if (Math.abs(lead) < 1e-6) {
        agree(ours, reference.getValue(), theirs);
        agreeing++;
      }
    }
    assertThat(higher).isEmpty();
    assertThat(agreeing).as("fits that agree").isGreaterThanOrEqualTo(150);
  }

  private static TakeFit fit(Cells cells, String model) {
    return TakeModel.ofTakes()
        .adjustFor("storage_days")
        .varyBy(model.split(" "))
        .fit(cells, FitOptions.defaults().withTolerance(1e-12).withThreads(1));
  }

  private static void agree(TakeFit ours, Map<String, Double> theirs, Fit which) {
    assertThat(ours.beta()[0])
        .as("%s", which)
        .isCloseTo(theirs.get("(Intercept)"), within(1e-4 * Math.max(1, Math.abs(ours.beta()[0]))));
    assertThat(ours.beta()[1]).as("%s", which).isCloseTo(theirs.get("storage_days"), within(1e-4));
    for (VaryingFactor factor : ours.varying()) {
      assertThat(factor.standardDeviation())
          .as("%s %s", which, factor.factor())
          .isCloseTo(theirs.get("sd " + factor.factor()), within(1e-3));
    }
  }

  private static double coefficients(Cells cells) {
    double sum = 0;
    for (int i = 0; i < cells.size(); i++) {
      sum += CombinatoricsUtils.binomialCoefficientLog(cells.grafts(i), cells.takes(i));
    }
    return sum;
  }
}
