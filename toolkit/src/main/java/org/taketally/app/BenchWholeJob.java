package org.taketally.app;

import java.io.IOException;
import java.io.InputStream;
import java.lang.ProcessBuilder.Redirect;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.taketally.files.SafeFile;
import org.taketally.records.columns.RecordColumn;

/**
 * The whole job as a user waits for it, each in a process of its own started anew: {@code analyse}
 * with the benchmark's model here, a script doing the same job in R.
 */
final class BenchWholeJob {

  private static final long LOOK_MILLISECONDS = 10;

  /** Columns keep the names they have in the model of the reference fits. */
  private static final String DICTIONARY = "{\"columns\": {\"record\": \"graft_id\"}}";

  private final Path records;
  private final Class<?> program;

  /**
   * Of one file.
   *
   * @param records the benchmark's records
   * @param program the class that is started for a command
   */
  BenchWholeJob(Path records, Class<?> program) {
    this.records = records;
    this.program = program;
  }

  /**
   * What a process took.
   *
   * @param times of the whole process; its CPU as last seen, within {@value #LOOK_MILLISECONDS} ms
   *     of its end
   * @param printed its output, without blanks at the ends
   */
  record Done(Stopwatch.Times times, String printed) {}

  /**
   * By {@code analyse}.
   *
   * @return empty if it failed
   */
  Optional<Done> here() throws IOException, InterruptedException {
    Path dictionary = Files.createTempFile("taketally-bench", ".json");
    try {
      SafeFile.write(dictionary, DICTIONARY);
      List<String> command = new ArrayList<>();
      command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
      ManagementFactory.getRuntimeMXBean().getInputArguments().stream()
          .filter(argument -> argument.startsWith("-X"))
          .forEach(command::add);
      command.addAll(List.of("-cp", System.getProperty("java.class.path"), program.getName()));
      command.addAll(List.of("analyse", records.toString(), "--dictionary", dictionary.toString()));
      command.addAll(List.of("--adjust-for", String.join(",", BenchCells.model().adjusted())));
      command.addAll(List.of("--vary-by", String.join(",", BenchCells.model().varying())));
      command.addAll(List.of("--compare", RecordColumn.ROOTSTOCK.columnName()));
      return done(command);
    } finally {
      Files.deleteIfExists(dictionary);
    }
  }

  /**
   * By R.
   *
   * @return empty if R, or a package of it, is missing
   */
  Optional<Done> inR() throws IOException, InterruptedException {
    Path script = Files.createTempFile("taketally-job", ".R");
    try (InputStream in = BenchWholeJob.class.getResourceAsStream("bench/whole_job.R")) {
      SafeFile.write(script, in::transferTo);
      return done(List.of("Rscript", script.toString(), records.toString()));
    } catch (IOException noRscript) {
      return Optional.empty();
    } finally {
      Files.deleteIfExists(script);
    }
  }

  private static Optional<Done> done(List<String> command)
      throws IOException, InterruptedException {
    Path output = Files.createTempFile("taketally-job", ".txt");
    try {
      long start = System.nanoTime();
      Process process =
          new ProcessBuilder(command)
              .redirectOutput(output.toFile())
              .redirectError(Redirect.DISCARD)
              .start();
      Duration cpu = Duration.ZERO;
      while (!process.waitFor(LOOK_MILLISECONDS, TimeUnit.MILLISECONDS)) {
        cpu = process.info().totalCpuDuration().orElse(cpu);
      }
      double wall = (System.nanoTime() - start) / 1e9;
      String printed = Files.readString(output, StandardCharsets.UTF_8).strip();
      return process.exitValue() == 0
          ? Optional.of(new Done(new Stopwatch.Times(cpu.toMillis() / 1e3, wall), printed))
          : Optional.empty();
    } finally {
      Files.deleteIfExists(output);
    }
  }
}
