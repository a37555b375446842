package org.taketally.app;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.taketally.records.invented.BundledDatasets;

/**
 * Runs the usual commands once on a season of invented records, unheard, so that the script {@code
 * toolkit/taketally} can keep the classes they load.
 */
final class StartRehearsal {

  private StartRehearsal() {}

  /**
   * Rehearses and ends, with the worst exit status met.
   *
   * @param arguments none
   * @throws IOException if there is no room for the records
   */
  public static void main(String[] arguments) throws IOException {
    PrintStream unheard =
        new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
    System.setOut(unheard);
    System.setErr(unheard);
    Path folder = Files.createTempDirectory("taketally-rehearsal");
    int status;
    try {
      status = rehearse(folder);
    } finally {
      delete(folder);
    }
    System.exit(status);
  }

  private static int rehearse(Path folder) throws IOException {
    BundledDatasets.copyTo(BundledDatasets.WALNUT, folder);
    String season = folder.resolve("grafts-2023.csv").toString();
    Taketally.commandLine(); // loads the options of the commands that aren't rehearsed, too
    return Stream.of(
            new String[] {"--help"},
            new String[] {"check", season},
            new String[] {"analyse", season, "--json", folder.resolve("answers.json").toString()},
            new String[] {"summary", season, "--out", folder.resolve("page").toString()})
        .mapToInt(command -> Taketally.execute(Taketally.commandLine(List.of(command)), command))
        .max()
        .orElseThrow();
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      all.sorted(Comparator.reverseOrder()).forEach(StartRehearsal::deleteOne);
    }
  }

  private static void deleteOne(Path path) {
    try {
      Files.delete(path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
