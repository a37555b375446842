package org.taketally.app;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.taketally.cells.Cells;
import org.taketally.model.FitOptions;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.records.invented.BenchRecords;

/** Warm times of a fit and of posterior draws on the benchmark's records. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 5)
@Measurement(iterations = 5, time = 5)
public class FitBenchmark {

  /** Size of the records. */
  @Param({"S", "M"})
  public String size;

  /** Most threads. */
  @Param({"1", "2"})
  public int threads;

  private Cells cells;
  private TakeFit fit;

  /**
   * Writes and reads the records.
   *
   * @throws IOException if they can't be written
   */
  @Setup
  public void prepare() throws IOException {
    Path file = Files.createTempFile("taketally-jmh", ".csv");
    try (BufferedWriter writer = Files.newBufferedWriter(file)) {
      BenchRecords.write(BenchRecords.Size.valueOf(size), 1, writer);
    }
    cells = BenchCells.read(file);
    Files.delete(file);
    fit = fit();
  }

  /**
   * One fit.
   *
   * @return the fit
   */
  @Benchmark
  public TakeFit fit() {
    return BenchCells.model().fit(cells, FitOptions.withDefaults().threads(threads));
  }

  /**
   * A thousand draws.
   *
   * @return the draws
   */
  @Benchmark
  public TakeDraws draws() {
    return fit.draws(1000, 1);
  }
}
