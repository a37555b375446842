package org.taketally.app;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.files.SafeFile;
import org.taketally.files.ThisJava;
import org.taketally.records.columns.RecordColumn;

/**
 * The whole job as a user waits for it, each in a process of its own started anew: {@code analyse}
 * with the benchmark's model here, a script doing the same job in R.
 */
final class BenchWholeJob {

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
   * By {@code analyse}.
   *
   * @return empty if it failed
   */
  Optional<BenchProcess.Done> here() throws IOException, InterruptedException {
    Path dictionary = Files.createTempFile("taketally-bench", ".json");
    try {
      SafeFile.write(dictionary, DICTIONARY);
      List<String> command = new ArrayList<>(start());
      command.addAll(List.of("analyse", records.toString(), "--dictionary", dictionary.toString()));
      command.addAll(List.of("--adjust-for", String.join(",", BenchCells.model().adjusted())));
      command.addAll(List.of("--vary-by", String.join(",", BenchCells.model().varying())));
      command.addAll(List.of("--compare", RecordColumn.ROOTSTOCK.columnName()));
      return BenchProcess.run(command);
    } finally {
      Files.deleteIfExists(dictionary);
    }
  }

  /** The script where it started this process, for it chooses how Java works; or Java as here. */
  private List<String> start() {
    String script = System.getProperty("taketally.script");
    if (script != null) {
      return List.of(script);
    }
    List<String> java = new ArrayList<>(List.of(ThisJava.program().toString()));
    ManagementFactory.getRuntimeMXBean().getInputArguments().stream()
        .filter(argument -> argument.startsWith("-X"))
        .forEach(java::add);
    java.addAll(List.of("-cp", System.getProperty("java.class.path"), program.getName()));
    return java;
  }

  /**
   * By R.
   *
   * @return empty if R, or a package of it, is missing
   */
  Optional<BenchProcess.Done> inR() throws IOException, InterruptedException {
    return BenchProcess.ofR("whole_job.R", records.toString());
  }
}
