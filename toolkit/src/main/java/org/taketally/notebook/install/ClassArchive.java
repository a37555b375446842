package org.taketally.notebook.install;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Lets a kernel rehearse once and keeps the classes it loaded in a form Java can map at the next
 * start, which is then about twice as fast.
 *
 * @see <a href="https://docs.oracle.com/en/java/javase/17/vm/class-data-sharing.html">Class data
 *     sharing</a>
 */
final class ClassArchive {

  private static final long LONGEST_SECONDS = 120;

  private ClassArchive() {}

  /**
   * Makes the archive.
   *
   * @param java the Java to start
   * @param options the kernel's own options for Java, as at a real start
   * @param jar what it runs
   * @param archive file to make
   * @return why there is no archive, empty if there is one
   */
  static Optional<String> make(Path java, List<String> options, Path jar, Path archive)
      throws IOException, InterruptedException {
    Path log = Files.createTempFile("taketally-rehearsal", ".log");
    List<String> command = new ArrayList<>(List.of(java.toString()));
    command.addAll(options);
    command.addAll(
        List.of(
            "-XX:ArchiveClassesAtExit=" + archive,
            "-cp",
            jar.toString(),
            Rehearsal.class.getName()));
    Process process =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile()).start();
    try {
      if (!process.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        return Optional.of("the rehearsal took longer than " + LONGEST_SECONDS + " s");
      }
      boolean made = process.exitValue() == 0 && Files.exists(archive);
      return made ? Optional.empty() : Optional.of("the rehearsal failed: " + lastLine(log));
    } finally {
      Files.deleteIfExists(log);
    }
  }

  private static String lastLine(Path log) throws IOException {
    return Files.readString(log).lines().reduce("no reason given", (before, line) -> line);
  }
}
