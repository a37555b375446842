package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.model.FitOptions;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;
import org.taketally.records.invented.BenchRecords;

/**
 * Reference: R 4.2.2, glmmTMB 1.1.5, polished by Newton steps to a gradient below 1e-6; S confirmed
 * by lme4 1.1-31 to 4e-9 in log-likelihood. Invented records, seed 1.
 */
class ReferenceFitTest {

  @TempDir Path folder;

  private TakeFit fit(BenchRecords.Size size, int threads) throws IOException {
    Path file = folder.resolve(size + ".csv");
    try (BufferedWriter writer = Files.newBufferedWriter(file)) {
      BenchRecords.write(size, 1, writer);
    }
    return BenchCells.model()
        .fit(BenchCells.read(file), FitOptions.defaults().withThreads(threads));
  }

  private void agrees(BenchRecords.Size size) throws IOException {
    TakeFit fit = fit(size, 2);
    BenchReference reference = BenchReference.of(size.name()).orElseThrow();
    assertThat(fit.logLikelihood()).isGreaterThan(reference.logLikelihood() - 1e-6);
    for (int j = 0; j < reference.fixed().length; j++) {
      double expected = reference.fixed()[j];
      assertThat(fit.beta()[j])
          .as(fit.fixed().get(j).name())
          .isCloseTo(expected, within(1e-5 * Math.max(1, Math.abs(expected))));
      assertThat(fit.fixed().get(j).standardError())
          .isCloseTo(reference.standardErrors()[j], within(3e-3 * reference.standardErrors()[j]));
    }
    for (VaryingFactor factor : fit.varying()) {
      assertThat(factor.standardDeviation())
          .as(factor.factor())
          .isCloseTo(reference.standardDeviations().get(factor.factor()), within(1e-5));
    }
    cultivarsAgree(size, fit.varying("cultivar"));
  }

  private void cultivarsAgree(BenchRecords.Size size, VaryingFactor cultivar) throws IOException {
    Path file =
        Path.of(System.getProperty("taketally.root"))
            .resolve("toolkit/src/test/resources/reference/cultivars_" + size + ".csv");
    List<String> lines = Files.readAllLines(file);
    assertThat(cultivar.levels()).hasSize(lines.size() - 1);
    for (String line : lines.subList(1, lines.size())) {
      String[] parts = line.split(",", -1);
      int level = cultivar.levels().indexOf(parts[0]);
      assertThat(cultivar.levelEffect(level)).isCloseTo(Double.parseDouble(parts[1]), within(1e-4));
      assertThat(cultivar.levelEffectSd(level))
          .isCloseTo(Double.parseDouble(parts[2]), within(1e-4));
    }
  }

  @Test
  void two_thousand_grafts() throws IOException {
    agrees(BenchRecords.Size.S);
  }

  @Test
  void hundred_thousand_grafts() throws IOException {
    agrees(BenchRecords.Size.M);
  }

  @Tag("slow")
  @Test
  void million_grafts() throws IOException {
    agrees(BenchRecords.Size.L);
  }

  /** Not a digit may depend on how many threads shared the work. */
  @Test
  void threads_change_nothing() throws IOException {
    TakeFit one = fit(BenchRecords.Size.M, 1);
    TakeFit two = fit(BenchRecords.Size.M, 2);
    assertThat(two.beta()).containsExactly(one.beta());
    assertThat(two.logLikelihood()).isEqualTo(one.logLikelihood());
    assertThat(two.varying("pairing").levelEffects())
        .containsExactly(one.varying("pairing").levelEffects());
    assertThat(two.linearPredictor()).containsExactly(one.linearPredictor());
  }
}
