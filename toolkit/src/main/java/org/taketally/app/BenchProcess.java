package org.taketally.app;

import java.io.IOException;
import java.io.InputStream;
import java.lang.ProcessBuilder.Redirect;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import org.taketally.files.SafeFile;

/** Another program started for the benchmark: what it printed, and what it took. */
final class BenchProcess {

  private static final long LOOK_MILLISECONDS = 10;

  private BenchProcess() {}

  /**
   * What a process took.
   *
   * @param times of the whole process; its CPU as last seen, within {@value #LOOK_MILLISECONDS} ms
   *     of its end
   * @param peakMegabytes most memory it held, as last seen; empty where the system doesn't tell
   * @param printed its output, without blanks at the ends
   */
  record Done(Stopwatch.Times times, OptionalLong peakMegabytes, String printed) {}

  /**
   * Runs one of the benchmark's scripts.
   *
   * @param script its name
   * @return empty if R, or a package of it, is missing
   */
  static Optional<Done> ofR(String script, String... arguments)
      throws IOException, InterruptedException {
    Path file = Files.createTempFile("taketally-bench", ".R");
    try (InputStream in = BenchProcess.class.getResourceAsStream("bench/" + script)) {
      SafeFile.write(file, in::transferTo);
      List<String> command = new ArrayList<>(List.of("Rscript", file.toString()));
      command.addAll(List.of(arguments));
      return run(command);
    } catch (IOException noRscript) {
      return Optional.empty();
    } finally {
      Files.deleteIfExists(file);
    }
  }

  /**
   * Runs a program to its end.
   *
   * @return empty if it failed
   * @throws IOException if there is no such program
   */
  static Optional<Done> run(List<String> command) throws IOException, InterruptedException {
    Path output = Files.createTempFile("taketally-bench", ".txt");
    try {
      long start = System.nanoTime();
      Process process =
          new ProcessBuilder(command)
              .redirectOutput(output.toFile())
              .redirectError(Redirect.DISCARD)
              .start();
      Duration cpu = Duration.ZERO;
      OptionalLong memory = OptionalLong.empty();
      while (!process.waitFor(LOOK_MILLISECONDS, TimeUnit.MILLISECONDS)) {
        cpu = process.info().totalCpuDuration().orElse(cpu);
        OptionalLong seen = Memory.peakMegabytes(Long.toString(process.pid()));
        memory = seen.isPresent() ? seen : memory;
      }
      double wall = (System.nanoTime() - start) / 1e9;
      String printed = Files.readString(output, StandardCharsets.UTF_8).strip();
      return process.exitValue() == 0
          ? Optional.of(new Done(new Stopwatch.Times(cpu.toMillis() / 1e3, wall), memory, printed))
          : Optional.empty();
    } finally {
      Files.deleteIfExists(output);
    }
  }
}
